/** The load on the floor. */
import type { AirBlock, EvidenceId, RowPattern } from '../evidence.js';

/** One pallet on the floor; metres from the left wall and from the bulkhead at the nose, as seen from the doors. */
export interface PlacedPallet {
  row: number;
  side: 'left' | 'right' | 'middle';
  /** Long side across the trailer. */
  turned: boolean;
  line?: string;
  x: number;
  y: number;
  width: number;
  length: number;
}

/** A row of pallets as it was noted. */
export interface LoadRow {
  row: number;
  pattern: RowPattern;
  line?: string;
  /** Where the trailer has several. */
  compartment?: string;
  evidence: EvidenceId;
  /** Width of the pallets side by side, m. */
  across: number;
  /** Total side clearance, m; negative when the row is wider than the trailer. */
  sideRoom?: number;
  blocks: AirBlock[];
}

/** The floor of one compartment; metres from the front wall. */
export interface FloorCompartment {
  compartment: string;
  /** Its front wall or the bulkhead in front of it. */
  from: number;
  /** The bulkhead behind it, or the doors; absent when the length of the trailer is not stated. */
  to?: number;
  /** Rear face of its last pallet; absent when it has no recorded row. */
  used?: number;
}

/** The load plan by the recorded rows; lengths in metres. */
export interface LoadPlan {
  rows: LoadRow[];
  pallets: PlacedPallet[];
  /** Pallets by the lines of the bill, where every line states a count. */
  palletsOnBill?: number;
  insideWidth?: number;
  insideLength?: number;
  /** `outside` when only the trailer's nominal length is known. */
  lengthFrom?: 'inside' | 'outside';
  /** From the bulkhead to the rear face of the last pallet; absent when earlier rows were not recorded. */
  floorUsed?: number;
  /** Rear clearance: from there to the doors. */
  rearGap?: number;
  /** Lines whose footprint is assumed to be 40 × 48 in. */
  assumedFootprint: string[];
  /** Ceiling clearance by line. */
  ceilings: { line: string; stack: number; clearance?: number }[];
  /** Floor capacity in pallets of the first line's footprint, by pattern. */
  fits: { pattern: 'straight' | 'pinwheel' | 'turned'; pallets: number }[];
  /** Compartments from the front wall to the doors, where their bulkheads are stated. */
  compartments?: FloorCompartment[];
  /** Unrecorded rows, though later ones were recorded. */
  unknownRows: number[];
}

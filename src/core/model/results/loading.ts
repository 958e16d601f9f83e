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

export interface LoadRow {
  row: number;
  pattern: RowPattern;
  line?: string;
  evidence: EvidenceId;
  /** Width of the pallets side by side, m. */
  across: number;
  /** Room left and right together, m; below zero when the row is wider than the trailer. */
  sideRoom?: number;
  blocks: AirBlock[];
}

/** What was loaded how, from rows as noted; lengths in metres. */
export interface LoadPlan {
  rows: LoadRow[];
  pallets: PlacedPallet[];
  /** Pallets that the lines of the bill count, where every line says it. */
  palletsOnBill?: number;
  insideWidth?: number;
  insideLength?: number;
  /** `outside` when only the trailer's nominal length is known. */
  lengthFrom?: 'inside' | 'outside';
  /** From the bulkhead to the face of the last pallet; absent when rows before it were not noted. */
  floorUsed?: number;
  /** From there to the doors. */
  rearGap?: number;
  /** Lines whose footprint is assumed to be 40 × 48 in. */
  assumedFootprint: string[];
  /** Ceiling clearance by line. */
  ceilings: { line: string; stack: number; clearance?: number }[];
  /** How many pallets of the first line's footprint the floor holds, by pattern. */
  fits: { pattern: 'straight' | 'pinwheel' | 'turned'; pallets: number }[];
  /** Rows that were not noted, though later ones were. */
  unknownRows: number[];
}

/** Weights of the load by row, and of the vehicle by axle group. */
import type { AxleGroup, EvidenceId } from '../evidence.js';

/** The pallets of a row together, kilograms. */
export interface RowWeight {
  row: number;
  line?: string;
  pallets: number;
  kilograms: number;
  /** Noted pallet by pallet, or the weight on the bill spread evenly over the line's pallets. */
  from: 'noted' | 'bill';
}

/** One axle group, kilograms. */
export interface AxleWeight {
  group: AxleGroup | 'gross';
  /** What the load puts on it, by statics. */
  load?: number;
  /** Without a load. */
  empty?: number;
  /** Both together. */
  estimate?: number;
  /** What a scale showed; it counts in place of the estimate. */
  scale?: number;
  limit?: number;
}

/** Axle weights on the leg from one stop to the next. */
export interface LegWeights {
  from: string;
  to: string;
  /** Weight of the goods aboard, kilograms, and how far behind the front wall its centre lies, metres. */
  load: number;
  centre: number;
  groups: AxleWeight[];
  /** The scale reading that was used. */
  weighed?: EvidenceId;
}

/** Weight of the load by row, and axle weights by leg. */
export interface LoadWeights {
  rows: RowWeight[];
  /** Lines of which no weight is known: no estimate is made while one of them is aboard. */
  unknown: string[];
  /** Row with the heaviest pallets. */
  heaviest?: RowWeight;
  legs: LegWeights[];
}

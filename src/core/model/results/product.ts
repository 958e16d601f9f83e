/** What would have arrived in the logged air, had the goods been loaded as instructed, and as measured. */
import type { Channel, EvidenceId } from '../evidence.js';
import type { PulpPlace } from './pulps.js';
import type { TimeRange } from './window.js';

/** What is not known for sure and moves the result. */
export type ProductInput = 'half-cooling-time' | 'loading-pulps' | 'respiration' | 'air-at-place';

/**
 * What the goods that arrived out of range are consistent with. `origin`: as measured at loading they would have
 * arrived so, as instructed they would not. `transit`: as instructed they would have left the range in this air too.
 * `both`: the two would have arrived alike, so that this does not discriminate. `neither`: not as instructed, and not as
 * measured.
 */
export type CounterfactualVerdict = 'origin' | 'transit' | 'both' | 'neither';

/** What would have been read at delivery, 95 % of the cases, °C. */
export interface WorldResult {
  low: number;
  high: number;
  /** Share of the cases read as far out as the goods were, or farther. */
  tail: number;
  /** Share of the cases in which the goods themselves arrive out of range on that side. */
  beyondRange: number;
}

/** The two questions for one place of a line. */
export interface PlaceCounterfactual {
  place: PulpPlace;
  /** Loading pulps of the same place, or of all of the line where none were taken there. */
  loadingFrom: 'same-place' | 'whole-line';
  loading: { min: number; max: number };
  arrival: { mean: number; guardKelvin: number };
  side: 'warm' | 'cold';
  asInstructed: WorldResult;
  asMeasured: WorldResult;
  verdict: CounterfactualVerdict;
  evidence: EvidenceId[];
}

/** One line in the air of one log. A plausibility under stated assumptions, never proof. */
export interface ProductResult {
  line: string;
  log: EvidenceId;
  /** The compartment whose air it is, where the trailer has several. */
  compartment?: string;
  /** Of all places that arrived out of range; `in-range` where none clearly did. */
  verdict: CounterfactualVerdict | 'in-range' | 'not-decidable';
  /** Why nothing is asked. */
  why?:
    | 'no-loading-pulps'
    | 'no-arrival-pulps'
    | 'air-not-known'
    | 'iced'
    | 'no-instruction'
    | 'instruction-freezes';
  window?: TimeRange;
  loading?: { min: number; max: number; evidence: EvidenceId[] };
  arrival?: { min: number; max: number; evidence: EvidenceId[] };
  /** The goods as the doors are opened, 95 % of the cases over all loading pulps, °C. */
  asMeasured?: { low: number; high: number };
  asInstructed?: { low: number; high: number };
  /** Places that arrived clearly out of range. */
  places: PlaceCounterfactual[];
  /** Cases drawn. */
  draws: number;
  assumptions: {
    load: 'pallets' | 'loose-cartons' | 'not-stated' | 'measured';
    halfCoolingSeconds: { low: number; high: number; from: string };
    channels: Channel[];
    /** To either side, K. */
    sensorKelvin: number;
    airAtPlaceKelvin: number;
    cartonsKelvin: number;
    /** `secondary`: the source itself was not read, but a document that retells it. */
    respiration?: { source: string; secondary: boolean };
    specificHeat: { joulesPerKilogramKelvin: number; own: boolean; source: string };
    /** Share of the window with known air; the rest is interpolated from sample to sample. */
    coverage: number;
    /** Time from the window's end to the last arrival pulp, seconds; the air of this time is not included. */
    afterSeconds?: number;
  };
  /** The input that explains most of the spread of the goods as measured, and the share of the variance. */
  matters?: { is: ProductInput; share: number };
}

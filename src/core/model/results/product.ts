/** Computed temperatures of the goods. */
import type { Channel, EvidenceId } from '../evidence.js';
import type { TimeRange } from './window.js';

/** Computed temperature range of the product at one time, °C. */
export interface Envelope {
  low: number;
  high: number;
}

/** What an envelope of product temperatures rests on. */
export type ProductAssumption = 'half-cooling-time' | 'loading-pulps' | 'respiration' | 'air-channel';

/**
 * Whether the arrival pulps of one line are consistent with its loading pulps and the logged air. A plausibility
 * check, never proof.
 */
export interface ProductResult {
  line: string;
  log: EvidenceId;
  /** The compartment whose air it is, where the trailer has several. */
  compartment?: string;
  verdict: 'inside' | 'above' | 'below' | 'not-decidable';
  /** Why no verdict is given. */
  why?: 'no-loading-pulps' | 'no-arrival-pulps' | 'air-not-known' | 'iced' | 'pulps-on-both-sides';
  window?: TimeRange;
  loading?: { min: number; max: number; evidence: EvidenceId[] };
  arrival?: { min: number; max: number; evidence: EvidenceId[] };
  /** At the window's end. */
  envelope?: Envelope;
  /** Tolerance of the thermometers on either side, K. */
  toleranceKelvin: number;
  /** Distance of the farthest arrival pulp beyond envelope and tolerance, K; 0 inside. */
  beyondKelvin?: number;
  assumptions: {
    load: 'pallets' | 'loose-cartons' | 'not-stated';
    halfCoolingSeconds: { low: number; high: number; from: string };
    channels: Channel[];
    /** `secondary`: the source itself was not read, but a document that retells it. */
    respiration?: { source: string; secondary: boolean };
    specificHeat: { joulesPerKilogramKelvin: number; own: boolean; source: string };
    /** Share of the window with known air; the rest is interpolated from sample to sample. */
    coverage: number;
    /** Time from the window's end to the last arrival pulp, seconds; the air of this time is not included. */
    afterSeconds?: number;
  };
  /** The assumption that moves the edge nearest to the arrival pulps most, and by how much, K. */
  matters?: { is: ProductAssumption; kelvin: number };
}

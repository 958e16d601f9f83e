/** What the goods themselves can have been at. */
import type { Channel, EvidenceId } from '../evidence.js';
import type { TimeRange } from './window.js';

/** Temperatures that the product can have had at one time, °C. */
export interface Envelope {
  low: number;
  high: number;
}

export type ProductAssumption = 'half-cooling-time' | 'loading-pulps' | 'respiration' | 'air-channel';

/** Whether the arrival pulps of one line go with its loading pulps and the logged air. Plausibility, never proof. */
export interface ProductResult {
  line: string;
  log: EvidenceId;
  verdict: 'inside' | 'above' | 'below' | 'not-decidable';
  /** Why nothing can be said. */
  why?: 'no-loading-pulps' | 'no-arrival-pulps' | 'air-not-known' | 'iced' | 'pulps-on-both-sides';
  window?: TimeRange;
  loading?: { min: number; max: number; evidence: EvidenceId[] };
  arrival?: { min: number; max: number; evidence: EvidenceId[] };
  /** At the window's end. */
  envelope?: Envelope;
  /** Room on either side for the thermometers, K. */
  toleranceKelvin: number;
  /** How far the farthest arrival pulp lies outside envelope and tolerance, K; 0 inside. */
  beyondKelvin?: number;
  assumptions: {
    load: 'pallets' | 'loose-cartons' | 'not-stated';
    halfCoolingSeconds: { low: number; high: number; from: string };
    channels: Channel[];
    respiration?: { source: string; fromMemory: boolean };
    specificHeat: { joulesPerKilogramKelvin: number; own: boolean; source: string };
    /** Share of the window in which the air is known; over the rest it is drawn straight from sample to sample. */
    coverage: number;
    /** Time from the window's end to the last arrival pulp, seconds: air of this time is not in the computation. */
    afterSeconds?: number;
  };
  /** The assumption that moves the edge next to the arrival pulps most, and by how much, K. */
  matters?: { is: ProductAssumption; kelvin: number };
}

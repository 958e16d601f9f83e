/** Pulps, judged and held against each other. */
import type { EvidenceId, Position, ReadingFrom } from '../evidence.js';

/** Pulps of one line at both ends, and of two hands at one stop. */
export interface PulpComparison {
  line: string;
  is: 'delivery-against-loading' | 'receiver-against-driver';
  /** Where the second group was taken; for the first kind the first is the loading stop. */
  stop: string;
  counts: [first: number, second: number];
  /** Second minus first, K. */
  mean: number;
  min: number;
  max: number;
  evidence: EvidenceId[];
}

export interface PulpReading {
  evidence: EvidenceId;
  celsius: number;
  at?: number;
  position?: Position;
  from: ReadingFrom;
  instrument?: string;
  verdict: 'in-band' | 'above' | 'below' | 'no-instruction';
  /** Distance from the nearer limit, K; 0 in band. */
  beyond: number;
}

/** Pulps of one line at one stop. */
export interface PulpGroup {
  line: string;
  stop: string;
  does: 'load' | 'unload';
  /** °C */
  band?: { low: number; high: number };
  readings: PulpReading[];
  count: number;
  min: number;
  max: number;
  mean: number;
  inBand: number;
  /** Highest minus lowest, K. */
  spread?: number;
  byPosition?: { position: Position | 'not-stated'; count: number; min: number; max: number; mean: number }[];
  /** Each thermometer with the last look at it in ice water before these readings, if any. */
  instruments?: {
    instrument?: string;
    count: number;
    check?: {
      evidence: EvidenceId;
      at?: number;
      /** The check says which thermometer; else it is only the last one in the record. */
      names: boolean;
    };
  }[];
}

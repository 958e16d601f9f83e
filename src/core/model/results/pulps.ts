/** Pulp readings, judged and compared. */
import type { EvidenceId, Position, ReadingFrom } from '../evidence.js';

/** Pulps of one line at both ends, or of two parties at one stop. */
export interface PulpComparison {
  line: string;
  is: 'delivery-against-loading' | 'receiver-against-driver';
  /** Stop of the second group; for the first kind the first group is from the loading stop. */
  stop: string;
  counts: [first: number, second: number];
  /** Second minus first, K. */
  mean: number;
  min: number;
  max: number;
  evidence: EvidenceId[];
}

/** A pulp temperature, °C. */
export interface PulpReading {
  evidence: EvidenceId;
  celsius: number;
  at?: number;
  position?: Position;
  from: ReadingFrom;
  instrument?: string;
  verdict: 'in-band' | 'above' | 'below' | 'no-instruction';
  /** Distance from the nearer limit, K; 0 in range. */
  beyond: number;
}

/** Pulps of one line at one stop. */
/** Shares of a line's cartons that may be out of range. */
export interface PulpSample {
  /** Of each bound on its own, such as 0.95. */
  confidence: number;
  least: number;
  most: number;
  /** By the cartons of the line, or as of an endless lot where they are not known. */
  by: 'hypergeometric' | 'binomial';
  cartons?: number;
}

/** The pulp temperatures of one line at one stop. */
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
  /** What the readings allow of the line's cartons, had they been picked at random; absent without a range. */
  sample?: PulpSample;
  /** Highest minus lowest, K. */
  spread?: number;
  byPosition?: { position: Position | 'not-stated'; count: number; min: number; max: number; mean: number }[];
  /** Each thermometer with its last ice-water check before these readings, if any. */
  instruments?: {
    instrument?: string;
    count: number;
    check?: {
      evidence: EvidenceId;
      at?: number;
      /** Whether the check names the thermometer; otherwise it is the last one on file. */
      names: boolean;
    };
  }[];
}

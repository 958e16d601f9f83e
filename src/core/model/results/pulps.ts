/** Pulp readings, judged and compared. */
import type { EvidenceId, Height, Position, ReadingFrom } from '../evidence.js';
import type { ChangeAnswer, InstrumentRecord, LimitAnswer, Uncertainty } from './measurement.js';

/** Where a pulp was taken, as far as is known. */
export interface PulpPlace {
  position?: Position;
  pallet?: string;
  height?: Height;
  carton?: string;
}

/** Pulps of one place, earlier or of the first party, and later or of the second. */
export interface PulpPair {
  place: PulpPlace;
  counts: [first: number, second: number];
  /** Mean of the second minus mean of the first, as corrected, K. */
  change: number;
  /** Whether one thermometer read both; its own error then falls out of the change. */
  sameThermometer: boolean;
  guardKelvin: number;
  answer: ChangeAnswer;
  evidence: EvidenceId[];
}

/** What two groups of pulps do not share, so that their means are not subtracted. */
export type PulpsDiffer = 'place' | 'place-not-stated' | 'thermometer' | 'thermometer-not-named';

/** Pulps of one line at both ends, or of two parties at one stop: like compared with like. */
export interface PulpComparison {
  line: string;
  is: 'delivery-against-loading' | 'receiver-against-driver';
  /** Stop of the second group; for the first kind the first group is from the loading stop. */
  stop: string;
  counts: [first: number, second: number];
  /** One for each place with readings on both sides. */
  pairs: PulpPair[];
  differs: PulpsDiffer[];
  /** Mean change of the places, K, only where places and thermometer are the same. */
  mean?: number;
  /** Lowest of the second minus highest of the first, K: positive where every second one is warmer than every first. */
  leastRise: number;
  /** Highest of the second minus lowest of the first, K. */
  mostRise: number;
  /** Room for the thermometers in these two. */
  guardKelvin: number;
  /** Of the places that both have, else of every reading against every other. */
  answer: ChangeAnswer;
  evidence: EvidenceId[];
}

/** A pulp temperature, °C. */
export interface PulpReading extends PulpPlace {
  evidence: EvidenceId;
  /** As read. */
  celsius: number;
  at?: number;
  from: ReadingFrom;
  instrument?: string;
  /** As read, whatever the thermometer's uncertainty. */
  verdict: 'in-band' | 'above' | 'below' | 'no-instruction';
  /** Distance of what was read from the nearer limit, K; 0 in range. */
  beyond: number;
  /** Less the thermometer's error in ice water, °C; absent without a check. */
  corrected?: number;
  uncertainty: Uncertainty;
  /** The thermometer by the name under which it is known, where one is named. */
  thermometer?: string;
  /** Whether it is clearly within or beyond the range, or too near a limit to tell. */
  answer: LimitAnswer | 'no-instruction';
}

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
  /** In range as read. */
  inBand: number;
  /** Readings by answer, with room for the thermometers; absent without a range. */
  answers?: Record<LimitAnswer, number>;
  /** What the readings allow of the line's cartons, had they been picked at random; absent without a range. */
  sample?: PulpSample;
  /** Highest minus lowest, K. */
  spread?: number;
  byPosition?: { position: Position | 'not-stated'; count: number; min: number; max: number; mean: number }[];
  /** Each thermometer with its last ice-water check before these readings, if any. */
  instruments?: {
    instrument?: string;
    count: number;
    /** What delivery.yaml says of it. */
    record?: InstrumentRecord;
    /** Widest guard band of its readings, K. */
    guardKelvin: number;
    check?: {
      evidence: EvidenceId;
      at?: number;
      /** Whether the check names the thermometer; otherwise it is the last one on file. */
      names: boolean;
    };
  }[];
}

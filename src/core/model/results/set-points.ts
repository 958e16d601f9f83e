/** What each source states about the set point. */
import type { EvidenceId } from '../evidence.js';
import type { PublishedLimit } from './published.js';
import type { TimeRange } from './window.js';

/** One source's statement of the set point. */
export interface SetPointStatement {
  source: 'bill' | 'shipper' | 'dispatcher' | 'display' | 'log';
  celsius: number;
  at?: number;
  evidence?: EvidenceId;
  lines?: string[];
  /** The compartment that it is of, where the trailer has several. */
  compartment?: string;
  run?: string;
  /** An instruction that no paper on record shows: the carrier's own typing. */
  asEntered?: true;
  /** The later statement before departure that put it right, so that it is in no difference. */
  putRight?: { at: number; source: SetPointStatement['source']; evidence?: EvidenceId };
}

/** Two statements of the set point that differ. */
export interface SetPointDifference {
  between: [SetPointStatement, SetPointStatement];
  /** Size of the difference, K. */
  kelvin: number;
  /** The likely typing error: 38 for 48, 36 for 63, or the wrong unit. */
  slip?: 'one-digit' | 'swapped-digits' | 'unit-mixed-up';
  /** When both had been stated, if that is known; milliseconds. */
  since?: number;
  /** How long the unit's own log shows it, seconds. */
  seconds?: number;
  /** Notices given between then and the end of the leg or of custody; absent when `since` is. */
  told?: { evidence: EvidenceId; with: string; at: number }[];
}

/** What one source recommends for a line's goods, to compare with its instruction. */
export interface PublishedRange extends PublishedLimit {
  line: string;
}

/** Set points on the leg from one stop to the next. */
export interface SetPointLeg {
  from: string;
  to: string;
  /** Departure and arrival; absent when one of them is not known. */
  span?: TimeRange;
  /** Lines on board. */
  lines: string[];
  published: PublishedRange[];
  words: SetPointStatement[];
  differences: SetPointDifference[];
}

/** What each document and person said of the set point, and whether they agree. */
export interface SetPointAgreement {
  words: SetPointStatement[];
  differences: SetPointDifference[];
  verdict: 'agree' | 'differ' | 'not-comparable';
  legs?: SetPointLeg[];
}

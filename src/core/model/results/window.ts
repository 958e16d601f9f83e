/** Spans of time, and where a window begins and ends. */
import type { EvidenceId } from '../evidence.js';

/** Half-open span of time, milliseconds since 1970 UTC. */
export interface TimeRange {
  from: number;
  to: number;
}

/** The basis of a window's end, so that a reader can check it. */
export interface CustodyBound {
  at: number;
  /** The event it rests on, or what replaced it. */
  basis: 'doors-closed' | 'doors-opened' | 'departed' | 'arrived' | 'log-start' | 'log-end' | 'asked';
  evidence?: EvidenceId;
}

/** Time from doors closed at the first loading to doors opened at the last unloading. */
export interface Custody {
  from: CustodyBound;
  to: CustodyBound;
}

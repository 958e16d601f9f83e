/** Spans of time, and where a window begins and ends. */
import type { EvidenceId } from '../evidence.js';

/** Half-open span of time, milliseconds since 1970 UTC. */
export interface TimeRange {
  from: number;
  to: number;
}

/** Where a window's end comes from, so that a reader can check it. */
export interface WindowBound {
  at: number;
  /** The event it rests on, or what stood in for it. */
  basis:
    | 'doors-closed'
    | 'departed'
    | 'loading-ended'
    | 'bill-signed'
    | 'doors-opened'
    | 'arrived'
    | 'unloading-began'
    | 'receipt-signed'
    | 'unloaded'
    | 'refused'
    | 'accepted'
    /** Of custody: goods that were refused, sold, dumped or sent elsewhere. */
    | 'disposed'
    /** No event: the time that was planned. */
    | 'planned'
    /** The truck is not due yet: the time that is asked about. */
    | 'under-way'
    | 'asked';
  evidence?: EvidenceId;
}

/** Time from doors closed at the first loading to doors opened at the last unloading, or of one leg or line. */
export interface TransitWindow {
  from: WindowBound;
  to: WindowBound;
}

/**
 * How long the carrier had the goods: signed receipt to delivery, or to disposal of what was refused. It is no window of
 * temperatures: doors bound that.
 */
export interface CustodySpan {
  from: WindowBound;
  /** Absent while nothing shows that the last goods were handed over. */
  to?: WindowBound;
  /** Lines that were refused and of which no disposal is on record. */
  heldAfterRefusal: string[];
}

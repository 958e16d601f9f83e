import type { Channel, EvidenceId, StateColumn } from './evidence.js';
import type { Zone } from './time.js';

/** One row that was left out of a log, and why. */
export interface RowProblem {
  /** Line in the file, counted from 1. */
  row: number;
  is:
    | 'no-time'
    | 'bad-time'
    | 'sensor-fault'
    | 'impossible-value'
    | 'duplicate'
    | 'time-in-gap'
    | 'time-in-fold';
  detail: string;
}

/**
 * A unit log in columns: index i of every array is one row, rows in ascending time, no time twice.
 * A value that is missing, marked as a sensor fault or impossible is NaN.
 */
export interface UnitLog {
  evidence: EvidenceId;
  zone: Zone | 'offset';
  /** Milliseconds since 1970 UTC, clock correction applied. */
  times: Float64Array;
  /** Degrees Celsius. */
  channels: Partial<Record<Channel, Float64Array>>;
  /** The text of mode, alarm, door … columns as written. */
  states: Partial<Record<StateColumn, readonly string[]>>;
  /** Line in the file of each row, counted from 1. */
  rows: Uint32Array;
  /** At most 1,000 are kept; `problemCount` counts all. */
  problems: RowProblem[];
  problemCount: number;
  /** Seconds added to the log's clock, by a measured comparison. */
  addedSeconds: number;
}

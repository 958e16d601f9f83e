import type { Channel, EvidenceId, StateColumn } from './evidence.js';
import type { ClockPoint, Zone } from './time.js';

/** A row excluded from a log, and why. */
export interface RowProblem {
  /** Line in the file, counted from 1. */
  row: number;
  is:
    | 'no-time'
    | 'bad-time'
    | 'sensor-fault'
    | 'impossible-value'
    /** The time of an earlier row with the same values, or values that complete it. */
    | 'repeated'
    /** The time of an earlier row with other values: the first row counts. */
    | 'duplicate'
    /** More or fewer cells than the header has columns. */
    | 'ragged'
    /** Bytes that are not text. */
    | 'not-text'
    | 'time-in-gap'
    | 'time-in-fold'
    /** The row lies before the one above it, against the direction in which the log runs. */
    | 'time-steps-back'
    /** From this row on the clock of the log is another: it was set. */
    | 'clock-step';
  detail: string;
}

/** Where the clock of a log was set, by the order of its rows; nothing is corrected for it. */
export interface ClockStep {
  /** Line in the file of the first row after it, counted from 1. */
  row: number;
  /** The last time before it and the first after it, by the log's own clock; milliseconds. */
  from: number;
  to: number;
  /** What the clock was put forward by; negative where it was put back. */
  seconds: number;
  uncertaintySeconds: number;
  /** Rows that have times of rows on the other side of it, and are left out. */
  hiddenRows: number;
}

/** A part of a log whose clock a person said to be wrong: the rows from a line on, or those before it. */
export interface ClockShift {
  rows: { from: number } | { before: number };
  addSeconds: number;
  /** Ledger entry that says so. */
  seq: number;
}

/** Numbers that a download states about its trailer, unit and recorder. */
export interface StatedNumbers {
  trailer?: string;
  unit?: string;
  recorder?: string;
}

/** Columns of one instrument that are of one compartment alone. */
export interface CompartmentColumns {
  compartment: string;
  channels: UnitLog['channels'];
  states: UnitLog['states'];
}

/**
 * A unit log in columns: index i of every column is one row, rows in ascending time, no time twice.
 * A value that is missing, marked as a sensor fault or impossible is NaN.
 */
export interface UnitLog {
  evidence: EvidenceId;
  /** The compartment whose air it records; absent for one that is of the whole trailer. */
  compartment?: string;
  zone: Zone | 'offset';
  /** Milliseconds since 1970 UTC, clock correction applied. */
  times: Float64Array;
  /** Degrees Celsius. */
  channels: Partial<Record<Channel, Float64Array>>;
  /** The text of mode, alarm, door … columns as written. */
  states: Partial<Record<StateColumn, readonly string[]>>;
  /** Line in the file of each row, counted from 1. */
  rows: Float64Array;
  /** Numbers of trailer, unit and recorder that the lines above the header state. */
  stated?: StatedNumbers;
  /** The logs that this one was joined from, in order of time, and the source log of each row. */
  joinedFrom?: { evidence: readonly EvidenceId[]; of: Float64Array };
  /** At most 1,000 are kept; `problemCount` counts all. */
  problems: RowProblem[];
  problemCount: number;
  /** Seconds added to the log's clock by comparisons; the median where several differ (see `clock`). */
  addedSeconds: number;
  /** Where its clock was set, not corrected; and the parts of it that were corrected. */
  clockSteps?: readonly ClockStep[];
  clockShifts?: readonly ClockShift[];
  /** The comparisons that corrected the times, in order; between two of them the correction is linear. */
  clock?: readonly ClockPoint[];
}

/** Recorders of one delivery beside each other: whose they are, how far their clocks and values are apart. */
import type { EvidenceId } from '../evidence.js';
import type { ChannelDifference } from './channels.js';

/** What is known of the instrument behind a log. */
export interface RecorderIdentity {
  log: EvidenceId;
  compartment?: string;
  /** The unit's own log has its air or set point; a log without them is of a portable recorder. */
  instrument: 'unit' | 'recorder';
  serial?: string;
  /** Where it lay, and whose it is, as recorded. */
  place?: string;
  owner?: string;
  /** Evidence that says so. */
  evidence: EvidenceId[];
}

/** A place at which one clock was set, by what another recorder shows before and after it. */
export interface SeenClockStep {
  log: EvidenceId;
  /** By the clock of the log, milliseconds. */
  at: number;
  /** What the clock was put forward by; negative where it was put back. */
  seconds: number;
  uncertaintySeconds: number;
}

/** Two recorders in one air. */
export interface RecorderComparison {
  /** The second against the first, where both are known; the second's clock moved by `clock` where `moved`. */
  difference: ChannelDifference;
  /** To be added to the second clock, by the likeness of the curves; absent where it can't be told. */
  clock?: { seconds: number; uncertaintySeconds: number; correlation: number };
  /** The clocks differ by more than their uncertainty, so that values are compared at the moved times. */
  moved: boolean;
  verdict: 'agree' | 'disagree';
  clockSteps: SeenClockStep[];
}

/** The recorders of a delivery, where there is more than the unit's own log. */
export interface RecordersResult {
  identities: RecorderIdentity[];
  comparisons: RecorderComparison[];
}

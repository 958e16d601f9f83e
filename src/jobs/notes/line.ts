import type { Problem } from '../../core/model/error.js';
import type { EvidenceId } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { Doubt } from '../../core/model/results/doubts.js';

/** How one line of notes was understood. */
export interface RecordedNoteLine {
  row: number;
  /** The line as written. */
  text: string;
  /** How it was understood. */
  said: string;
  outcome: 'recorded' | 'already-held' | 'understood' | 'doubted';
  evidence?: EvidenceId;
  /** Why it was not recorded, where it lies far from its kin. */
  doubts?: Doubt[];
}

/** A problem of a row of a file. */
export function ofRow({ where, ...problem }: Problem, file: string, row: number): Problem {
  return { ...problem, where: { file, row, ...omitUndefined({ field: where.field }) } };
}

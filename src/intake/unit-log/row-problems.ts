import type { Problem, Where } from '../../core/model/error.js';
import type { RowProblem } from '../../core/model/unit-log.js';
import type { ReadLog } from './read.js';
import { HARMLESS } from './rows/row-notes.js';

/** Rows of a log are told one by one up to this many, the first of each kind before the second of any. */
const LISTED_ROWS = 20;

const KINDS: Readonly<Record<RowProblem['is'], readonly [one: string, many: string]>> = {
  'no-time': ['row without a time', 'rows without a time'],
  'bad-time': ['row whose time is not a date and time', 'rows whose time is not a date and time'],
  'sensor-fault': ['value marked as a sensor fault', 'values marked as sensor faults'],
  'impossible-value': ['value that is no temperature', 'values that are no temperature'],
  repeated: ['row that repeats another', 'rows that repeat another'],
  duplicate: ['row of a time that an earlier row has', 'rows of a time that an earlier row has'],
  ragged: ['row with too many or too few cells', 'rows with too many or too few cells'],
  'not-text': ['value of bytes that are not text', 'values of bytes that are not text'],
  'time-in-gap': ['row at a time that did not happen', 'rows at a time that did not happen'],
  'time-in-fold': ['row at a time that happened twice', 'rows at a time that happened twice'],
  'clock-step': ['row at which the clock was set', 'rows at which the clock was set'],
  'time-steps-back': ['row that steps back in time', 'rows that step back in time'],
};

/**
 * What a person should know about single rows. Kinds are counted apart: a clock that steps back once is not hidden by
 * a thousand texts. What the unit itself marked as a fault, or what could be settled, is no problem.
 */
export function rowProblems(log: ReadLog, place: Where): Problem[] {
  const kept = log.problems.filter((p) => !HARMLESS.has(p.is));
  const kinds = [...new Set(kept.map((p) => p.is))];
  const each = Math.max(1, Math.floor(LISTED_ROWS / Math.max(1, kinds.length)));
  return kinds.flatMap((is) => {
    const told = kept.filter((p) => p.is === is).slice(0, each);
    const more = (log.counts[is] ?? 0) - told.length;
    const [one, many] = KINDS[is];
    return [
      ...told.map(
        (p): Problem => ({
          code: 'bad-value',
          message: p.detail,
          where: { ...place, row: p.row },
        }),
      ),
      ...(more > 0
        ? [
            {
              code: 'bad-value' as const,
              message: `and ${more.toLocaleString('en-US')} more ${more === 1 ? one : many}`,
              where: place,
            },
          ]
        : []),
    ];
  });
}

import {
  type Channel,
  channel,
  type EvidenceId,
  type StateColumn,
  stateColumn,
} from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { UnitLog } from '../../model/unit-log.js';

/** Problems that a log lists one by one. */
const KEPT_PROBLEMS = 1_000;

/** Row indexes of one instant in two logs; −1 where a log has no such row. */
type Pair = readonly [first: number, second: number];

/**
 * Two logs of one instrument as one. Of two rows of one instant the row of `first` prevails, and its blanks are
 * filled from the other. The merged log keeps the id of `first`.
 */
export function mergeLogs(first: UnitLog, second: UnitLog): UnitLog {
  const pairs = pairsOf(first.times, second.times);
  /** The value from `first` where it has one, else from `second`. */
  const numbers = (a: Float64Array | undefined, b: Float64Array | undefined): Float64Array =>
    new Float64Array(
      pairs.map(([i, j]) => {
        const value = a?.[i] ?? Number.NaN;
        return Number.isNaN(value) ? (b?.[j] ?? Number.NaN) : value;
      }),
    );
  const channels: Partial<Record<Channel, Float64Array>> = {};
  for (const name of channel.options) {
    const [a, b] = [first.channels[name], second.channels[name]];
    if (a !== undefined || b !== undefined) channels[name] = numbers(a, b);
  }
  const states: Partial<Record<StateColumn, string[]>> = {};
  for (const name of stateColumn.options) {
    const [a, b] = [first.states[name], second.states[name]];
    if (a !== undefined || b !== undefined) states[name] = pairs.map(([i, j]) => a?.[i] || b?.[j] || '');
  }
  const own = sourceLogsOf(first);
  const stated = first.stated ?? second.stated;
  return {
    ...first,
    times: numbers(first.times, second.times),
    channels,
    states,
    rows: numbers(first.rows, second.rows),
    problems: [...first.problems, ...second.problems].slice(0, KEPT_PROBLEMS),
    problemCount: first.problemCount + second.problemCount,
    ...omitUndefined({
      stated,
      clockSteps: bothOf(first.clockSteps, second.clockSteps),
      clockShifts: bothOf(first.clockShifts, second.clockShifts),
    }),
    joinedFrom: {
      evidence: [...own, ...sourceLogsOf(second)],
      of: new Float64Array(
        pairs.map(([i, j]) =>
          i >= 0 ? (first.joinedFrom?.of[i] ?? 0) : own.length + (second.joinedFrom?.of[j] ?? 0),
        ),
      ),
    },
  };
}

const bothOf = <T>(one: readonly T[] | undefined, other: readonly T[] | undefined) =>
  one === undefined && other === undefined ? undefined : [...(one ?? []), ...(other ?? [])];

function sourceLogsOf(log: UnitLog): readonly EvidenceId[] {
  return log.joinedFrom?.evidence ?? [log.evidence];
}

/** The rows of both logs in ascending time. */
function pairsOf(a: Float64Array, b: Float64Array): Pair[] {
  const pairs: Pair[] = [];
  for (let i = 0, j = 0; i < a.length || j < b.length; ) {
    const x = a[i] ?? Number.POSITIVE_INFINITY;
    const y = b[j] ?? Number.POSITIVE_INFINITY;
    pairs.push([x <= y ? i++ : -1, y <= x ? j++ : -1]);
  }
  return pairs;
}

import {
  type Channel,
  channel,
  type EvidenceId,
  type StateColumn,
  stateColumn,
} from '../../model/evidence.js';
import type { UnitLog } from '../../model/unit-log.js';

/** Most problems that a log carries one by one. */
const KEPT_PROBLEMS = 1_000;

/**
 * Two logs of one instrument as one. Of two rows of one moment the one of `first` counts, and takes from the
 * other what it lacks. The joined log goes by the name of `first`.
 */
export function mergeLogs(first: UnitLog, second: UnitLog): UnitLog {
  const order = mergeOrder(first.times, second.times);
  const pick = (a: Float64Array | undefined, b: Float64Array | undefined): Float64Array =>
    Float64Array.from(order.first, (i, n) => {
      const value = at(a, i);
      return Number.isNaN(value) ? at(b, order.second[n] ?? -1) : value;
    });
  const pickText = (a: readonly string[] | undefined, b: readonly string[] | undefined): string[] =>
    Array.from(order.first, (i, n) => a?.[i] || (b?.[order.second[n] ?? -1] ?? ''));
  const number = (a: Float64Array | Uint32Array, b: Float64Array | Uint32Array) => (i: number, n: number) =>
    i >= 0 ? (a[i] ?? 0) : (b[order.second[n] ?? -1] ?? 0);
  const channels: Partial<Record<Channel, Float64Array>> = {};
  for (const name of channel.options)
    if (first.channels[name] !== undefined || second.channels[name] !== undefined)
      channels[name] = pick(first.channels[name], second.channels[name]);
  const states: Partial<Record<StateColumn, readonly string[]>> = {};
  for (const name of stateColumn.options)
    if (first.states[name] !== undefined || second.states[name] !== undefined)
      states[name] = pickText(first.states[name], second.states[name]);
  const sources = [...sourcesOf(first), ...sourcesOf(second)];
  const stated = first.stated ?? second.stated;
  return {
    ...first,
    times: Float64Array.from(order.first, number(first.times, second.times)),
    channels,
    states,
    rows: Uint32Array.from(order.first, number(first.rows, second.rows)),
    problems: [...first.problems, ...second.problems].slice(0, KEPT_PROBLEMS),
    problemCount: first.problemCount + second.problemCount,
    ...(stated === undefined ? {} : { stated }),
    joinedFrom: {
      evidence: sources,
      of: Uint8Array.from(order.first, (i, n) =>
        i >= 0
          ? (first.joinedFrom?.of[i] ?? 0)
          : sourcesOf(first).length + (second.joinedFrom?.of[order.second[n] ?? -1] ?? 0),
      ),
    },
  };
}

export function sourcesOf(log: UnitLog): readonly EvidenceId[] {
  return log.joinedFrom?.evidence ?? [log.evidence];
}

function at(values: Float64Array | undefined, index: number): number {
  return index < 0 ? Number.NaN : (values?.[index] ?? Number.NaN);
}

/** Places of the rows of both in ascending time; −1 where one has no row of that moment. */
interface MergeOrder {
  first: Int32Array;
  second: Int32Array;
}

function mergeOrder(a: Float64Array, b: Float64Array): MergeOrder {
  const first = new Int32Array(a.length + b.length);
  const second = new Int32Array(a.length + b.length);
  let length = 0;
  let [i, j] = [0, 0];
  while (i < a.length || j < b.length) {
    const [x, y] = [a[i] ?? Number.POSITIVE_INFINITY, b[j] ?? Number.POSITIVE_INFINITY];
    first[length] = x <= y ? i++ : -1;
    second[length] = y <= x ? j++ : -1;
    length += 1;
  }
  return { first: first.slice(0, length), second: second.slice(0, length) };
}

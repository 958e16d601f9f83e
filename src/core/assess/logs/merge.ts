import type { NumberColumn } from '../../model/columns/number-column.js';
import { NumberWriter, type PackedNumbers, shelfOf } from '../../model/columns/packed-numbers.js';
import { type TextColumn, TextWriter } from '../../model/columns/text-column.js';
import {
  type Channel,
  channel,
  type EvidenceId,
  type StateColumn,
  stateColumn,
} from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { UnitLog } from '../../model/unit-log.js';

/** Most problems that a log carries one by one. */
const KEPT_PROBLEMS = 1_000;

/**
 * Two logs of one instrument as one. Of two rows of one moment the one of `first` counts, and takes from the
 * other what it lacks. The joined log goes by the name of `first`.
 */
export function mergeLogs(first: UnitLog, second: UnitLog): UnitLog {
  const shelf = shelfOf(first.times);
  const inOrder = (value: (i: number, j: number) => number): PackedNumbers => {
    const writer = new NumberWriter(shelf);
    eachRow(first.times, second.times, (i, j) => writer.push(value(i, j)));
    return writer.finish();
  };
  const channels: Partial<Record<Channel, NumberColumn>> = {};
  for (const name of channel.options) {
    const [a, b] = [first.channels[name], second.channels[name]];
    if (a === undefined && b === undefined) continue;
    channels[name] = inOrder((i, j) => {
      const value = numberAt(a, i);
      return Number.isNaN(value) ? numberAt(b, j) : value;
    });
  }
  const states: Partial<Record<StateColumn, TextColumn>> = {};
  for (const name of stateColumn.options) {
    const [a, b] = [first.states[name], second.states[name]];
    if (a === undefined && b === undefined) continue;
    const writer = new TextWriter(shelf);
    eachRow(first.times, second.times, (i, j) => writer.push(textAt(a, i) || textAt(b, j)));
    states[name] = writer.finish();
  }
  const own = sourcesOf(first);
  const stated = first.stated ?? second.stated;
  return {
    ...first,
    times: inOrder((i, j) => (i >= 0 ? numberAt(first.times, i) : numberAt(second.times, j))),
    channels,
    states,
    rows: inOrder((i, j) => (i >= 0 ? numberAt(first.rows, i) : numberAt(second.rows, j))),
    problems: [...first.problems, ...second.problems].slice(0, KEPT_PROBLEMS),
    problemCount: first.problemCount + second.problemCount,
    ...omitUndefined({ stated }),
    joinedFrom: {
      evidence: [...own, ...sourcesOf(second)],
      of: inOrder((i, j) =>
        i >= 0 ? (first.joinedFrom?.of.at(i) ?? 0) : own.length + (second.joinedFrom?.of.at(j) ?? 0),
      ),
    },
  };
}

export function sourcesOf(log: UnitLog): readonly EvidenceId[] {
  return log.joinedFrom?.evidence ?? [log.evidence];
}

const numberAt = (values: NumberColumn | undefined, index: number): number =>
  index < 0 ? Number.NaN : (values?.at(index) ?? Number.NaN);

const textAt = (texts: TextColumn | undefined, index: number): string =>
  index < 0 ? '' : (texts?.at(index) ?? '');

/** The places of the rows of both in ascending time; −1 where one has no row of that moment. */
function eachRow(a: NumberColumn, b: NumberColumn, onRow: (first: number, second: number) => void): void {
  let [i, j] = [0, 0];
  while (i < a.length || j < b.length) {
    const x = i < a.length ? numberAt(a, i) : Number.POSITIVE_INFINITY;
    const y = j < b.length ? numberAt(b, j) : Number.POSITIVE_INFINITY;
    onRow(x <= y ? i : -1, y <= x ? j : -1);
    if (x <= y) i += 1;
    if (y <= x) j += 1;
  }
}

import type { Channel, StateColumn } from '../../model/evidence.js';
import type { TimeRange } from '../../model/results.js';
import type { StatedNumbers, UnitLog } from '../../model/unit-log.js';
import { gapLimit } from '../temperature/sampling-interval.js';

/** One reading written in tenths of °F and again in tenths of °C: half a step of each, K. */
const SAME_READING_KELVIN = 0.05 + (0.05 * 5) / 9 + 1e-9;

/** The relation of two logs with the same kinds of columns. */
export type LogRelation =
  /** The logs share rows, and the rows show one instrument. */
  | { is: 'overlap'; span: TimeRange; sharedRows: number; agreeingRows: number }
  /** One log begins where the other ends, within the time that their own steps bridge. */
  | { is: 'continuation' }
  /** The logs cover the same time, and their rows show two instruments. */
  | { is: 'side-by-side'; span: TimeRange; sharedRows: number; agreeingRows: number }
  | { is: 'apart' };

/**
 * Whether two logs come from one instrument. Columns and stated numbers must agree. Where they overlap, at least
 * half of the rows that could be in both are, and at least half of these agree; otherwise one follows the other
 * within the gap limit and at a similar step, or both state the same unit or recorder.
 */
export function relateLogs(first: UnitLog, second: UnitLog): LogRelation {
  const [a, b] = (first.times.at(0) ?? 0) <= (second.times.at(0) ?? 0) ? [first, second] : [second, first];
  if (a.times.length === 0 || b.times.length === 0 || a.compartment !== b.compartment || !sameColumns(a, b))
    return { is: 'apart' };
  const from = b.times.at(0) ?? 0;
  const to = Math.min(a.times.at(-1) ?? 0, b.times.at(-1) ?? 0);
  if (from > to) return follows(a, b) ? { is: 'continuation' } : { is: 'apart' };
  const span = { from, to };
  let agreeingRows = 0;
  let sharedRows = 0;
  forEachSharedRow(a, b, (i, j) => {
    sharedRows += 1;
    if (rowDifferences(a, i, b, j).every(({ is }) => is === 'state')) agreeingRows += 1;
  });
  const possible = Math.min(rowsIn(a, span), rowsIn(b, span));
  const one =
    sharedRows > 0 &&
    2 * sharedRows >= possible &&
    2 * agreeingRows >= sharedRows &&
    sameStated(a.stated, b.stated) !== 'other';
  return { is: one ? 'overlap' : 'side-by-side', span, sharedRows, agreeingRows };
}

function follows(a: UnitLog, b: UnitLog): boolean {
  const stated = sameStated(a.stated, b.stated);
  if (stated === 'other' || a.addedSeconds !== b.addedSeconds) return false;
  if (stated === 'same') return true;
  const [one, other] = [gapLimit(a.times), gapLimit(b.times)];
  const seconds = ((b.times.at(0) ?? 0) - (a.times.at(-1) ?? 0)) / 1000;
  const steps = [one.medianStepSeconds, other.medianStepSeconds].sort((x, y) => x - y);
  const [shorter = 0, longer = 0] = steps;
  return seconds <= Math.min(one.gapLimitSeconds, other.gapLimitSeconds) && longer <= 2 * shorter;
}

function sameColumns(a: UnitLog, b: UnitLog): boolean {
  const names = (log: UnitLog): string => Object.keys(log.channels).sort().join();
  return names(a) === names(b);
}

function sameStated(a: StatedNumbers | undefined, b: StatedNumbers | undefined): 'same' | 'other' | 'silent' {
  let verdict: 'same' | 'silent' = 'silent';
  for (const what of ['trailer', 'unit', 'recorder'] as const) {
    const [one, other] = [a?.[what], b?.[what]];
    if (one === undefined || other === undefined) continue;
    if (one.toUpperCase() !== other.toUpperCase()) return 'other';
    // One trailer can carry several recorders.
    if (what !== 'trailer') verdict = 'same';
  }
  return verdict;
}

function rowsIn({ times }: UnitLog, { from, to }: TimeRange): number {
  return times.filter((at) => at >= from && at <= to).length;
}

/** Walks the rows that two logs have at the same instant. */
export function forEachSharedRow(a: UnitLog, b: UnitLog, shared: (i: number, j: number) => void): void {
  for (let i = 0, j = 0; i < a.times.length && j < b.times.length; ) {
    const [x = 0, y = 0] = [a.times[i], b.times[j]];
    if (x === y) shared(i++, j++);
    else if (x < y) i += 1;
    else j += 1;
  }
}

export type RowDifference =
  | { is: 'channel'; channel: Channel; first: number; second: number }
  | { is: 'state'; state: StateColumn; first: string; second: string };

/** Values in which two rows of one instant differ; a value in only one row is no difference. */
export function rowDifferences(a: UnitLog, i: number, b: UnitLog, j: number): RowDifference[] {
  const found: RowDifference[] = [];
  for (const [channel, values] of Object.entries(a.channels) as [Channel, Float64Array][]) {
    const [first = Number.NaN, second = Number.NaN] = [values[i], b.channels[channel]?.[j]];
    if (Math.abs(first - second) > SAME_READING_KELVIN) found.push({ is: 'channel', channel, first, second });
  }
  for (const [state, texts] of Object.entries(a.states) as [StateColumn, readonly string[]][]) {
    const [first = '', second = ''] = [texts[i], b.states[state]?.[j]];
    if (first !== '' && second !== '' && first.toLowerCase() !== second.toLowerCase())
      found.push({ is: 'state', state, first, second });
  }
  return found;
}

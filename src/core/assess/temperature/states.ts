import type { StateColumn } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import { operationIn } from '../../model/operation.js';
import type { LoggedState, TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { isBlankState, isDefrostWord, isOffWord } from './state-words.js';

/** Readers of a state's text, by kind of event. An unknown word counts as the event only in a column of that event. */
const READERS: Record<LoggedState['is'], { column: StateColumn; says: (text: string) => boolean }[]> = {
  defrost: [
    { column: 'defrost', says: (text) => !isBlankState(text) },
    { column: 'mode', says: isDefrostWord },
    { column: 'power', says: isDefrostWord },
    { column: 'operation', says: (text) => operationIn(text) === 'defrost' },
  ],
  'door-open': [{ column: 'door', says: (text) => !isBlankState(text) }],
  'unit-off': [
    { column: 'power', says: isOffWord },
    { column: 'mode', says: isOffWord },
    { column: 'operation', says: (text) => operationIn(text) === 'off' },
  ],
};

/**
 * Defrosts, open doors and unit-off times of the log's own columns, within the window, in order of their start. A
 * row's state holds until the next row; where that is beyond the gap limit, nothing is known after the row. What is
 * over when the window begins is left out. Columns that say one thing at one time count once.
 */
export function loggedStates(log: UnitLog, window: TimeRange, gapLimitSeconds: number): LoggedState[] {
  const found: LoggedState[] = [];
  for (const is of ['defrost', 'door-open', 'unit-off'] as const) {
    const readers = READERS[is].flatMap(({ column, says }) => {
      const texts = log.states[column];
      return texts === undefined ? [] : [remembered(texts, says)];
    });
    if (readers.length > 0)
      spansOf(
        log.times,
        (i) => readers.some((says) => says(i)),
        gapLimitSeconds * 1000,
        (span, rows) => {
          const { from, to } = span;
          const lasts = to > window.from || (from === to && to === window.from);
          if (lasts && from <= window.to)
            found.push({
              from: Math.max(from, window.from),
              to: Math.min(to, window.to),
              is,
              rows,
              ...omitUndefined({
                beganBefore: from < window.from || from === log.times[0] ? (true as const) : undefined,
              }),
            });
        },
      );
  }
  return found.sort((a, b) => a.from - b.from);
}

/** Unit off for the loading goes on for a while after the doors are closed. Milliseconds; common practice, no source. */
const LEFT_OFF = 30 * 60_000;

/**
 * The states that are events of the window: several rows of the log show them, and they began in the window, or went
 * on for more than half an hour of it. One row shows a state and not how long it lasted.
 */
export const eventsOf = (states: readonly LoggedState[]): LoggedState[] =>
  states.filter(
    ({ rows, beganBefore, from, to }) => rows > 1 && (beganBefore !== true || to - from > LEFT_OFF),
  );

function remembered(texts: readonly string[], says: (text: string) => boolean): (i: number) => boolean {
  const known = new Map<string, boolean>();
  return (i) => {
    const text = texts[i] ?? '';
    const found = known.get(text) ?? says(text);
    known.set(text, found);
    return found;
  };
}

function spansOf(
  times: Float64Array,
  isOn: (i: number) => boolean,
  gapLimit: number,
  onSpan: (span: TimeRange, rows: number) => void,
): void {
  let [from, to, rows] = [Number.NaN, Number.NaN, 0];
  times.forEach((at, i) => {
    if (!isOn(i)) return;
    const next = times[i + 1] ?? at;
    if (to < at) onSpan({ from, to }, rows);
    if (!(to >= at)) [from, rows] = [at, 0];
    rows += 1;
    to = next - at > gapLimit ? at : next;
  });
  if (!Number.isNaN(from)) onSpan({ from, to }, rows);
}

/** Set points closer than this are equal, because displays round to 0.1 °F. Kelvin. */
export const SAME_SET_POINT = 0.03;

/** The set points that the log shows in the window, in runs. A gap ends a run. */
export function loggedSetPoints(
  log: UnitLog,
  window: TimeRange,
  gapLimitSeconds: number,
): (TimeRange & { celsius: number })[] {
  const values = log.channels['set-point'];
  if (values === undefined) return [];
  const runs: (TimeRange & { celsius: number })[] = [];
  let open: (TimeRange & { celsius: number }) | undefined;
  values.forEach((value, i) => {
    if (!Number.isFinite(value)) return;
    const at = log.times[i] as number;
    const joins = open !== undefined && at - open.to <= gapLimitSeconds * 1000;
    if (open !== undefined && joins) open.to = at;
    if (open === undefined || !joins || Math.abs(open.celsius - value) > SAME_SET_POINT) {
      open = { from: at, to: at, celsius: value };
      runs.push(open);
    }
  });
  return runs
    .filter((run) => run.to >= window.from && run.from <= window.to)
    .map((run) => ({ ...run, from: Math.max(run.from, window.from), to: Math.min(run.to, window.to) }));
}

/** The set point that held longest in the window, summed over its runs. */
export function dominantSetPoint(runs: readonly (TimeRange & { celsius: number })[]): number | undefined {
  const sums = new Map<number, { celsius: number; length: number }>();
  for (const run of runs) {
    const key = Math.round(run.celsius / SAME_SET_POINT);
    const same = sums.get(key);
    if (same === undefined) sums.set(key, { celsius: run.celsius, length: run.to - run.from });
    else same.length += run.to - run.from;
  }
  let best: { celsius: number; length: number } | undefined;
  for (const one of sums.values()) if (best === undefined || one.length > best.length) best = one;
  return best?.celsius;
}

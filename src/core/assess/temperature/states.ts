import type { TemperatureResult, TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { isBlankState, isDefrostWord, isOffWord } from './state-words.js';

export type LoggedState = TemperatureResult['logged'][number];

/** Readers of a state's text, by kind of event. An unknown word counts as the event only in a column of that event. */
const READERS: Record<
  LoggedState['is'],
  { column: 'defrost' | 'door' | 'power' | 'mode'; says: (text: string) => boolean }[]
> = {
  defrost: [
    { column: 'defrost', says: (text) => !isBlankState(text) },
    { column: 'mode', says: isDefrostWord },
  ],
  'door-open': [{ column: 'door', says: (text) => !isBlankState(text) }],
  'unit-off': [
    { column: 'power', says: isOffWord },
    { column: 'mode', says: isOffWord },
  ],
};

/**
 * Defrosts, open doors and unit-off times of the log's own columns, within the window, in order of their start. A
 * row's state holds until the next row; where that is beyond the gap limit, nothing is known after the row.
 */
export function loggedStates(log: UnitLog, window: TimeRange, gapLimitSeconds: number): LoggedState[] {
  const found: LoggedState[] = [];
  for (const is of ['defrost', 'door-open', 'unit-off'] as const)
    for (const { column, says } of READERS[is]) {
      const texts = log.states[column];
      if (texts !== undefined)
        spansOf(log.times, texts, says, gapLimitSeconds * 1000, (from, to) => {
          if (to >= window.from && from <= window.to)
            found.push({ from: Math.max(from, window.from), to: Math.min(to, window.to), is });
        });
    }
  return found.sort((a, b) => a.from - b.from);
}

function spansOf(
  times: Float64Array,
  texts: readonly string[],
  says: (text: string) => boolean,
  gapLimit: number,
  onSpan: (from: number, to: number) => void,
): void {
  const known = new Map<string, boolean>();
  let [from, to] = [Number.NaN, Number.NaN];
  texts.forEach((text, i) => {
    let on = known.get(text);
    if (on === undefined) {
      on = says(text);
      known.set(text, on);
    }
    if (on) {
      const at = times[i] as number;
      const next = times[i + 1] ?? at;
      if (to < at) onSpan(from, to);
      if (!(to >= at)) from = at;
      to = next - at > gapLimit ? at : next;
    }
  });
  if (!Number.isNaN(from)) onSpan(from, to);
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

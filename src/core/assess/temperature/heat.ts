import { omitUndefined } from '../../model/omit-undefined.js';
import type { Band, ExcursionHeat, LoggedState, TemperatureResult, TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { ROUNDING } from '../bands.js';
import type { Outside } from './excursion-list.js';
import { firstIndexFrom, walkSegments } from './segments.js';
import { SAME_SET_POINT } from './states.js';

/** Air settles within this after a defrost, a door, or a set point that was moved. Milliseconds; convention. */
const SETTLES = 30 * 60_000;
/** Fewer rows show no usual difference. */
const LEAST_ROWS = 12;
/** Standard deviation over the median distance from the median, for normally distributed values. */
const SIGMAS = 1.4826;
/** An excursion differs from the usual by this many spreads, and by a kelvin at least. Convention. */
const SPREADS = 3;
const LEAST_KELVIN = 1;

type Usual = NonNullable<TemperatureResult['usualReturnMinusSupply']>;

/** Return minus supply air of one log: what is usual on this trip, and what an excursion shows against it. */
export interface HeatOfTrip {
  usual: Usual | undefined;
  during: (one: Outside) => ExcursionHeat | undefined;
}

export interface HeatInput {
  log: UnitLog;
  window: TimeRange;
  gapLimitSeconds: number;
  band: Pick<Band, 'low' | 'high'> | undefined;
  logged: readonly LoggedState[];
  setPoints: readonly (TimeRange & { celsius: number })[];
  /** A unit that starts and stops has two usual differences, so that one tells nothing. */
  startsAndStops: boolean;
}

/**
 * What the air picks up on its way through the load is return minus supply. More of it than usual at one set point says
 * that heat came in; less, while the air is too warm, that the unit cooled less.
 */
export function heatOfTrip(input: HeatInput): HeatOfTrip {
  const { log, gapLimitSeconds, startsAndStops } = input;
  const [returned, supplied] = [log.channels['return-air'], log.channels['supply-air']];
  if (returned === undefined || supplied === undefined) return { usual: undefined, during: () => undefined };
  const apart = returned.map((value, i) => value - (supplied[i] ?? Number.NaN));
  const usual = usualOf(input, returned, apart);
  return {
    usual,
    during: (one) => {
      if (!oneSetPoint(input.setPoints, one)) return undefined;
      const kelvin = meanOver(log.times, apart, one, gapLimitSeconds);
      if (kelvin === undefined) return undefined;
      const shows =
        usual === undefined || startsAndStops || one.side === 'below' ? undefined : compare(kelvin, usual);
      return { kelvin, ...omitUndefined({ shows }) };
    },
  };
}

function compare(kelvin: number, { median, spread }: Usual): NonNullable<ExcursionHeat['shows']> {
  const limit = Math.max(LEAST_KELVIN, SPREADS * spread);
  if (kelvin > median + limit) return 'heat-came-in';
  return kelvin < median - limit ? 'capacity-fell' : 'as-usual';
}

/** Median and spread over the rows in range, away from logged states and from changes of the set point. */
function usualOf(
  { log, window, band, logged, setPoints }: HeatInput,
  returned: Float64Array,
  apart: Float64Array,
): Usual | undefined {
  if (band === undefined) return undefined;
  const disturbed = [
    ...logged.map(({ from, to }) => ({ from, to: to + SETTLES })),
    ...setPoints.slice(1).map(({ from }) => ({ from, to: from + SETTLES })),
  ];
  const isDisturbed = new Uint8Array(log.times.length);
  for (const { from, to } of disturbed)
    isDisturbed.fill(1, firstIndexFrom(log.times, from), firstIndexFrom(log.times, to + 1));
  const values: number[] = [];
  for (let i = firstIndexFrom(log.times, window.from); i < log.times.length; i++) {
    const at = log.times[i] ?? 0;
    if (at > window.to) break;
    const [air, kelvin] = [returned[i] ?? Number.NaN, apart[i] ?? Number.NaN];
    const inRange = air >= band.low - ROUNDING && air <= band.high + ROUNDING;
    if (!inRange || !Number.isFinite(kelvin)) continue;
    if (isDisturbed[i] === 0) values.push(kelvin);
  }
  if (values.length < LEAST_ROWS) return undefined;
  const middle = median(values);
  const spread = SIGMAS * median(values.map((value) => Math.abs(value - middle)));
  return { median: middle, spread, rows: values.length };
}

/** The set point did not move while the air was out of range. A log without set points tells of no change. */
function oneSetPoint(runs: HeatInput['setPoints'], { from, to }: TimeRange): boolean {
  const during = runs.filter((run) => run.to > from && run.from < to).map(({ celsius }) => celsius);
  return during.length === 0 || Math.max(...during) - Math.min(...during) <= SAME_SET_POINT;
}

/** Time-weighted mean over an excursion; undefined where less than half of it is known. */
function meanOver(
  times: Float64Array,
  values: Float64Array,
  { from, to }: TimeRange,
  gapLimitSeconds: number,
): number | undefined {
  let [known, area] = [0, 0];
  walkSegments(times, values, { from, to }, gapLimitSeconds * 1000, {
    segment(t0, v0, t1, v1) {
      known += t1 - t0;
      area += ((v0 + v1) / 2) * (t1 - t0);
    },
    unknown() {},
    isolatedSample() {},
  });
  return known > 0 && known * 2 >= to - from ? area / known : undefined;
}

function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  return ((sorted[(sorted.length - 1) >>> 1] ?? 0) + (sorted[sorted.length >>> 1] ?? 0)) / 2;
}

import { omitUndefined } from '../../model/omit-undefined.js';
import type { RecorderComparison, RecordersResult, SeenClockStep, TimeRange } from '../../model/results.js';
import type { RecordState } from '../../model/state.js';
import type { UnitLog } from '../../model/unit-log.js';
import { sensorAccuracy } from '../measurement/assumed.js';
import { judgedChannel } from '../temperature/channels.js';
import { differenceOf, type Sensor } from '../temperature/difference.js';
import { gapLimit } from '../temperature/sampling-interval.js';
import { alignCurves, type Curve } from './align.js';
import { recorderIdentity } from './recorder-identity.js';

/** Recorders that are farther apart than the limit for this share of the time disagree. Convention. */
const APART = 0.05;
/** A clock that changed by less than this was not set. Seconds; convention. */
const LEAST_STEP = 300;
/** Breaks of a log at which its clock may have been set: a long trip has many, and few of them tell. */
const MOST_BREAKS = 20;

/**
 * The recorders of a delivery beside each other. Each pair that lay in one air, or may have, is put on one clock by the
 * likeness of the two curves, and its difference told; neither corrects the other. Two sensors may be as far apart as
 * both their accuracies together.
 */
export function recordersOf(
  state: RecordState,
  logs: readonly UnitLog[],
  window: TimeRange | undefined,
): RecordersResult | undefined {
  const identities = logs.map((log) => recorderIdentity(log, state));
  if (window === undefined || identities.every(({ instrument }) => instrument === 'unit')) return undefined;
  const sensors = logs.flatMap((log): Sensor[] => {
    const channel = judgedChannel(log);
    return channel === undefined ? [] : [{ log, channel }];
  });
  const comparisons = sensors.flatMap((first, i) =>
    sensors.slice(i + 1).flatMap((second) => {
      const { compartment: one } = first.log;
      const { compartment: other } = second.log;
      const isOtherAir = one !== undefined && other !== undefined && one !== other;
      if (isOtherAir || first.log.evidence === second.log.evidence) return [];
      const limit = accuracyOf(first, state) + accuracyOf(second, state);
      return comparisonOf(first, second, window, limit) ?? [];
    }),
  );
  return { identities, comparisons };
}

const accuracyOf = ({ channel }: Sensor, { delivery }: RecordState): number =>
  sensorAccuracy(delivery, channel).halfWidthKelvin;

function comparisonOf(
  first: Sensor,
  second: Sensor,
  window: TimeRange,
  limit: number,
): RecorderComparison | undefined {
  const [a, b] = [curveOf(first), curveOf(second)];
  const clock = alignCurves(a, b, window);
  const moved = clock !== undefined && Math.abs(clock.seconds) > clock.uncertaintySeconds;
  const onOneClock = moved ? { ...second, log: shifted(second.log, clock.seconds) } : second;
  const difference = differenceOf(first, onOneClock, window, limit);
  if (difference === undefined) return undefined;
  const isApart =
    difference.apartSeconds > APART * difference.knownSeconds || Math.abs(difference.mean) > limit;
  return {
    difference,
    ...omitUndefined({ clock }),
    moved,
    verdict: isApart ? 'disagree' : 'agree',
    clockSteps: [...stepsSeen(first, b, window), ...stepsSeen(second, a, window)],
  };
}

const curveOf = ({ log, channel }: Sensor): Curve => ({
  times: log.times,
  values: log.channels[channel] ?? new Float64Array(log.times.length).fill(Number.NaN),
});

const shifted = (log: UnitLog, seconds: number): UnitLog => ({
  ...log,
  times: log.times.map((at) => at + seconds * 1000),
});

/**
 * Places at which the clock of a log was set, by another recorder: they are aligned on both sides of the place, and not
 * by the same. Looked at are the places that the order of rows shows, and breaks, which a clock put forward leaves.
 */
function stepsSeen(sensor: Sensor, other: Curve, window: TimeRange): SeenClockStep[] {
  const curve = curveOf(sensor);
  return placesOf(sensor.log, window).flatMap(({ before, after, isAfter }): SeenClockStep[] => {
    const [early, late] = split(curve, isAfter);
    const first = alignCurves(early, other, { from: window.from, to: before });
    const second = alignCurves(late, other, { from: after, to: window.to });
    if (first === undefined || second === undefined) return [];
    // The other clock needs as much more added as this one was put forward by.
    const seconds = second.seconds - first.seconds;
    const uncertaintySeconds = first.uncertaintySeconds + second.uncertaintySeconds;
    if (Math.abs(seconds) <= Math.max(LEAST_STEP, uncertaintySeconds)) return [];
    return [{ log: sensor.log.evidence, at: before, seconds, uncertaintySeconds }];
  });
}

interface Place {
  /** The last time before it and the first after it. */
  before: number;
  after: number;
  isAfter: (index: number) => boolean;
}

function placesOf(log: UnitLog, window: TimeRange): Place[] {
  const { times, rows } = log;
  const isBackwards = (rows.at(0) ?? 0) > (rows.at(-1) ?? 0);
  const shown = (log.clockSteps ?? []).map(({ row, from, to }): Place => {
    const isAfter = (index: number) => (isBackwards ? (rows[index] ?? 0) <= row : (rows[index] ?? 0) >= row);
    return { before: from, after: to, isAfter };
  });
  const longest = Math.max(LEAST_STEP, gapLimit(times).medianStepSeconds * 3) * 1000;
  const breaks: Place[] = [];
  for (let i = 1; i < times.length && breaks.length <= MOST_BREAKS; i++) {
    const [before, after] = [times[i - 1] ?? 0, times[i] ?? 0];
    if (after - before > longest && before > window.from && after < window.to)
      breaks.push({ before, after, isAfter: (index) => index >= i });
  }
  return [...shown, ...(breaks.length > MOST_BREAKS ? [] : breaks)];
}

/** The rows before and after a place. */
function split({ times, values }: Curve, isAfter: (index: number) => boolean): [Curve, Curve] {
  const part = (of: (index: number) => boolean): Curve => ({
    times: times.filter((_, index) => of(index)),
    values: values.filter((_, index) => of(index)),
  });
  return [part((index) => !isAfter(index)), part(isAfter)];
}

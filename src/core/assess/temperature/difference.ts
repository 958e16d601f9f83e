import type { Channel } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { ChannelDifference, TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { gapLimit } from './sampling-interval.js';
import { firstIndexFrom, walkSegments } from './segments.js';
import { ChannelSums } from './summary.js';

/** One channel of one log. */
export interface Sensor {
  log: UnitLog;
  channel: Channel;
}

/**
 * One sensor against another over a window, first minus second, kelvin. Both are interpolated at the times of
 * either; where one is unknown, so is the difference. `limit` is the difference beyond which they disagree.
 */
export function differenceOf(
  first: Sensor,
  second: Sensor,
  window: TimeRange,
  limit: number,
): ChannelDifference | undefined {
  const a = first.log.channels[first.channel];
  const b = second.log.channels[second.channel];
  if (a === undefined || b === undefined) return undefined;
  const limits = [first, second].map(({ log }) => gapLimit(log.times).gapLimitSeconds * 1000);
  const { times, values } =
    first.log === second.log
      ? { times: first.log.times, values: a.map((value, i) => value - (b[i] ?? Number.NaN)) }
      : merged({ times: first.log.times, values: a }, { times: second.log.times, values: b }, window, limits);
  const sums = new ChannelSums({ low: -limit, high: limit }, false);
  walkSegments(times, values, window, Math.min(...limits), sums);
  if (sums.known === 0) return undefined;
  return {
    first: { log: first.log.evidence, channel: first.channel },
    second: { log: second.log.evidence, channel: second.channel },
    ...omitUndefined({ compartment: first.log.compartment }),
    mean: sums.area / sums.known,
    min: { kelvin: sums.low, at: sums.lowAt },
    max: { kelvin: sums.high, at: sums.highAt },
    knownSeconds: sums.known / 1000,
    apartSeconds: (sums.above + sums.below) / 1000,
    limitKelvin: limit,
  };
}

interface Series {
  times: Float64Array;
  values: Float64Array;
}

/** The difference at the times of either, including the samples beyond the window's ends that can be joined to it. */
function merged(a: Series, b: Series, window: TimeRange, limits: readonly number[]): Series {
  const [limitA = 0, limitB = 0] = limits;
  const readA = reader(a, limitA);
  const readB = reader(b, limitB);
  const reach = Math.max(limitA, limitB);
  const span = { from: window.from - reach, to: window.to + reach };
  const times = Float64Array.from(new Set([...timesIn(a.times, span), ...timesIn(b.times, span)])).sort();
  return { times, values: times.map((at) => readA(at) - readB(at)) };
}

/** Times from the last before a span to the first after it. */
function timesIn(times: Float64Array, { from, to }: TimeRange): Float64Array {
  return times.subarray(Math.max(0, firstIndexFrom(times, from) - 1), firstIndexFrom(times, to) + 1);
}

/** Interpolates a series at rising times; NaN where it is unknown. */
function reader({ times, values }: Series, limit: number): (at: number) => number {
  let next = 0;
  let left: { at: number; value: number } | undefined;
  return (when) => {
    for (; next < times.length; next++) {
      const value = values[next] ?? Number.NaN;
      if (!Number.isFinite(value)) continue;
      const at = times[next] as number;
      if (at === when) return value;
      if (at > when) {
        if (left === undefined || at - left.at > limit) return Number.NaN;
        return left.value + ((value - left.value) * (when - left.at)) / (at - left.at);
      }
      left = { at, value };
    }
    return Number.NaN;
  };
}

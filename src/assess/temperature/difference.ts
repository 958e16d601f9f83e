import type { Channel } from '../../model/evidence.js';
import type { ChannelDifference, Span } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { firstFrom } from './pieces.js';
import { gapLimit } from './steps.js';
import { summarise } from './summary.js';

/** One channel of one log. */
export interface Sensor {
  log: UnitLog;
  channel: Channel;
}

/**
 * One sensor against another over a window, first minus second, in kelvin. Both are read off their straight lines at
 * the times of either; where one of them is unknown, so is the difference. `limit`: how far apart counts as apart.
 */
export function differenceOf(
  first: Sensor,
  second: Sensor,
  window: Span,
  limit: number,
): ChannelDifference | undefined {
  const a = first.log.channels[first.channel];
  const b = second.log.channels[second.channel];
  if (a === undefined || b === undefined) return undefined;
  const limits = [first, second].map((one) => gapLimit(one.log.times).gapLimitSeconds);
  const joined =
    first.log === second.log ? sameRows(first.log.times, a, b) : mergedRows(first, a, second, b, limits);
  const sums = summarise(first.channel, joined.times, joined.values, window, Math.min(...limits), {
    low: -limit,
    high: limit,
  });
  if (sums.mean === undefined || sums.min === undefined || sums.max === undefined) return undefined;
  return {
    first: { log: first.log.evidence, channel: first.channel },
    second: { log: second.log.evidence, channel: second.channel },
    mean: sums.mean,
    min: { kelvin: sums.min.value, at: sums.min.at },
    max: { kelvin: sums.max.value, at: sums.max.at },
    knownSeconds: sums.knownSeconds,
    apartSeconds: sums.aboveSeconds + sums.belowSeconds,
    limitKelvin: limit,
  };
}

interface Series {
  times: Float64Array;
  values: Float64Array;
}

function sameRows(times: Float64Array, a: Float64Array, b: Float64Array): Series {
  return { times, values: a.map((value, i) => value - (b[i] as number)) };
}

function mergedRows(
  first: Sensor,
  a: Float64Array,
  second: Sensor,
  b: Float64Array,
  limits: readonly number[],
): Series {
  const all = new Float64Array(first.log.times.length + second.log.times.length);
  all.set(first.log.times);
  all.set(second.log.times, first.log.times.length);
  const times = Float64Array.from(new Set(all.sort()));
  const [limitA = 0, limitB = 0] = limits;
  const readA = reader(first.log.times, a, limitA * 1000);
  const readB = reader(second.log.times, b, limitB * 1000);
  return { times, values: times.map((at) => readA(at) - readB(at)) };
}

/** Reads a series off its straight lines at rising times; NaN where it is unknown. */
function reader(times: Float64Array, values: Float64Array, limit: number): (at: number) => number {
  const known = Uint32Array.from(times.keys()).filter((i) => Number.isFinite(values[i]));
  const at = Float64Array.from(known, (i) => times[i] as number);
  return (when) => {
    const next = firstFrom(at, when);
    const right = known[next];
    if (right === undefined) return Number.NaN;
    if (at[next] === when) return values[right] as number;
    const left = known[next - 1];
    if (next === 0 || left === undefined) return Number.NaN;
    const [t0, t1] = [at[next - 1] as number, at[next] as number];
    if (t1 - t0 > limit) return Number.NaN;
    const [v0, v1] = [values[left] as number, values[right] as number];
    return v0 + ((v1 - v0) * (when - t0)) / (t1 - t0);
  };
}

import type { Channel } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { Band, ChannelSummary, TimeRange } from '../../model/results.js';
import { ROUNDING } from '../bands.js';
import { meanOutside, shareOutside } from './integral.js';
import { kineticCelsius, meanRate } from './kinetic.js';
import { firstIndexFrom, type SegmentSink, walkSegments } from './segments.js';

const MS_PER_HOUR = 3_600_000;

/** Sums over the segments of one channel; milliseconds and °C until the end. */
export class ChannelSums implements SegmentSink {
  known = 0;
  area = 0;
  above = 0;
  below = 0;
  areaAbove = 0;
  areaBelow = 0;
  low = Number.POSITIVE_INFINITY;
  lowAt = 0;
  high = Number.NEGATIVE_INFINITY;
  highAt = 0;
  /** Sum of Arrhenius rates times length, and the longest step without a sample. */
  rates = 0;
  silence = 0;
  private readonly lowest: number;
  private readonly highest: number;

  constructor(
    band: Pick<Band, 'low' | 'high'> | undefined,
    private readonly kinetic: boolean,
  ) {
    this.lowest = (band?.low ?? Number.NEGATIVE_INFINITY) - ROUNDING;
    this.highest = (band?.high ?? Number.POSITIVE_INFINITY) + ROUNDING;
  }

  segment(t0: number, v0: number, t1: number, v1: number): void {
    const length = t1 - t0;
    this.known += length;
    this.area += ((v0 + v1) / 2) * length;
    if (this.kinetic) this.rates += meanRate(v0, v1) * length;
    if (length > this.silence) this.silence = length;
    this.isolatedSample(t0, v0);
    this.isolatedSample(t1, v1);
    if (v0 > this.highest || v1 > this.highest) {
      this.above += shareOutside(v0 - this.highest, v1 - this.highest) * length;
      this.areaAbove += meanOutside(v0 - this.highest, v1 - this.highest) * length;
    }
    if (v0 < this.lowest || v1 < this.lowest) {
      this.below += shareOutside(this.lowest - v0, this.lowest - v1) * length;
      this.areaBelow += meanOutside(this.lowest - v0, this.lowest - v1) * length;
    }
  }

  unknown(from: number, to: number): void {
    this.silence = Math.max(this.silence, to - from);
  }

  isolatedSample(t: number, v: number): void {
    if (v < this.low) {
      this.low = v;
      this.lowAt = t;
    }
    if (v > this.high) {
      this.high = v;
      this.highAt = t;
    }
  }
}

function samplesIn(times: Float64Array, values: Float64Array, window: TimeRange): number {
  let samples = 0;
  for (let i = firstIndexFrom(times, window.from); (times[i] ?? Number.POSITIVE_INFINITY) <= window.to; i++)
    if (Number.isFinite(values[i])) samples++;
  return samples;
}

/**
 * Summary of one channel over a window: time-weighted mean, extremes, time in and out of range, degree-hours. Only
 * known time counts; `coverage` is its share of the window. Without a range all known time is in range. `kinetic`
 * adds the mean kinetic temperature: the integral of the rate over the straight lines.
 */
export function summarise(
  channel: Channel,
  times: Float64Array,
  values: Float64Array,
  window: TimeRange,
  gapLimitSeconds: number,
  band: Pick<Band, 'low' | 'high'> | undefined,
  kinetic = false,
): ChannelSummary {
  const sums = new ChannelSums(band, kinetic);
  walkSegments(times, values, window, gapLimitSeconds * 1000, sums);
  const length = window.to - window.from;
  return {
    channel,
    ...omitUndefined({ mean: sums.known > 0 ? sums.area / sums.known : undefined }),
    ...(sums.low <= sums.high
      ? { min: { value: sums.low, at: sums.lowAt }, max: { value: sums.high, at: sums.highAt } }
      : {}),
    knownSeconds: sums.known / 1000,
    coverage: length > 0 ? sums.known / length : 0,
    inBandSeconds: Math.max(0, sums.known - sums.above - sums.below) / 1000,
    aboveSeconds: sums.above / 1000,
    belowSeconds: sums.below / 1000,
    degreeHoursAbove: sums.areaAbove / MS_PER_HOUR,
    degreeHoursBelow: sums.areaBelow / MS_PER_HOUR,
    samples: samplesIn(times, values, window),
    longestSilenceSeconds: sums.silence / 1000,
    ...omitUndefined({
      meanKinetic: kinetic && sums.known > 0 ? kineticCelsius(sums.rates / sums.known) : undefined,
    }),
  };
}

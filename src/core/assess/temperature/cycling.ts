import type { Channel } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { Cycling, TimeRange } from '../../model/results.js';
import { shareOutside } from './integral.js';
import { type SegmentSink, walkSegments } from './segments.js';

/** Distance beyond the set point for a swing to count, kelvin; smaller movement is flicker. Convention. */
const PAST_SET_POINT = 0.25;

type Run = TimeRange & { celsius: number };

/** Counts the swings of air around the set point; times in milliseconds, distances in kelvin. */
class Swings implements SegmentSink {
  setPoint = 0;
  known = 0;
  area = 0;
  within = 0;
  low = { kelvin: Number.POSITIVE_INFINITY, at: 0 };
  high = { kelvin: Number.NEGATIVE_INFINITY, at: 0 };
  readonly periods: number[] = [];
  readonly sizes: number[] = [];
  private side = 0;
  private upAt = Number.NaN;
  private begun = Number.NaN;
  private least = 0;
  private most = 0;

  constructor(private readonly tolerance: number) {}

  segment(t0: number, v0: number, t1: number, v1: number): void {
    const d0 = v0 - this.setPoint;
    const d1 = v1 - this.setPoint;
    const length = t1 - t0;
    this.known += length;
    this.area += ((d0 + d1) / 2) * length;
    const out =
      shareOutside(d0 - this.tolerance, d1 - this.tolerance) +
      shareOutside(-d0 - this.tolerance, -d1 - this.tolerance);
    this.within += Math.max(0, 1 - out) * length;
    if (d0 <= 0 && d1 > 0) this.upAt = t0 + (length * -d0) / (d1 - d0);
    this.extreme(t0, d0);
    this.extreme(t1, d1);
    this.turn(d0);
    this.turn(d1);
  }

  private extreme(at: number, kelvin: number): void {
    if (kelvin < this.low.kelvin) this.low = { kelvin, at };
    if (kelvin > this.high.kelvin) this.high = { kelvin, at };
  }

  private turn(d: number): void {
    this.least = Math.min(this.least, d);
    this.most = Math.max(this.most, d);
    if (d < -PAST_SET_POINT) this.side = -1;
    if (d <= PAST_SET_POINT) return;
    if (this.side === -1) {
      if (!Number.isNaN(this.begun)) {
        this.periods.push(this.upAt - this.begun);
        this.sizes.push(this.most - this.least);
      }
      this.begun = this.upAt;
      this.least = d;
      this.most = d;
    }
    this.side = 1;
  }

  /** Ends the open swing at a data gap or a change of set point. */
  restart(): void {
    this.side = 0;
    this.begun = Number.NaN;
  }

  unknown(): void {
    this.restart();
  }

  isolatedSample(): void {}
}

/**
 * Cycling of one channel about the set point, over the runs in which the set point held. A cycle is one swing from
 * an upward crossing to the next, with at least 0.25 K on either side; period and swing are medians. Undefined when
 * air and set point are never known together.
 */
export function cyclingOf(
  channel: Channel,
  times: Float64Array,
  values: Float64Array,
  runs: readonly Run[],
  gapLimitSeconds: number,
  toleranceKelvin: number,
  setPointFrom: Cycling['setPointFrom'],
): Cycling | undefined {
  const swings = new Swings(toleranceKelvin);
  for (const run of runs) {
    swings.setPoint = run.celsius;
    swings.restart();
    walkSegments(times, values, run, gapLimitSeconds * 1000, swings);
  }
  if (swings.known === 0) return undefined;
  const cycles = swings.periods.length;
  const swing = median(swings.sizes);
  const period = median(swings.periods);
  return {
    channel,
    setPointFrom,
    knownSeconds: swings.known / 1000,
    meanOffset: swings.area / swings.known,
    withinSeconds: swings.within / 1000,
    toleranceKelvin,
    cycles,
    ...omitUndefined({ swingKelvin: swing, periodSeconds: period === undefined ? undefined : period / 1000 }),
    lowest: swings.low,
    highest: swings.high,
  };
}

function median(list: readonly number[]): number | undefined {
  const sorted = Float64Array.from(list).sort();
  const low = sorted[(sorted.length - 1) >>> 1];
  const high = sorted[sorted.length >>> 1];
  return low === undefined || high === undefined ? undefined : (low + high) / 2;
}

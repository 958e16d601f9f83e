import type { Channel } from '../../model/evidence.js';
import { exp, expm1 } from '../../model/exponential.js';
import type { TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { type SegmentSink, walkSegments } from '../temperature/segments.js';
import {
  type Heating,
  NO_HEATING,
  type ProductGroup,
  type ProductStart,
  RespiringProducts,
} from './heated.js';

/**
 * Follows products through the segments of the air; across unknown time the air is interpolated to the next sample.
 * A segment from v0 to v1 takes a product from T to d T + m v0 + w (v1 − v0) + hτm, with x = seconds/τ, d = e^(−x),
 * m = 1 − d and w = 1 − m/x: `productAfter`, with the factors common to all products of a time constant computed
 * once. Without respiration this is linear in T, so the result for any start follows from the result for 0 °C.
 * Respiration follows the product's temperature by the factor e^(slope × change).
 */
class Products implements SegmentSink {
  private readonly taus: Float64Array;
  private readonly decay: Float64Array;
  private readonly toAir: Float64Array;
  private readonly withAir: Float64Array;
  private readonly toHeat: Float64Array;
  /** What the current segment adds to a product of each time constant, without its own heat. */
  private readonly fromAir: Float64Array;
  /** Result from 0 °C without heat, one for each time constant; empty where all products respire. */
  private readonly fromZero: Float64Array;
  private readonly heated: RespiringProducts;
  private lastAt: number;
  private lastAir = Number.NaN;
  private step = Number.NaN;

  constructor(
    private readonly groups: readonly ProductGroup[],
    private readonly from: number,
  ) {
    this.taus = Float64Array.from(new Set(groups.flatMap((group) => group.starts.map(({ tau }) => tau))));
    const { length } = this.taus;
    this.decay = new Float64Array(length);
    this.toAir = new Float64Array(length);
    this.withAir = new Float64Array(length);
    this.toHeat = new Float64Array(length);
    this.fromAir = new Float64Array(length);
    this.fromZero = new Float64Array(groups.some(({ heating }) => heating.length === 0) ? length : 0);
    this.heated = new RespiringProducts(groups, this.taus);
    this.lastAt = from;
  }

  segment(t0: number, v0: number, t1: number, v1: number): void {
    if (t0 > this.lastAt) this.move(this.lastAt, Number.isNaN(this.lastAir) ? v0 : this.lastAir, t0, v0);
    this.move(t0, v0, t1, v1);
  }

  isolatedSample(t: number, v: number): void {
    if (t > this.lastAt) this.move(this.lastAt, Number.isNaN(this.lastAir) ? v : this.lastAir, t, v);
    this.lastAir = v;
  }

  unknown(): void {}

  private move(t0: number, v0: number, t1: number, v1: number): void {
    const { taus, decay, toAir, withAir, fromAir, fromZero } = this;
    const seconds = (t1 - t0) / 1000;
    if (seconds !== this.step) this.setStep(seconds);
    const rise = v1 - v0;
    for (let i = 0; i < taus.length; i++)
      fromAir[i] = (toAir[i] as number) * v0 + (withAir[i] as number) * rise;
    for (let i = 0; i < fromZero.length; i++)
      fromZero[i] = (decay[i] as number) * (fromZero[i] as number) + (fromAir[i] as number);
    this.heated.move(decay, fromAir, this.toHeat);
    this.lastAt = t1;
    this.lastAir = v1;
  }

  private setStep(seconds: number): void {
    this.step = seconds;
    this.taus.forEach((tau, i) => {
      const toAir = -expm1(-seconds / tau);
      this.decay[i] = exp(-seconds / tau);
      this.toAir[i] = toAir;
      this.withAir[i] = 1 - (toAir * tau) / seconds;
      this.toHeat[i] = toAir * tau;
    });
  }

  /** Continues to the window's end in the last known air; the products of each group. */
  finish(to: number): Float64Array[] {
    if (to > this.lastAt && !Number.isNaN(this.lastAir))
      this.move(this.lastAt, this.lastAir, to, this.lastAir);
    const seconds = (this.lastAt - this.from) / 1000;
    return this.groups.map(({ starts, heating }, group) =>
      heating.length > 0
        ? this.heated.of(group)
        : Float64Array.from(
            starts,
            ({ celsius, tau }) =>
              (this.fromZero[this.taus.indexOf(tau)] as number) + celsius * exp(-seconds / tau),
          ),
    );
  }
}

/**
 * Temperatures of products at the end of a window that start as given and follow a channel's air, for each group.
 * The air is piecewise linear and each segment is solved exactly; respiration is constant within a segment, at the
 * product's temperature at its start.
 */
export function groupsAtEnd(
  log: UnitLog,
  channel: Channel,
  window: TimeRange,
  gapLimitSeconds: number,
  groups: readonly ProductGroup[],
): Float64Array[] {
  const products = new Products(groups, window.from);
  const values = log.channels[channel];
  if (values !== undefined) walkSegments(log.times, values, window, gapLimitSeconds * 1000, products);
  return products.finish(window.to);
}

/** Temperatures at the end of a window for one group of products. */
export function productsAtEnd(
  log: UnitLog,
  channel: Channel,
  window: TimeRange,
  gapLimitSeconds: number,
  starts: readonly ProductStart[],
  heating: Heating = NO_HEATING,
): Float64Array {
  const [products] = groupsAtEnd(log, channel, window, gapLimitSeconds, [{ starts, heating }]);
  return products ?? new Float64Array();
}

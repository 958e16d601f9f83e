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
 * Follows products through the pieces of the air; over unknown time the air goes straight to the next sample.
 * A piece of air from v0 to v1 brings a product from T to d T + m v0 + w (v1 − v0) + hτm, with x = seconds/τ,
 * d = e^(−x), m = 1 − d and w = 1 − m/x: `productAfter`, with what is one for all products of a time constant worked
 * out once. Without heat of its own that is linear in T, so where a product of one time constant gets from any
 * start follows from where it gets from 0 °C. Heat follows its product's temperature by the factor e^(slope × change).
 */
class Products implements SegmentSink {
  private readonly taus: Float64Array;
  private readonly decay: Float64Array;
  private readonly toAir: Float64Array;
  private readonly withAir: Float64Array;
  private readonly toHeat: Float64Array;
  /** What the piece at hand adds to a product of each time constant besides its own heat. */
  private readonly fromAir: Float64Array;
  /** From 0 °C without heat, one for each time constant; none where all make heat. */
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

  /** To the window's end in the last known air; for each group its products. */
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
 * The temperatures that products have at the end of a window when they start as given and follow the air of a channel,
 * for each group. The air is piecewise linear and each piece is solved exactly; the heat of respiration is constant
 * within a piece, at the product's temperature at its start.
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

/** The same for one group of products. */
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

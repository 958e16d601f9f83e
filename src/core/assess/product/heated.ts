import { type RateStretch, rateInStretch } from '../../reference/respiration.js';

/** Between two temperatures, °C, the heat of respiration warms a product by `rate × exp(slope × (T − from))`, K/s. */
export type HeatStretch = Pick<RateStretch, 'from' | 'to' | 'rate' | 'slope'>;
/** From the coldest to the warmest, without gaps; empty for a product without respiration. */
export type Heating = readonly HeatStretch[];
export const NO_HEATING: Heating = [];

/** One product among those in the same air. */
export interface ProductStart {
  /** °C at the window's start. */
  celsius: number;
  /** Time constant, seconds. */
  tau: number;
}

/** Products with the same respiration. */
export interface ProductGroup {
  starts: readonly ProductStart[];
  heating: Heating;
}

/** Below this change the first terms of the exponential suffice: the rest is under 1e-17. */
const SMALL = 1e-3;
/** Segments after which respiration is computed anew, so that rounding does not add up. */
const ANEW = 1024;

/** Respiring products of all groups, side by side. */
export class RespiringProducts {
  private readonly celsius: Float64Array;
  private readonly heat: Float64Array;
  /** Index of each product's time constant and group. */
  private readonly tau: Uint32Array;
  private readonly group: Uint32Array;
  /** Lower end of each product's temperature stretch. */
  private readonly low: Float64Array;
  private readonly high: Float64Array;
  private readonly slope: Float64Array;
  private moves = 0;

  constructor(
    private readonly groups: readonly ProductGroup[],
    taus: Float64Array,
  ) {
    const all = groups.flatMap(({ starts, heating }, group) =>
      heating.length === 0 ? [] : starts.map((start) => ({ ...start, group })),
    );
    this.celsius = Float64Array.from(all, (one) => one.celsius);
    this.tau = Uint32Array.from(all, (one) => taus.indexOf(one.tau));
    this.group = Uint32Array.from(all, (one) => one.group);
    this.heat = new Float64Array(all.length);
    this.low = new Float64Array(all.length);
    this.high = new Float64Array(all.length);
    this.slope = new Float64Array(all.length);
  }

  /** Advances by one segment. Respiration is taken at the temperature of the segment's start. */
  move(decay: Float64Array, fromAir: Float64Array, toHeat: Float64Array): void {
    if (this.moves++ % ANEW === 0) this.anew();
    const { celsius, heat, tau, low, high, slope } = this;
    for (let i = 0; i < celsius.length; i++) {
      const now = celsius[i] as number;
      const j = tau[i] as number;
      const next =
        (decay[j] as number) * now + (fromAir[j] as number) + (toHeat[j] as number) * (heat[i] as number);
      celsius[i] = next;
      const x = (slope[i] as number) * (next - now);
      if (next >= (low[i] as number) && next <= (high[i] as number) && x < SMALL && x > -SMALL)
        heat[i] = (heat[i] as number) * (1 + x * (1 + x * (1 / 2 + x * (1 / 6 + x / 24))));
      else this.workOut(i);
    }
  }

  private anew(): void {
    for (let i = 0; i < this.celsius.length; i++) this.workOut(i);
  }

  private workOut(i: number): void {
    const celsius = this.celsius[i] as number;
    const heating = this.groups[this.group[i] as number]?.heating ?? NO_HEATING;
    const stretch = heating.find((one) => celsius <= one.to) ?? heating.at(-1);
    if (stretch === undefined) return;
    this.low[i] = stretch.from;
    this.high[i] = stretch.to;
    this.slope[i] = stretch.slope;
    this.heat[i] = rateInStretch(stretch, celsius);
  }

  /** The temperatures of one group's products. */
  of(group: number): Float64Array {
    return this.celsius.filter((_, i) => this.group[i] === group);
  }
}

import type { Channel } from '../../model/evidence.js';
import type { Span } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { type Sink, walk } from '../temperature/pieces.js';
import { productAfter } from './cooling.js';

/** Heating of the product by its own respiration in K/s, at a temperature in °C. */
export type Heating = (celsius: number) => number;
export const NO_HEATING: Heating = () => 0;

/** One product among those that follow the same air. */
export interface Start {
  /** °C at the window's start. */
  celsius: number;
  /** Time constant, seconds. */
  tau: number;
}

/** Follows products through the pieces of the air; over unknown time the air goes straight to the next sample. */
class Products implements Sink {
  readonly celsius: Float64Array;
  private readonly taus: Float64Array;
  private readonly decays: Float64Array;
  private lastAt: number;
  private lastAir = Number.NaN;
  private step = Number.NaN;

  constructor(
    starts: readonly Start[],
    private readonly heating: Heating,
    from: number,
  ) {
    this.celsius = Float64Array.from(starts, (one) => one.celsius);
    this.taus = Float64Array.from(starts, (one) => one.tau);
    this.decays = new Float64Array(starts.length);
    this.lastAt = from;
  }

  piece(t0: number, v0: number, t1: number, v1: number): void {
    if (t0 > this.lastAt) this.move(this.lastAt, Number.isNaN(this.lastAir) ? v0 : this.lastAir, t0, v0);
    this.move(t0, v0, t1, v1);
  }

  run(times: Float64Array, values: Float64Array, first: number, last: number): void {
    for (let i = first; i < last; i++)
      this.piece(times[i] as number, values[i] as number, times[i + 1] as number, values[i + 1] as number);
  }

  alone(t: number, v: number): void {
    if (t > this.lastAt) this.move(this.lastAt, Number.isNaN(this.lastAir) ? v : this.lastAir, t, v);
    this.lastAir = v;
  }

  unknown(): void {}

  private move(t0: number, v0: number, t1: number, v1: number): void {
    const { celsius, taus, decays, heating } = this;
    const seconds = (t1 - t0) / 1000;
    if (seconds !== this.step) {
      this.step = seconds;
      for (let i = 0; i < taus.length; i++) decays[i] = Math.exp(-seconds / (taus[i] as number));
    }
    for (let i = 0; i < celsius.length; i++) {
      const now = celsius[i] as number;
      const heat = heating === NO_HEATING ? 0 : heating(now);
      celsius[i] = productAfter(now, v0, v1, seconds, taus[i] as number, heat, decays[i] as number);
    }
    this.lastAt = t1;
    this.lastAir = v1;
  }

  /** To the window's end in the last known air. */
  finish(to: number): Float64Array {
    if (to > this.lastAt && !Number.isNaN(this.lastAir))
      this.move(this.lastAt, this.lastAir, to, this.lastAir);
    return this.celsius;
  }
}

/**
 * The temperatures that products have at the end of a window when they start as given and follow the air of a channel.
 * The air is piecewise linear and each piece is solved exactly; the heat of respiration is constant within a piece, at
 * the product's temperature at its start.
 */
export function productsAtEnd(
  log: UnitLog,
  channel: Channel,
  window: Span,
  gapLimitSeconds: number,
  starts: readonly Start[],
  heating: Heating = NO_HEATING,
): Float64Array {
  const products = new Products(starts, heating, window.from);
  const values = log.channels[channel];
  if (values !== undefined) walk(log.times, values, window, gapLimitSeconds * 1000, products);
  return products.finish(window.to);
}

import type { Channel } from '../../model/evidence.js';
import type { Span } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { type Sink, walk } from '../temperature/pieces.js';
import { productAfter } from './cooling.js';

/** Heating of the product by its own respiration in K/s, at a temperature in °C. */
export type Heating = (celsius: number) => number;
export const NO_HEATING: Heating = () => 0;

/** Follows the product through the pieces of the air; over unknown time the air goes straight to the next sample. */
class Product implements Sink {
  private lastAt: number;
  private lastAir = Number.NaN;
  private step = Number.NaN;
  private decay = 1;

  constructor(
    public celsius: number,
    private readonly tau: number,
    private readonly heating: Heating,
    from: number,
  ) {
    this.lastAt = from;
  }

  piece(t0: number, v0: number, t1: number, v1: number): void {
    if (t0 > this.lastAt) this.move(this.lastAt, Number.isNaN(this.lastAir) ? v0 : this.lastAir, t0, v0);
    this.move(t0, v0, t1, v1);
  }

  alone(t: number, v: number): void {
    if (t > this.lastAt) this.move(this.lastAt, Number.isNaN(this.lastAir) ? v : this.lastAir, t, v);
    this.lastAir = v;
  }

  unknown(): void {}

  private move(t0: number, v0: number, t1: number, v1: number): void {
    const seconds = (t1 - t0) / 1000;
    if (seconds !== this.step) {
      this.step = seconds;
      this.decay = Math.exp(-seconds / this.tau);
    }
    this.celsius = productAfter(
      this.celsius,
      v0,
      v1,
      seconds,
      this.tau,
      this.heating(this.celsius),
      this.decay,
    );
    this.lastAt = t1;
    this.lastAir = v1;
  }

  /** To the window's end in the last known air. */
  finish(to: number): number {
    if (to > this.lastAt && !Number.isNaN(this.lastAir))
      this.move(this.lastAt, this.lastAir, to, this.lastAir);
    return this.celsius;
  }
}

/**
 * The temperature that product has at the end of a window when it starts at `start` and follows the air of a channel
 * with time constant `tau` (seconds). The air is piecewise linear and each piece is solved exactly; the heat of
 * respiration is constant within a piece, at the product's temperature at its start.
 */
export function productAtEnd(
  log: UnitLog,
  channel: Channel,
  window: Span,
  gapLimitSeconds: number,
  start: number,
  tau: number,
  heating: Heating = NO_HEATING,
): number {
  const product = new Product(start, tau, heating, window.from);
  const values = log.channels[channel];
  if (values !== undefined) walk(log.times, values, window, gapLimitSeconds * 1000, product);
  return product.finish(window.to);
}

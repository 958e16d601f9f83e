import type { NumberColumn } from '../../model/columns/number-column.js';
import type { Span } from '../../model/results.js';
import { type Respiration, rateAt } from '../../reference/respiration.js';
import { type Sink, walk } from './pieces.js';

/** Adds up respiration over the pieces of the air, cut where the published rates have a temperature. */
class Used implements Sink {
  known = 0;
  sum = 0;
  beyond = 0;
  private lastValue = Number.NaN;
  private lastRate = 0;

  constructor(
    private readonly respiration: Respiration,
    private readonly knots: readonly number[],
  ) {}

  piece(t0: number, v0: number, t1: number, v1: number): void {
    const length = t1 - t0;
    this.known += length;
    const rising = v1 > v0;
    let [at, value] = [0, v0];
    for (let i = 0; i < this.knots.length; i++) {
      const knot = this.knots[rising ? i : this.knots.length - 1 - i] as number;
      if ((knot - v0) * (knot - v1) >= 0) continue;
      const next = (knot - v0) / (v1 - v0);
      this.add((next - at) * length, value, knot);
      at = next;
      value = knot;
    }
    this.add((1 - at) * length, value, v1);
  }

  /** The end of one piece is the start of the next: its rate is known. */
  private rate(celsius: number): number {
    if (celsius !== this.lastValue) {
      this.lastValue = celsius;
      this.lastRate = rateAt(this.respiration, celsius, 'middle');
    }
    return this.lastRate;
  }

  /** ln R is linear in T between knots, so the mean of R over the part is (R₁ − R₀)/ln(R₁/R₀). */
  private add(length: number, v0: number, v1: number): void {
    const r0 = this.rate(v0);
    const r1 = this.rate(v1);
    const mean = Math.abs(r1 - r0) < 1e-9 * r0 ? (r0 + r1) / 2 : (r1 - r0) / Math.log(r1 / r0);
    this.sum += mean * length;
    const middle = (v0 + v1) / 2;
    if (middle < (this.knots[0] ?? 0) || middle > (this.knots.at(-1) ?? 0)) this.beyond += length;
  }

  unknown(): void {}
  alone(): void {}
}

/**
 * How long at the reference temperature would have cost as much of the product's life as the air did: the integral of
 * R(T)/R(reference) over known time, in seconds, with R the published respiration and its own Q10 between published
 * temperatures (Saltveit in USDA Agriculture Handbook 66: life goes as one over the rate). An estimate; it does not hold
 * below a chilling threshold, where cold itself shortens life.
 */
export function lifeUsed(
  times: NumberColumn,
  values: NumberColumn,
  window: Span,
  gapLimitSeconds: number,
  respiration: Respiration,
  reference: number,
): { knownSeconds: number; equivalentSeconds: number; extrapolatedSeconds: number } {
  const used = new Used(
    respiration,
    respiration.points.map((point) => point.celsius),
  );
  walk(times, values, window, gapLimitSeconds * 1000, used);
  return {
    knownSeconds: used.known / 1000,
    equivalentSeconds: used.sum / rateAt(respiration, reference, 'middle') / 1000,
    extrapolatedSeconds: used.beyond / 1000,
  };
}

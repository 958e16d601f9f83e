import type { TimeRange } from '../../model/results.js';
import {
  type RateStretch,
  type Respiration,
  rateAt,
  rateInStretch,
  rateStretches,
} from '../../reference/respiration.js';
import { type SegmentSink, walkSegments } from './segments.js';

/** Sums respiration over the segments of the air, cut at the temperatures of published rates. */
class Used implements SegmentSink {
  known = 0;
  sum = 0;
  beyond = 0;
  #stretch: RateStretch;
  /** The end of one segment is the start of the next, so its rate is known. */
  #lastValue = Number.NaN;
  #lastRate = 0;

  constructor(
    private readonly stretches: readonly RateStretch[],
    first: RateStretch,
  ) {
    this.#stretch = first;
  }

  segment(t0: number, v0: number, t1: number, v1: number): void {
    const length = t1 - t0;
    this.known += length;
    const here = this.#stretch;
    if (v0 >= here.from && v0 <= here.to && v1 >= here.from && v1 <= here.to) {
      this.#add(here, length, v0, v1);
      return;
    }
    const [low, high] = [Math.min(v0, v1), Math.max(v0, v1)];
    for (const stretch of this.stretches) {
      const [from, to] = [Math.max(low, stretch.from), Math.min(high, stretch.to)];
      if (from > to || (from === to && low !== high)) continue;
      this.#stretch = stretch;
      // A level segment needs only one stretch.
      this.#add(stretch, low === high ? length : (length * (to - from)) / (high - low), from, to);
      if (low === high) return;
    }
    // The last stretch counted need not be the one that the segment ends in.
    this.#lastValue = Number.NaN;
  }

  /** ln R is linear in T within a stretch, so the mean of R over a part is (R₁ − R₀)/ln(R₁/R₀). */
  #add(stretch: RateStretch, length: number, v0: number, v1: number): void {
    const r0 = v0 === this.#lastValue ? this.#lastRate : rateInStretch(stretch, v0);
    const r1 = v1 === v0 ? r0 : rateInStretch(stretch, v1);
    this.#lastValue = v1;
    this.#lastRate = r1;
    const grown = stretch.slope * (v1 - v0);
    const mean = Math.abs(grown) < 1e-9 ? (r0 + r1) / 2 : (r1 - r0) / grown;
    this.sum += mean * length;
    // Air constant at the outermost published temperature is not beyond it.
    if (stretch.beyond && (v0 !== v1 || (v0 !== stretch.from && v0 !== stretch.to))) this.beyond += length;
  }

  unknown(): void {}
  isolatedSample(): void {}
}

/**
 * Shelf life consumed, as the time at the reference temperature that consumes as much: the integral of
 * R(T)/R(reference) over known time, seconds, with R the published respiration, interpolated by its own Q10
 * (Saltveit in USDA Agriculture Handbook 66: shelf life is inversely proportional to respiration). An estimate; it
 * does not hold below a chilling threshold, where cold itself shortens life.
 */
export function lifeUsed(
  times: Float64Array,
  values: Float64Array,
  window: TimeRange,
  gapLimitSeconds: number,
  respiration: Respiration,
  reference: number,
): { knownSeconds: number; equivalentSeconds: number; extrapolatedSeconds: number } {
  const stretches = rateStretches(respiration, 'middle');
  const [first] = stretches;
  if (first === undefined) return { knownSeconds: 0, equivalentSeconds: 0, extrapolatedSeconds: 0 };
  const used = new Used(stretches, first);
  walkSegments(times, values, window, gapLimitSeconds * 1000, used);
  return {
    knownSeconds: used.known / 1000,
    equivalentSeconds: used.sum / rateAt(respiration, reference, 'middle') / 1000,
    extrapolatedSeconds: used.beyond / 1000,
  };
}

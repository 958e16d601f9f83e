import type { Span } from '../../model/results.js';

/** Where the pieces of a channel go, in ascending time. Times in milliseconds, values in °C. */
export interface Sink {
  /** The value runs in a straight line from (t0, v0) to (t1, v1); t0 < t1. */
  piece(t0: number, v0: number, t1: number, v1: number): void;
  /** Nothing is known between the two; from < to. */
  unknown(from: number, to: number): void;
  /** One sample with nothing known on either side of it. */
  alone(t: number, v: number): void;
}

/** Index of the first time at or after `at`; times.length when there is none. */
export function firstFrom(times: Float64Array, at: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((times[middle] ?? 0) < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Walks one channel over a window. Neighbouring samples are joined by a straight line unless they are more than
 * `gapLimit` milliseconds apart; values that are not finite are no samples. Pieces are cut at the window's ends.
 * Allocates nothing per sample.
 */
export function walk(
  times: Float64Array,
  values: Float64Array,
  window: Span,
  gapLimit: number,
  sink: Sink,
): void {
  const { from, to } = window;
  let index = firstFrom(times, from);
  let before = index - 1;
  while (before >= 0 && !Number.isFinite(values[before])) before--;
  let t0 = before >= 0 ? (times[before] as number) : Number.NEGATIVE_INFINITY;
  let v0 = before >= 0 ? (values[before] as number) : 0;
  // What is known ends here; the sample at t0 is already in a piece unless it stands alone.
  let knownTo = from;
  let joined = true;
  for (; index < times.length; index++) {
    const t1 = times[index] as number;
    const v1 = values[index] as number;
    if (!Number.isFinite(v1)) continue;
    if (t1 - t0 <= gapLimit) {
      const start = Math.max(t0, from);
      const end = Math.min(t1, to);
      if (start < end) {
        const slope = (v1 - v0) / (t1 - t0);
        const vStart = start === t0 ? v0 : v0 + slope * (start - t0);
        const vEnd = end === t1 ? v1 : v0 + slope * (end - t0);
        sink.piece(start, vStart, end, vEnd);
        knownTo = end;
      }
      joined = true;
    } else {
      if (!joined && t0 >= from) sink.alone(t0, v0);
      const end = Math.min(t1, to);
      if (knownTo < end) sink.unknown(knownTo, end);
      knownTo = end;
      joined = false;
    }
    t0 = t1;
    v0 = v1;
    if (t1 >= to) break;
  }
  if (!joined && t0 >= from && t0 <= to) sink.alone(t0, v0);
  if (knownTo < to) sink.unknown(knownTo, to);
}

import type { TimeRange } from '../../model/results.js';

/** Receives the segments of a channel in ascending time. Times in milliseconds, values in °C. */
export interface SegmentSink {
  /** The value runs in a straight line from (t0, v0) to (t1, v1); t0 < t1. */
  segment(t0: number, v0: number, t1: number, v1: number): void;
  /** Nothing is known between the two; from < to. */
  unknown(from: number, to: number): void;
  /** One sample with nothing known on either side of it, not even beyond the window's end. */
  isolatedSample(t: number, v: number): void;
}

/** Index of the first time at or after `at`; times.length when there is none. */
export function firstIndexFrom(times: Float64Array, at: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((times[middle] as number) < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Walks one channel over a window. Neighbouring samples are joined by a straight line unless they are more than
 * `gapLimit` milliseconds apart; values that are not finite are no samples. Segments are cut at the window's ends.
 */
export function walkSegments(
  times: Float64Array,
  values: Float64Array,
  { from, to }: TimeRange,
  gapLimit: number,
  sink: SegmentSink,
): void {
  const inside = firstIndexFrom(times, from);
  // Of the samples before the window only the last counts, for the segment that leads into it.
  let before = inside - 1;
  while (before >= 0 && !Number.isFinite(values[before])) before--;
  let t0 = before < 0 ? Number.NEGATIVE_INFINITY : (times[before] as number);
  let v0 = before < 0 ? 0 : (values[before] as number);
  let knownTo = from;
  let joined = true;
  for (let i = inside; i < times.length; i++) {
    const t1 = times[i] as number;
    const v1 = values[i] ?? Number.NaN;
    if (!Number.isFinite(v1)) continue;
    const end = Math.min(t1, to);
    if (t1 - t0 <= gapLimit) {
      const start = Math.max(t0, from);
      if (start < end) {
        const slope = (v1 - v0) / (t1 - t0);
        sink.segment(
          start,
          start === t0 ? v0 : v0 + slope * (start - t0),
          end,
          end === t1 ? v1 : v0 + slope * (end - t0),
        );
        knownTo = end;
      }
      joined = true;
    } else {
      if (!joined && t0 >= from) sink.isolatedSample(t0, v0);
      if (knownTo < end) sink.unknown(knownTo, end);
      knownTo = end;
      joined = false;
    }
    t0 = t1;
    v0 = v1;
    // The sample after the window's end decides whether a sample on it is isolated.
    if (t1 > to || (t1 === to && joined)) break;
  }
  if (!joined && t0 >= from && t0 <= to) sink.isolatedSample(t0, v0);
  if (knownTo < to) sink.unknown(knownTo, to);
}

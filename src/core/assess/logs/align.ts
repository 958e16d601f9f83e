import type { TimeRange } from '../../model/results.js';
import { gapLimit } from '../temperature/sampling-interval.js';
import { firstIndexFrom } from '../temperature/segments.js';

/** One curve. */
export interface Curve {
  times: Float64Array;
  values: Float64Array;
}

/** How far one clock is from another, by the likeness of their curves. */
export interface Alignment {
  /** To be added to the second clock so that its curve lies on the first. */
  seconds: number;
  uncertaintySeconds: number;
  /** Correlation of the two curves there, up to 1. */
  correlation: number;
}

const MINUTE = 60_000;
/** Clocks farther apart than this are not looked for: defrosts come round again. Milliseconds; convention. */
const FARTHEST = 3 * 60 * MINUTE;
/** What moves more slowly than this is no feature of a curve. Milliseconds; convention. */
const SLOW = 3 * 60 * MINUTE;
/** Curves that are less alike than this, or nearly as alike elsewhere, tell nothing. Conventions, from made logs. */
const LEAST_CORRELATION = 0.5;
const LEAST_LEAD = 0.15;
/** Another place is at least this far. Milliseconds. */
const ELSEWHERE = 30 * MINUTE;
/** Fewer points in common tell nothing; more are not needed. */
const LEAST_POINTS = 48;
const MOST_POINTS = 8_000;
const STEP = { least: MINUTE, most: 15 * MINUTE } as const;

/**
 * How far two clocks are apart, by the place at which their curves are most alike: the highest correlation of what moves
 * within three hours, over clocks up to three hours apart. Undefined where the curves are not alike, or are as alike at
 * another place. Sensors that lie apart feel the same door or defrost at different times: the answer holds that too.
 */
export function alignCurves(first: Curve, second: Curve, window: TimeRange): Alignment | undefined {
  const step = gridStep(first, second, window);
  const reach = Math.floor(FARTHEST / step);
  const points = Math.floor((window.to - window.from) / step) + 1;
  if (points < LEAST_POINTS) return undefined;
  const a = moving(sampled(first, window.from, step, points), step);
  const b = moving(sampled(second, window.from - reach * step, step, points + 2 * reach), step);
  // A lag of k means that the second curve shows k steps later by its own clock what the first shows.
  const likeness = Array.from({ length: 2 * reach + 1 }, (_, at) => correlation(a, b, at));
  const best = likeness.reduce((most, r, at) => (r > (likeness[most] ?? -1) ? at : most), 0);
  const top = likeness[best] ?? -1;
  if (top < LEAST_CORRELATION || best === 0 || best === 2 * reach) return undefined;
  const far = Math.ceil(ELSEWHERE / step);
  const rival = likeness.reduce((most, r, at) => (Math.abs(at - best) > far ? Math.max(most, r) : most), -1);
  if (top - rival < LEAST_LEAD) return undefined;
  const lag = best - reach + vertex(likeness[best - 1] ?? top, top, likeness[best + 1] ?? top);
  return {
    seconds: (-lag * step) / 1000,
    uncertaintySeconds: step / 1000,
    correlation: top,
  };
}

function gridStep(first: Curve, second: Curve, window: TimeRange): number {
  const steps = [first, second].map(({ times }) => gapLimit(times).medianStepSeconds * 1000);
  const own = Math.min(STEP.most, Math.max(STEP.least, ...steps));
  return Math.max(own, (window.to - window.from) / MOST_POINTS);
}

/** A curve at even steps; NaN where it is not known. */
function sampled({ times, values }: Curve, from: number, step: number, points: number): Float64Array {
  const longest = gapLimit(times).gapLimitSeconds * 1000;
  const found = new Float64Array(points).fill(Number.NaN);
  let next = Math.max(0, firstIndexFrom(times, from) - 1);
  let [leftAt, left] = [Number.NEGATIVE_INFINITY, 0];
  for (let i = 0; i < points; i++) {
    const at = from + i * step;
    for (; next < times.length && (times[next] ?? 0) <= at; next++) {
      const value = values[next] ?? Number.NaN;
      if (Number.isFinite(value)) [leftAt, left] = [times[next] ?? 0, value];
    }
    if (leftAt === at) {
      found[i] = left;
      continue;
    }
    let right = next;
    const latest = leftAt + longest;
    while (!Number.isFinite(values[right]) && (times[right] ?? Number.POSITIVE_INFINITY) <= latest)
      right += 1;
    const rightAt = times[right] ?? Number.POSITIVE_INFINITY;
    if (rightAt - leftAt > longest) continue;
    found[i] = left + (((values[right] ?? 0) - left) * (at - leftAt)) / (rightAt - leftAt);
  }
  return found;
}

/** What of a curve moves within a few hours: its distance from its own mean over that time. */
function moving(values: Float64Array, step: number): Float64Array {
  const half = Math.max(1, Math.round(SLOW / 2 / step));
  const sums = new Float64Array(values.length + 1);
  const counts = new Float64Array(values.length + 1);
  values.forEach((value, i) => {
    const known = Number.isFinite(value);
    sums[i + 1] = (sums[i] ?? 0) + (known ? value : 0);
    counts[i + 1] = (counts[i] ?? 0) + (known ? 1 : 0);
  });
  return values.map((value, i) => {
    const [from, to] = [Math.max(0, i - half), Math.min(values.length, i + half + 1)];
    const count = (counts[to] ?? 0) - (counts[from] ?? 0);
    return value - ((sums[to] ?? 0) - (sums[from] ?? 0)) / count;
  });
}

/** Pearson's correlation of the first curve with the second from a place on; −1 with too few points in common. */
function correlation(a: Float64Array, b: Float64Array, from: number): number {
  let [n, sa, sb, saa, sbb, sab] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < a.length; i++) {
    const [x, y] = [a[i] ?? Number.NaN, b[i + from] ?? Number.NaN];
    if (Number.isNaN(x) || Number.isNaN(y)) continue;
    n += 1;
    sa += x;
    sb += y;
    saa += x * x;
    sbb += y * y;
    sab += x * y;
  }
  if (n < LEAST_POINTS || n < a.length / 2) return -1;
  const spread = (saa - (sa * sa) / n) * (sbb - (sb * sb) / n);
  return spread > 0 ? (sab - (sa * sb) / n) / Math.sqrt(spread) : -1;
}

/** Place of the highest point of a parabola through three points one step apart, from the middle one. */
function vertex(left: number, middle: number, right: number): number {
  const bend = left - 2 * middle + right;
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, (left - right) / (2 * bend))) : 0;
}

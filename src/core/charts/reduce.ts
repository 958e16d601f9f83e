/** One point of a curve: milliseconds and value. */
export type Point = readonly [at: number, value: number];

/**
 * Splits a series where a step is longer than the gap limit or a value is missing, and keeps only the first,
 * lowest, highest and last point per column of the picture: no peak is lost, and unknown time stays open.
 */
export function curves(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  span: { from: number; to: number },
  gapLimitMs: number,
  columns: number,
): Point[][] {
  const runs: Point[][] = [];
  let run: Point[] = [];
  let before: Point | undefined;
  for (let i = 0; i < times.length; i++) {
    const at = times[i] ?? Number.NaN;
    const value = values[i] ?? Number.NaN;
    if (Number.isNaN(at) || Number.isNaN(value)) continue;
    const here: Point = [at, value];
    if (before === undefined || at - before[0] > gapLimitMs) {
      runs.push(run);
      run = [];
    } else
      for (const edge of [span.from, span.to])
        if (before[0] < edge && at > edge) run.push(between(before, here, edge));
    if (at >= span.from && at <= span.to) run.push(here);
    before = here;
  }
  return [...runs, run].filter((points) => points.length > 0).map((points) => thinned(points, span, columns));
}

/** The interpolated point at a time between two others. */
function between(a: Point, b: Point, at: number): Point {
  return [at, a[1] + ((b[1] - a[1]) * (at - a[0])) / (b[0] - a[0])];
}

/** All points where they are no more than the columns, else the extremes of each column. */
function thinned(points: Point[], { from, to }: { from: number; to: number }, columns: number): Point[] {
  const width = (to - from) / columns;
  if (width <= 0 || points.length <= columns) return points;
  const kept: Point[] = [];
  let group: Point[] = [];
  let column = Number.NaN;
  for (const point of points) {
    const here = Math.floor((point[0] - from) / width);
    if (here !== column) {
      kept.push(...extremes(group));
      group = [];
      column = here;
    }
    group.push(point);
  }
  kept.push(...extremes(group));
  return kept;
}

/** First, lowest, highest and last, each once, in order of time. */
function extremes(points: readonly Point[]): Point[] {
  const [first] = points;
  if (first === undefined) return [];
  let [low, high] = [first, first];
  for (const point of points) {
    if (point[1] < low[1]) low = point;
    if (point[1] > high[1]) high = point;
  }
  return [...new Set([first, low, high, points.at(-1) ?? first])].sort((a, b) => a[0] - b[0]);
}

/** One point of a curve: milliseconds and value. */
export type Point = readonly [at: number, value: number];

/**
 * Splits a series where a step is longer than the gap limit or a value is missing, and keeps per column of
 * the picture only first, lowest, highest and last: no peak is lost, and what is unknown stays open.
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
  const close = () => {
    if (run.length > 0) runs.push(thin(run, span, columns));
    run = [];
  };
  for (let i = 0; i < times.length; i += 1) {
    const at = times[i] ?? Number.NaN;
    const value = values[i] ?? Number.NaN;
    if (Number.isNaN(at) || Number.isNaN(value)) continue;
    const here: Point = [at, value];
    if (before === undefined || at - before[0] > gapLimitMs) close();
    else
      for (const edge of [span.from, span.to])
        if (before[0] < edge && at > edge) run.push(between(before, here, edge));
    if (at >= span.from && at <= span.to) run.push(here);
    before = here;
  }
  close();
  return runs;
}

/** The straight line's point at a time between two others. */
function between(a: Point, b: Point, at: number): Point {
  return [at, a[1] + ((b[1] - a[1]) * (at - a[0])) / (b[0] - a[0])];
}

function thin(run: readonly Point[], span: { from: number; to: number }, columns: number): Point[] {
  const width = (span.to - span.from) / columns;
  if (width <= 0 || run.length <= columns) return [...run];
  const kept: Point[] = [];
  let start = 0;
  while (start < run.length) {
    const column = Math.floor(((run[start]?.[0] ?? 0) - span.from) / width);
    let end = start;
    while (end + 1 < run.length && Math.floor(((run[end + 1]?.[0] ?? 0) - span.from) / width) === column)
      end += 1;
    kept.push(...extremes(run.slice(start, end + 1)));
    start = end + 1;
  }
  return kept;
}

function extremes(points: readonly Point[]): Point[] {
  const [first] = points;
  if (first === undefined) return [];
  let low = first;
  let high = first;
  for (const point of points) {
    if (point[1] < low[1]) low = point;
    if (point[1] > high[1]) high = point;
  }
  const last = points[points.length - 1] ?? first;
  return [...new Set([first, low, high, last])].sort((a, b) => a[0] - b[0]);
}

import { eachBlock, type NumberColumn } from '../model/columns/number-column.js';

/** One point of a curve: milliseconds and value. */
export type Point = readonly [at: number, value: number];

/**
 * Splits a series where a step is longer than the gap limit or a value is missing, and keeps per column of
 * the picture only first, lowest, highest and last: no peak is lost, and what is unknown stays open. Holds no
 * more points than it gives back.
 */
export function curves(
  times: NumberColumn,
  values: NumberColumn,
  span: { from: number; to: number },
  gapLimitMs: number,
  columns: number,
): Point[][] {
  const runs: Point[][] = [];
  let run = new Thinner(span, columns);
  let before: Point | undefined;
  const close = () => {
    const points = run.finish();
    if (points.length > 0) runs.push(points);
    run = new Thinner(span, columns);
  };
  eachBlock([times, values], ([ats, ofAts], _from, count) => {
    for (let i = 0; i < count; i += 1) {
      const at = ats?.[i] ?? Number.NaN;
      const value = ofAts?.[i] ?? Number.NaN;
      if (Number.isNaN(at) || Number.isNaN(value)) continue;
      const here: Point = [at, value];
      if (before === undefined || at - before[0] > gapLimitMs) close();
      else
        for (const edge of [span.from, span.to])
          if (before[0] < edge && at > edge) run.push(between(before, here, edge));
      if (at >= span.from && at <= span.to) run.push(here);
      before = here;
    }
  });
  close();
  return runs;
}

/** The straight line's point at a time between two others. */
function between(a: Point, b: Point, at: number): Point {
  return [at, a[1] + ((b[1] - a[1]) * (at - a[0])) / (b[0] - a[0])];
}

/** Keeps all points as long as they are no more than the columns, then the extremes of each column. */
class Thinner {
  #all: Point[] | undefined = [];
  readonly #kept: Point[] = [];
  #column = Number.NaN;
  #first: Point = [0, 0];
  #low: Point = [0, 0];
  #high: Point = [0, 0];
  #last: Point = [0, 0];
  readonly #from: number;
  readonly #width: number;
  readonly #columns: number;

  constructor(span: { from: number; to: number }, columns: number) {
    this.#from = span.from;
    this.#width = (span.to - span.from) / columns;
    this.#columns = columns;
  }

  push(point: Point): void {
    if (this.#all === undefined) {
      this.#take(point);
      return;
    }
    this.#all.push(point);
    if (this.#width <= 0 || this.#all.length <= this.#columns) return;
    for (const one of this.#all) this.#take(one);
    this.#all = undefined;
  }

  #take(point: Point): void {
    const column = Math.floor((point[0] - this.#from) / this.#width);
    if (column !== this.#column) {
      this.#keep();
      this.#column = column;
      this.#first = point;
      this.#low = point;
      this.#high = point;
    }
    if (point[1] < this.#low[1]) this.#low = point;
    if (point[1] > this.#high[1]) this.#high = point;
    this.#last = point;
  }

  #keep(): void {
    if (Number.isNaN(this.#column)) return;
    const extremes = new Set([this.#first, this.#low, this.#high, this.#last]);
    this.#kept.push(...[...extremes].sort((a, b) => a[0] - b[0]));
  }

  finish(): Point[] {
    if (this.#all !== undefined) return this.#all;
    this.#keep();
    return this.#kept;
  }
}

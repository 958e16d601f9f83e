import { BLOCK, type NumberColumn, readColumn } from '../../model/columns/number-column.js';
import type { Span } from '../../model/results.js';

/** Where the pieces of a channel go, in ascending time. Times in milliseconds, values in °C. */
export interface Sink {
  /** The value runs in a straight line from (t0, v0) to (t1, v1); t0 < t1. */
  piece(t0: number, v0: number, t1: number, v1: number): void;
  /** Nothing is known between the two; from < to. */
  unknown(from: number, to: number): void;
  /** One sample with nothing known on either side of it, be it beyond the window's end. */
  alone(t: number, v: number): void;
  /**
   * Pieces from each sample to the next, from index `first` to `last`, that are whole: for sinks that most of the
   * time goes into, because a loop of their own is several times as fast as a call from here for each piece. The
   * arrays are written over afterwards.
   */
  run?(times: Float64Array, values: Float64Array, first: number, last: number): void;
}

/** Index of the first time at or after `at`; times.length when there is none. */
export function firstFrom(times: NumberColumn, at: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((times.at(middle) ?? 0) < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Samples in ascending time; the arrays are written over when the next block is asked for. */
export interface SampleBlock {
  times: Float64Array;
  values: Float64Array;
  count: number;
}

/**
 * Walks one channel over a window. Neighbouring samples are joined by a straight line unless they are more than
 * `gapLimit` milliseconds apart; values that are not finite are no samples. Pieces are cut at the window's ends.
 * Memory for one block of rows, however many there are.
 */
export function walk(
  times: NumberColumn,
  values: NumberColumn,
  window: Span,
  gapLimit: number,
  sink: Sink,
): void {
  walkBlocks(blocksOf(times, values, window), window, gapLimit, sink);
}

/** The samples of a channel from the last before a window on. */
function* blocksOf(times: NumberColumn, values: NumberColumn, window: Span): Generator<SampleBlock> {
  const index = firstFrom(times, window.from);
  let before = index - 1;
  while (before >= 0 && !Number.isFinite(values.at(before))) before--;
  const start = before < 0 ? index : before;
  // Short windows need no whole block.
  const room = Math.max(16, Math.min(BLOCK, firstFrom(times, window.to) + 2 - start));
  const block = { times: new Float64Array(room), values: new Float64Array(room) };
  for (let at = start; at < times.length; at += room) {
    const count = readColumn(times, at, block.times);
    block.values.fill(Number.NaN);
    readColumn(values, at, block.values);
    yield { ...block, count };
  }
}

/** The same for samples that come in blocks, from the last before the window on or earlier. */
export function walkBlocks(blocks: Iterable<SampleBlock>, window: Span, gapLimit: number, sink: Sink): void {
  const walker = new Walker(window, gapLimit, sink);
  for (const { times, values, count } of blocks) {
    walker.block(times, values, count);
    if (walker.done) break;
  }
  walker.finish();
}

class Walker {
  done = false;
  readonly #window: Span;
  readonly #gapLimit: number;
  readonly #sink: Sink;
  /** The sample before; it is already in a piece unless it stands alone. */
  #t0 = Number.NEGATIVE_INFINITY;
  #v0 = 0;
  /** What is known ends here. */
  #knownTo: number;
  #joined = true;

  constructor(window: Span, gapLimit: number, sink: Sink) {
    this.#window = window;
    this.#gapLimit = gapLimit;
    this.#sink = sink;
    this.#knownTo = window.from;
  }

  block(times: Float64Array, values: Float64Array, count: number): void {
    const { from, to } = this.#window;
    let i = 0;
    // Of what lies before the window only the last sample counts, for the piece that leads into it.
    for (; i < count && (times[i] as number) < from; i++)
      if (Number.isFinite(values[i])) {
        this.#t0 = times[i] as number;
        this.#v0 = values[i] as number;
      }
    while (i < count && !this.done) {
      // As long as rows follow each other within the window there is nothing to cut.
      const last =
        i > 0 && times[i - 1] === this.#t0 && this.#t0 >= from
          ? this.#runTo(times, values, i, count, to)
          : i - 1;
      if (last >= i) {
        this.#run(times, values, i - 1, last);
        i = last + 1;
      } else {
        const value = values[i] as number;
        if (Number.isFinite(value)) this.#sample(times[i] as number, value);
        i += 1;
      }
    }
  }

  #runTo(times: Float64Array, values: Float64Array, start: number, count: number, to: number): number {
    const limit = this.#gapLimit;
    let i = start;
    let before = times[start - 1] as number;
    for (; i < count; i++) {
      const at = times[i] as number;
      const value = values[i] as number;
      // A value less itself is 0 unless it is not finite.
      if (!(at < to) || at - before > limit || value - value !== 0) break;
      before = at;
    }
    return i - 1;
  }

  #run(times: Float64Array, values: Float64Array, first: number, last: number): void {
    const sink = this.#sink;
    if (sink.run !== undefined) sink.run(times, values, first, last);
    else
      for (let i = first; i < last; i++)
        sink.piece(times[i] as number, values[i] as number, times[i + 1] as number, values[i + 1] as number);
    this.#t0 = times[last] as number;
    this.#v0 = values[last] as number;
    this.#knownTo = this.#t0;
    this.#joined = true;
  }

  #sample(t1: number, v1: number): void {
    const { from, to } = this.#window;
    const [t0, v0] = [this.#t0, this.#v0];
    const end = Math.min(t1, to);
    if (t1 - t0 <= this.#gapLimit) {
      const start = Math.max(t0, from);
      if (start < end) {
        const slope = (v1 - v0) / (t1 - t0);
        const vStart = start === t0 ? v0 : v0 + slope * (start - t0);
        const vEnd = end === t1 ? v1 : v0 + slope * (end - t0);
        this.#sink.piece(start, vStart, end, vEnd);
        this.#knownTo = end;
      }
      this.#joined = true;
    } else {
      if (!this.#joined && t0 >= from) this.#sink.alone(t0, v0);
      if (this.#knownTo < end) this.#sink.unknown(this.#knownTo, end);
      this.#knownTo = end;
      this.#joined = false;
    }
    this.#t0 = t1;
    this.#v0 = v1;
    // Whether a sample on the window's end stands alone is told by the one after it.
    if (t1 > to || (t1 === to && this.#joined)) this.done = true;
  }

  finish(): void {
    const { from, to } = this.#window;
    if (!this.#joined && this.#t0 >= from && this.#t0 <= to) this.#sink.alone(this.#t0, this.#v0);
    if (this.#knownTo < to) this.#sink.unknown(this.#knownTo, to);
  }
}

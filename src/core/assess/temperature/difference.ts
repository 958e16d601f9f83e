import { BLOCK, type NumberColumn, readColumn, valuesOf } from '../../model/columns/number-column.js';
import type { Channel } from '../../model/evidence.js';
import type { ChannelDifference, Span } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { gapLimit } from './sampling-interval.js';
import { firstFrom, type SampleBlock, walk, walkBlocks } from './segments.js';
import { Sums } from './summary.js';

/** One channel of one log. */
export interface Sensor {
  log: UnitLog;
  channel: Channel;
}

/**
 * One sensor against another over a window, first minus second, in kelvin. Both are read off their straight lines at
 * the times of either; where one of them is unknown, so is the difference. `limit`: how far apart counts as apart.
 */
export function differenceOf(
  first: Sensor,
  second: Sensor,
  window: Span,
  limit: number,
): ChannelDifference | undefined {
  const a = first.log.channels[first.channel];
  const b = second.log.channels[second.channel];
  if (a === undefined || b === undefined) return undefined;
  const limits = [first, second].map((one) => gapLimit(one.log.times).gapLimitSeconds * 1000);
  const [one, other] = [
    { times: first.log.times, values: a },
    { times: second.log.times, values: b },
  ];
  const sums = new Sums({ low: -limit, high: limit }, false);
  const bridged = Math.min(...limits);
  if (first.log === second.log) walk(one.times, new RowByRow(a, b), window, bridged, sums);
  else walkBlocks(mergedBlocks(one, other, window, limits), window, bridged, sums);
  if (sums.known === 0) return undefined;
  return {
    first: { log: first.log.evidence, channel: first.channel },
    second: { log: second.log.evidence, channel: second.channel },
    mean: sums.area / sums.known,
    min: { kelvin: sums.low, at: sums.lowAt },
    max: { kelvin: sums.high, at: sums.highAt },
    knownSeconds: sums.known / 1000,
    apartSeconds: (sums.above + sums.below) / 1000,
    limitKelvin: limit,
  };
}

interface Series {
  times: NumberColumn;
  values: NumberColumn;
}

/** One channel less another of the same log, worked out where it is read. */
class RowByRow implements NumberColumn {
  #second = new Float64Array();

  constructor(
    readonly a: NumberColumn,
    readonly b: NumberColumn,
  ) {}

  get length(): number {
    return this.a.length;
  }

  at(index: number): number | undefined {
    const [a, b] = [this.a.at(index), this.b.at(index)];
    return a === undefined || b === undefined ? undefined : a - b;
  }

  read(from: number, into: Float64Array): number {
    if (this.#second.length !== into.length) this.#second = new Float64Array(into.length);
    const second = this.#second;
    const count = readColumn(this.a, from, into);
    readColumn(this.b, from, second);
    for (let i = 0; i < count; i++) into[i] = (into[i] as number) - (second[i] as number);
    return count;
  }

  [Symbol.iterator](): Generator<number> {
    return valuesOf(this);
  }
}

/** The difference at the times of either, with those beyond the window's ends that can be joined to it. */
function* mergedBlocks(
  a: Series,
  b: Series,
  window: Span,
  limits: readonly number[],
): Generator<SampleBlock> {
  const [limitA = 0, limitB = 0] = limits;
  const readA = reader(a, limitA);
  const readB = reader(b, limitB);
  const block = { times: new Float64Array(BLOCK), values: new Float64Array(BLOCK) };
  let count = 0;
  for (const at of timesOfEither(a.times, b.times, {
    from: window.from - Math.max(...limits),
    to: window.to + Math.max(...limits),
  })) {
    block.times[count] = at;
    block.values[count++] = readA(at) - readB(at);
    if (count < BLOCK) continue;
    yield { ...block, count };
    count = 0;
  }
  yield { ...block, count };
}

/** Times of two series in order, each once, from the last before a window to the first after it. */
function* timesOfEither(a: NumberColumn, b: NumberColumn, { from, to }: Span): Generator<number> {
  let i = Math.max(0, firstFrom(a, from) - 1);
  let j = Math.max(0, firstFrom(b, from) - 1);
  const [lastA, lastB] = [firstFrom(a, to) + 1, firstFrom(b, to) + 1];
  for (;;) {
    const x = i < lastA ? (a.at(i) ?? Number.POSITIVE_INFINITY) : Number.POSITIVE_INFINITY;
    const y = j < lastB ? (b.at(j) ?? Number.POSITIVE_INFINITY) : Number.POSITIVE_INFINITY;
    if (x === y && x === Number.POSITIVE_INFINITY) return;
    if (x <= y) i += 1;
    if (y <= x) j += 1;
    yield Math.min(x, y);
  }
}

/** Reads a series off its straight lines at rising times; NaN where it is unknown. */
function reader({ times, values }: Series, limit: number): (at: number) => number {
  let next = 0;
  let left: { at: number; value: number } | undefined;
  return (when) => {
    for (; next < times.length; next++) {
      const value = values.at(next) ?? Number.NaN;
      if (!Number.isFinite(value)) continue;
      const at = times.at(next) ?? Number.NaN;
      if (at === when) return value;
      if (at > when) {
        if (left === undefined || at - left.at > limit) return Number.NaN;
        return left.value + ((value - left.value) * (when - left.at)) / (at - left.at);
      }
      left = { at, value };
    }
    return Number.NaN;
  };
}

import type { NumberColumn } from '../../model/columns/number-column.js';
import type { Channel } from '../../model/evidence.js';
import type { Excursion, ExcursionCause, LogGap, Span } from '../../model/results.js';
import { ROUNDING } from '../bands.js';
import { meanOutside } from './integral.js';
import { type Sink, walk } from './pieces.js';

const MS_PER_HOUR = 3_600_000;
/** Clocks here count milliseconds: the line that is in band for less has only touched the limit. */
const TOUCH = 1;

/** What an excursion is known by before it has a name and a cause. */
export type Outside = Omit<Excursion, 'id' | 'cause'>;

/**
 * Follows one side of the band. Two excursions with any time in band between them stay two, however short that
 * time is: merging would call time in band time out of it. Only where the line touches the limit in one point
 * (less than a millisecond) and turns back is it one.
 */
class Follower {
  private open: Excursion | undefined;
  private last: Excursion | undefined;
  private edge: Outside['cutBy'][number] | undefined = 'window-start';
  readonly found: Excursion[] = [];

  constructor(
    private readonly channel: Channel,
    private readonly side: Excursion['side'],
    private readonly limit: number,
  ) {}

  private distance(v: number): number {
    return this.side === 'above' ? v - this.limit : this.limit - v;
  }

  piece(t0: number, v0: number, t1: number, v1: number): void {
    const d0 = this.distance(v0);
    const d1 = this.distance(v1);
    if (d0 > 0 || d1 > 0) {
      const start = d0 > 0 ? t0 : t0 + ((t1 - t0) * -d0) / (d1 - d0);
      const one = this.open ?? this.begin(start, d0 > 0 ? v0 : this.limit, d0 > 0);
      one.degreeHours += (meanOutside(d0, d1) * (t1 - t0)) / MS_PER_HOUR;
      if (d1 > this.distance(one.peak)) {
        one.peak = v1;
        one.peakAt = t1;
      }
      one.to = d1 > 0 ? t1 : t0 + ((t1 - t0) * d0) / (d0 - d1);
      if (d1 <= 0) this.end();
    }
    this.edge = undefined;
  }

  run(times: Float64Array, values: Float64Array, first: number, last: number): void {
    for (let i = first; i < last; i++) {
      const value = values[i + 1] as number;
      // Where the air is in band and nothing is open there is nothing to do.
      if (
        this.open === undefined &&
        this.edge === undefined &&
        this.distance(value) <= 0 &&
        this.distance(values[i] as number) <= 0
      )
        continue;
      this.piece(times[i] as number, values[i] as number, times[i + 1] as number, value);
    }
  }

  private begin(at: number, value: number, fromOutside: boolean): Excursion {
    if (this.last !== undefined && this.last.to + TOUCH > at && this.edge === undefined) {
      // The line only touched the limit: this is the same excursion.
      this.open = this.last;
      this.found.pop();
      return this.open;
    }
    // A name and a cause are given when all are found: a long log has so many that none is made twice.
    this.open = {
      id: '',
      channel: this.channel,
      side: this.side,
      from: at,
      to: at,
      seconds: 0,
      peak: value,
      peakAt: at,
      degreeHours: 0,
      cause: { is: 'unexplained' },
      cutBy: fromOutside && this.edge !== undefined ? [this.edge] : [],
    };
    return this.open;
  }

  private end(): void {
    if (this.open === undefined) return;
    this.open.seconds = (this.open.to - this.open.from) / 1000;
    this.found.push(this.open);
    this.last = this.open;
    this.open = undefined;
  }

  private cut(by: Outside['cutBy'][number]): void {
    this.open?.cutBy.push(by);
    this.end();
  }

  gap(): void {
    this.cut('gap-after');
    this.last = undefined;
    this.edge = 'gap-before';
  }

  alone(t: number, v: number): void {
    if (this.distance(v) <= 0) return;
    const one = this.begin(t, v, true);
    if (one.cutBy.length === 0) one.cutBy.push('gap-before');
    this.cut('gap-after');
  }

  finish(): void {
    this.cut('window-end');
  }
}

/**
 * All times outside the band of one channel in a window, in order of their start, and the times of more than the
 * gap limit without known values. A sample that stands alone outside the band is an excursion of no known length.
 * `name` gives an excursion its id by its place in that order.
 */
export function findExcursions(
  channel: Channel,
  times: NumberColumn,
  values: NumberColumn,
  window: Span,
  gapLimitSeconds: number,
  band: { low: number; high: number } | undefined,
  name: (index: number) => string,
  causeOf: (one: Outside) => ExcursionCause,
): { excursions: Excursion[]; gaps: LogGap[] } {
  const gaps: LogGap[] = [];
  const followers =
    band === undefined
      ? []
      : [
          new Follower(channel, 'above', band.high + ROUNDING),
          new Follower(channel, 'below', band.low - ROUNDING),
        ];
  const [above, below] = followers;
  const sink: Sink = {
    piece(t0, v0, t1, v1) {
      above?.piece(t0, v0, t1, v1);
      below?.piece(t0, v0, t1, v1);
    },
    run(ats, ofAts, first, last) {
      above?.run(ats, ofAts, first, last);
      below?.run(ats, ofAts, first, last);
    },
    unknown(from, to) {
      for (const follower of followers) follower.gap();
      const seconds = (to - from) / 1000;
      if (seconds > gapLimitSeconds) gaps.push({ from, to, seconds });
    },
    alone(t, v) {
      for (const follower of followers) follower.alone(t, v);
    },
  };
  walk(times, values, window, gapLimitSeconds * 1000, sink);
  for (const follower of followers) follower.finish();
  const excursions = followers.flatMap((follower) => follower.found).sort((a, b) => a.from - b.from);
  excursions.forEach((one, index) => {
    one.id = name(index);
    one.cause = causeOf(one);
  });
  return { excursions, gaps };
}

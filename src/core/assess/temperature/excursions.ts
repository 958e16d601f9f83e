import type { Channel } from '../../model/evidence.js';
import type { Excursion, LogGap, TemperatureResult, TimeRange } from '../../model/results.js';
import { ROUNDING } from '../bands.js';
import { type Explained, listExcursions, type Outside } from './excursion-list.js';
import { meanOutside } from './integral.js';
import { type SegmentSink, walkSegments } from './segments.js';

const MS_PER_HOUR = 3_600_000;
/** Milliseconds: a line in range for less has only touched the limit. */
const TOUCH = 1;

/**
 * Detects crossings of one side of the range. Two excursions with any time in range between them stay two, however
 * short that time: merging would count time in range as time out of it. They are one only where the line touches
 * the limit in one point (less than a millisecond) and turns back.
 */
class BandCrossingDetector {
  private open: Outside | undefined;
  /** The excursion that ended last, while the next segment may still continue it. */
  private last: Outside | undefined;
  private edge: Outside['cutBy'][number] | undefined = 'window-start';

  constructor(
    private readonly begun: Outside[],
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

  private begin(at: number, value: number, fromOutside: boolean): Outside {
    if (this.last !== undefined && this.last.to + TOUCH > at && this.edge === undefined) {
      // The line only touched the limit, so this is the same excursion.
      this.open = this.last;
      this.last = undefined;
      return this.open;
    }
    this.open = {
      channel: this.channel,
      side: this.side,
      from: at,
      to: at,
      seconds: 0,
      peak: value,
      peakAt: at,
      degreeHours: 0,
      cutBy: fromOutside && this.edge !== undefined ? [this.edge] : [],
    };
    this.begun.push(this.open);
    return this.open;
  }

  private end(): void {
    if (this.open === undefined) return;
    this.open.seconds = (this.open.to - this.open.from) / 1000;
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
 * Excursions of one channel in a window, in order of their start, and data gaps longer than the gap limit. An
 * isolated sample out of range is an excursion of unknown length. `name` gives an excursion its id by its position.
 */
export function findExcursions(
  channel: Channel,
  times: Float64Array,
  values: Float64Array,
  window: TimeRange,
  gapLimitSeconds: number,
  band: { low: number; high: number } | undefined,
  name: (index: number) => string,
  explain: (one: Outside) => Explained,
): Pick<TemperatureResult, 'excursions' | 'excursionTotals' | 'gaps'> {
  const gaps: LogGap[] = [];
  const begun: Outside[] = [];
  const high = (band?.high ?? Number.POSITIVE_INFINITY) + ROUNDING;
  const low = (band?.low ?? Number.NEGATIVE_INFINITY) - ROUNDING;
  const above = new BandCrossingDetector(begun, channel, 'above', high);
  const below = new BandCrossingDetector(begun, channel, 'below', low);
  const sink: SegmentSink = {
    segment(t0, v0, t1, v1) {
      // A line that falls through the whole range leaves it above before it leaves it below.
      const [first, then] = v0 > v1 ? [above, below] : [below, above];
      first.piece(t0, v0, t1, v1);
      then.piece(t0, v0, t1, v1);
    },
    unknown(from, to) {
      above.gap();
      below.gap();
      const seconds = (to - from) / 1000;
      if (seconds > gapLimitSeconds) gaps.push({ from, to, seconds });
    },
    isolatedSample(t, v) {
      above.alone(t, v);
      below.alone(t, v);
    },
  };
  walkSegments(times, values, window, gapLimitSeconds * 1000, sink);
  above.finish();
  below.finish();
  return { ...listExcursions(begun, name, explain), gaps };
}

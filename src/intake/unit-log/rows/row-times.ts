import type { LogMapping } from '../../../core/model/evidence.js';
import { WallClock } from '../../../core/model/wall-clock.js';
import { dateParts, readTimeOfDay, wallOf } from '../../time/wall-time.js';
import { unwrapped } from '../cells/cell-value.js';
import { readNumber } from '../cells/numbers.js';
import { type Counted, epochOf } from './epoch.js';

export type RowTime =
  /** Milliseconds UTC. */
  | number
  | { is: 'twice'; earlier: number; later: number }
  | { is: 'no-time' | 'bad-time' | 'time-in-gap'; detail: string };

/** `HH:MM`, `HH:MM:SS` and nothing else: what nearly every row has. */
const SHORT_CLOCK = 5;
const LONG_CLOCK = 8;
/** A blank or T between date and time. */
const isGap = (character: number) => character === 32 || character === 84;

/** Reads the times of a log's rows; a date that the row before had too is not read again. */
export class RowTimes {
  readonly #mapping: LogMapping['time'];
  readonly #clock: WallClock | undefined;
  #lastDate = '';
  #lastMidnight = Number.NaN;

  constructor(mapping: LogMapping['time']) {
    this.#mapping = mapping;
    this.#clock = mapping.zone === 'offset' ? undefined : new WallClock(mapping.zone);
  }

  /** `second` is the time of day where the log has a column of its own for it. */
  read(first: string, second: string | undefined): RowTime {
    if (this.#mapping.count !== undefined) return counted(first, this.#mapping.count);
    const wall = this.#quick(first, second);
    if (!Number.isNaN(wall) && this.#clock !== undefined) {
      const at = this.#clock.steady(wall);
      return at ?? this.#inZone(wall, first, second);
    }
    return this.#slow(unwrapped(first.trim()), second === undefined ? undefined : unwrapped(second.trim()));
  }

  /** Wall time when the date is the last row's and the time of day is plain digits; NaN for the slow way. */
  #quick(first: string, second: string | undefined): number {
    let clockAt = 0;
    let clock = second;
    if (second === undefined) {
      const length = this.#lastDate.length;
      if (length === 0 || !first.startsWith(this.#lastDate)) return Number.NaN;
      clockAt = length + 1;
      clock = first;
    } else if (first !== this.#lastDate) return Number.NaN;
    if (clock === undefined || (clockAt > 0 && !isGap(clock.charCodeAt(clockAt - 1)))) return Number.NaN;
    return this.#wallAt(clock, clockAt, clock.length);
  }

  /** Wall time of the last date with the plain time of day that stands in a text; NaN where there is none. */
  #wallAt(text: string, at: number, end: number): number {
    const long = end - at === LONG_CLOCK;
    if (!long && end - at !== SHORT_CLOCK) return Number.NaN;
    const hour = twoDigits(text, at);
    const minute = twoDigits(text, at + 3);
    const second = long ? twoDigits(text, at + 6) : 0;
    if (text.charCodeAt(at + 2) !== 58 || (long && text.charCodeAt(at + 5) !== 58)) return Number.NaN;
    if (!(hour < 24 && minute < 60 && second < 60)) return Number.NaN;
    return this.#lastMidnight + ((hour * 60 + minute) * 60 + second) * 1000;
  }

  #slow(first: string, second: string | undefined): RowTime {
    const text = second === undefined ? first.trim() : `${first.trim()} ${second.trim()}`.trim();
    if (first.trim() === '' || second?.trim() === '') return { is: 'no-time', detail: 'no time in this row' };
    const date = dateParts(first.trim());
    const clock = second === undefined ? date?.clock : second.trim();
    const wall = date === undefined ? undefined : wallOf(date, this.#mapping.order, clock);
    if (date === undefined || wall === undefined)
      return { is: 'bad-time', detail: `"${text.slice(0, 60)}" is not a date and time` };
    this.#remember(first, second, date.clock, wall.wall);
    if (wall.offset !== undefined) return wall.wall - wall.offset * 60_000;
    return this.#clock === undefined
      ? { is: 'bad-time', detail: `"${text.slice(0, 60)}" does not state its offset from UTC` }
      : this.#inZone(wall.wall, first, second);
  }

  #remember(first: string, second: string | undefined, clock: string | undefined, wall: number): void {
    const midnight = Math.floor(wall / 86_400_000) * 86_400_000;
    if (second !== undefined) {
      // 24:00 belongs to the next day, so the date text does not give this midnight.
      if (readTimeOfDay(second.trim())?.ms === wall - midnight) this.#set(first, midnight);
    } else if (clock !== undefined && first.endsWith(clock) && readTimeOfDay(clock)?.ms === wall - midnight) {
      const date = first.slice(0, first.length - clock.length - 1);
      if (date === date.trim()) this.#set(date, midnight);
    }
  }

  #set(date: string, midnight: number): void {
    this.#lastDate = date;
    this.#lastMidnight = midnight;
  }

  #inZone(wall: number, first: string, second: string | undefined): RowTime {
    const reading = this.#clock?.read(wall);
    switch (reading?.is) {
      case 'one':
        return reading.at;
      case 'twice':
        return reading;
      default:
        return {
          is: 'time-in-gap',
          detail: `${[first, second].join(' ').trim()} did not happen in ${this.#mapping.zone}: the clock was put forward; does the log's clock follow daylight saving?`,
        };
    }
  }
}

/** A count since 1970; binary fractions are rounded to the millisecond. */
function counted(text: string, unit: Counted): RowTime {
  const shown = unwrapped(text.trim());
  if (shown === '') return { is: 'no-time', detail: 'no time in this row' };
  const count = readNumber(shown, '.');
  if (epochOf(count) !== unit)
    return { is: 'bad-time', detail: `"${shown.slice(0, 60)}" is not a count of ${unit} since 1970` };
  return Math.round(unit === 'seconds' ? count * 1000 : count);
}

/** NaN unless two digits stand at `at`. */
function twoDigits(text: string, at: number): number {
  const tens = text.charCodeAt(at) - 48;
  const ones = text.charCodeAt(at + 1) - 48;
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : Number.NaN;
}

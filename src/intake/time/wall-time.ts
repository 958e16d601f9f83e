import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { LocalTime } from '../../core/model/time.js';
import { monthOf, withoutAccents } from './months.js';

/** A wall-clock reading, and its offset from UTC in minutes where the text states one. */
export interface WallTime {
  /** Milliseconds as if the wall clock were UTC. */
  wall: number;
  offset?: number;
}

export type DateOrder = 'iso' | 'month-day-year' | 'day-month-year';

const WEEKDAY = String.raw`(?:[A-Za-z]{3,10}\.?,?\s+)?`;
const DATE = new RegExp(
  `^${WEEKDAY}${String.raw`(\d{1,4})\s*[-/.]\s*(\d{1,2}|[A-Za-z]{3,10}\.?)\s*[-/.]\s*(\d{1,4})\.?(?:\s*[T ,]\s*(.+))?$`}`,
);
const NAMED = new RegExp(
  `^${WEEKDAY}${String.raw`([A-Za-z]{3,10})\.?\s+(\d{1,2}),?\s+(\d{4})(?:,?\s+(.+))?$`}`,
);
/** `Tue Jul 14 04:05:00 2026`, as C and Unix write it, with or without letters of a zone before the year. */
const UNIX = new RegExp(
  `^${WEEKDAY}${String.raw`([A-Za-z]{3,10})\.?\s+(\d{1,2})\s+(\d{1,2}:\d{2}(?::\d{2})?)((?:\s+[A-Z]{3,5})?)\s+(\d{4})$`}`,
);
/** `14 July 2026`, `14 de julio de 2026`, `1er juillet 2026`. */
const NAMED_DAY_FIRST = new RegExp(
  `^${WEEKDAY}${String.raw`(\d{1,2})(?:er)?\s+(?:de\s+)?([A-Za-z]{3,10})\.?,?\s+(?:de\s+)?(\d{4})(?:,?\s+(.+))?$`}`,
);
const COMPACT = /^(\d{4})(\d{2})(\d{2})(?:[T ](\d{2})(\d{2})(\d{2})?(Z|[+-]\d{2}:?\d{2})?)?$/;
const CLOCK =
  /^(\d{1,2})(?:\s*[:.hH]\s*(\d{2})(?:\s*[:.]\s*(\d{2})(?:[.,:](\d{1,9}))?)?)?\s*([AaPp])?\.?\s*(?:[Mm]\.?)?\s*(Z|UTC|GMT|(?:UTC|GMT)?[+−-]\d{1,2}(?::?\d{2})?)?$/;
/** A day that a spreadsheet wrote as its number, with the time of day as its fraction. */
const SERIAL = /^(\d{5})(?:[.,](\d{1,15}))?$/;
/** A time of day that a spreadsheet wrote as a fraction of the day; two decimals may be hours and minutes. */
const DAY_FRACTION = /^0?[.,](\d{3,15})$/;

/** No date and time is written longer; a bound on what the patterns have to look at. */
const LONGEST = 64;

/** The three numbers of a date as they stand, before their order is decided. */
export interface DateParts {
  parts: readonly [number, number, number];
  /** Set when the text itself shows the order. */
  order?: DateOrder;
  separator: string;
  clock: string | undefined;
}

/** Takes a date apart; undefined when the text is not one. */
export function dateParts(written: string): DateParts | undefined {
  if (written.length > LONGEST) return undefined;
  const plain = /[^ -~]/.test(written) ? withoutAccents(written) : written;
  // The name of the zone, which programs add to an offset: `GMT-0700 (Mountain Standard Time)`.
  const text = plain.endsWith(')') ? plain.replace(/(?<=[+-]\d{4}) \([A-Za-z .]{2,40}\)$/, '') : plain;
  const serial = SERIAL.exec(text);
  if (serial !== null) return serialParts(serial);
  const compact = COMPACT.exec(text);
  if (compact !== null) {
    const [, y = '', m = '', d = '', h, min, s, offset = ''] = compact;
    const clock = h === undefined ? undefined : `${h}:${min}${s === undefined ? '' : `:${s}`}${offset}`;
    return { parts: [Number(y), Number(m), Number(d)], order: 'iso', separator: '', clock };
  }
  const date = DATE.exec(text);
  if (date !== null) {
    const [, a = '', b = '', c = '', clock] = date;
    const month = /^[A-Za-z]/.test(b) ? monthOf(b) : undefined;
    if (month === undefined && /^[A-Za-z]/.test(b)) return undefined;
    const parts = [Number(a), month ?? Number(b), Number(c)] as const;
    const order = a.length > 2 ? 'iso' : month === undefined ? undefined : 'day-month-year';
    const separator = /[-/.]/.exec(text)?.[0] ?? '';
    return { parts, ...omitUndefined({ order }), separator, clock };
  }
  const named = NAMED.exec(text);
  if (named !== null) {
    const [, name = '', day, year, clock] = named;
    const month = monthOf(name);
    if (month !== undefined)
      return { parts: [month, Number(day), Number(year)], order: 'month-day-year', separator: ' ', clock };
  }
  const unix = UNIX.exec(text);
  if (unix !== null) {
    const [, name = '', day, time = '', zone = '', year] = unix;
    const month = monthOf(name);
    const parts = [month ?? 0, Number(day), Number(year)] as const;
    if (month !== undefined)
      return { parts, order: 'month-day-year', separator: ' ', clock: `${time}${zone}` };
  }
  const dayFirst = NAMED_DAY_FIRST.exec(text);
  if (dayFirst !== null) {
    const [, day, name = '', year, clock] = dayFirst;
    const month = monthOf(name);
    if (month !== undefined)
      return { parts: [Number(day), month, Number(year)], order: 'day-month-year', separator: ' ', clock };
  }
  return undefined;
}

/**
 * Day numbers of spreadsheets count from 1899-12-30 (ECMA-376 part 1 §18.17.4.1, the 1900 date base). Only
 * 2000 to 2099 is read so: other five-digit numbers are no dates of deliveries.
 */
function serialParts([, days = '', fraction]: RegExpExecArray): DateParts | undefined {
  const day = Number(days);
  if (day < 36_526 || day >= 73_051) return undefined;
  // Floating point leaves a fraction of a second that nobody wrote.
  const seconds = Math.round(Number(`0.${fraction ?? 0}`) * 86_400);
  const at = new Date(Date.UTC(1899, 11, 30 + day) + seconds * 1000);
  return {
    parts: [at.getUTCFullYear(), at.getUTCMonth() + 1, at.getUTCDate()],
    order: 'iso',
    separator: '',
    clock: fraction === undefined ? undefined : at.toISOString().slice(11, 19),
  };
}

/** Before and after noon in other words: Czech, Swedish, German. */
const HALF_DAYS: Readonly<Record<string, 'AM' | 'PM'>> = {
  ...{ dop: 'AM', odp: 'PM', fm: 'AM', em: 'PM', vorm: 'AM', nachm: 'PM' },
};
const HALF_DAY = new RegExp(`\\s(${Object.keys(HALF_DAYS).join('|')})\\.?$`, 'i');

/** Milliseconds into the day and the stated offset; undefined when it is not a time of day. 24:00 is the end of the day. */
export function readTimeOfDay(text: string): { ms: number; offset?: number } | undefined {
  const [, ofDay] = DAY_FRACTION.exec(text.trim()) ?? [];
  if (ofDay !== undefined) return { ms: Math.round(Number(`0.${ofDay}`) * 86_400) * 1000 };
  const clock = text.trim();
  const half = /[a-z]/i.test(clock) ? HALF_DAY.exec(clock)?.[1] : undefined;
  const match = CLOCK.exec(
    half === undefined ? clock : clock.replace(HALF_DAY, ` ${HALF_DAYS[half.toLowerCase()] ?? ''}`),
  );
  if (match === null) return undefined;
  const [, h = '', min, s, fraction = '', noon, zone] = match;
  if (min === undefined && noon === undefined) return undefined;
  let hour = Number(h);
  if (noon !== undefined) {
    if (hour < 1 || hour > 12) return undefined;
    hour = (hour % 12) + (noon.toLowerCase() === 'p' ? 12 : 0);
  }
  const minute = Number(min ?? 0);
  const second = Number(s ?? 0);
  // A leap second is written 60; the clock of the zone rolls over.
  if (hour > 24 || minute > 59 || second > 60 || (hour === 24 && minute + second > 0)) return undefined;
  const ms = ((hour * 60 + minute) * 60 + second) * 1000 + Math.round(Number(`0.${fraction || 0}`) * 1000);
  return zone === undefined ? { ms } : withOffset(ms, readOffset(zone));
}

function withOffset(ms: number, offset: number | undefined): { ms: number; offset: number } | undefined {
  return offset === undefined ? undefined : { ms, offset };
}

/** Minutes east of UTC of `Z`, `+05:45`, `-0700`, `UTC-7`; undefined when it is not an offset. */
export function readOffset(text: string): number | undefined {
  const match = /^(?:UTC|GMT)?(?:([+−-])(\d{1,2}):?(\d{2})?)?$|^Z$/i.exec(text.trim());
  if (match === null || text.trim() === '') return undefined;
  const [, sign, hours = '0', minutes = '0'] = match;
  const value = Number(hours) * 60 + Number(minutes);
  // Offsets in use run from −12:00 to +14:00.
  if (Number(minutes) > 59 || value > 14 * 60) return undefined;
  return sign === undefined || sign === '+' ? value : -value;
}

/** Wall time of a date with its time of day; undefined when there is no such date. */
export function wallOf(date: DateParts, order: DateOrder, clock: string | undefined): WallTime | undefined {
  const [a, b, c] = date.parts;
  const used = date.order ?? order;
  const [year, month, day] = used === 'iso' ? [a, b, c] : used === 'month-day-year' ? [c, a, b] : [c, b, a];
  const time = clock === undefined ? { ms: 0 } : readTimeOfDay(clock);
  const full = year < 100 ? 2000 + year : year;
  if (time === undefined || month < 1 || month > 12 || day < 1 || full < 1970 || full > 2200)
    return undefined;
  const midnight = Date.UTC(full, month - 1, day);
  if (new Date(midnight).getUTCDate() !== day) return undefined;
  return { ...omitUndefined({ offset: time.offset }), wall: midnight + time.ms };
}

/** Reads date and time written in one text; undefined when it is not one or names no such date. */
export function readWall(text: string, order: DateOrder): WallTime | undefined {
  const date = dateParts(text.trim());
  return date === undefined ? undefined : wallOf(date, order, date.clock);
}

/** Wall-clock milliseconds in the written form of a local time. */
export function toLocalTime(wall: number): LocalTime {
  return new Date(wall).toISOString().replace(/(?:\.000)?Z$/, '') as LocalTime;
}

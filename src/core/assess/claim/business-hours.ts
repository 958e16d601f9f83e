import { DateTime } from 'luxon';
import type { HolidayList, Weekday, WorkingTime } from '../../model/claim-deadlines.js';
import type { DeadlineCounting } from '../../model/results.js';
import type { CalendarDay, Zone } from '../../model/time.js';
import { zoneRules } from '../../model/zone-rules.js';
import { addDays, dayAt, weekdayOf } from './calendar.js';
import { isHoliday } from './holidays.js';

const DAYS: readonly Weekday[] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
export const HOUR = 3_600_000;
/** More days than any count of hours can need: a list that leaves out everything would never end. */
const MOST_DAYS = 4000;

/** Why a day is not a working day; undefined for a working day. */
export function nonWorkingReason(
  date: CalendarDay,
  work: WorkingTime,
  holidays: HolidayList | undefined,
): 'holiday' | 'not-a-working-day' | undefined {
  const day = DAYS[weekdayOf(date) - 1];
  if (day === undefined || !work.days.includes(day)) return 'not-a-working-day';
  return isHoliday(date, holidays) ? 'holiday' : undefined;
}

const clock = (date: CalendarDay, time: string, zone: Zone): number =>
  DateTime.fromISO(`${date}T${time}`, { zone: zoneRules(zone) }).toMillis();

/** Business hours of one working day, milliseconds since 1970 UTC. */
export interface Shift {
  opens: number;
  closes: number;
}
type Day = { date: CalendarDay } & (
  | { shift: Shift }
  | { why: NonNullable<ReturnType<typeof nonWorkingReason>> }
);

/**
 * The days from the eve of an instant on, each with its business hours or why it has none. Hours that pass midnight
 * belong to the day on which they begin.
 */
function* daysFrom(
  at: number,
  zone: Zone,
  work: WorkingTime,
  holidays: HolidayList | undefined,
): Generator<Day, undefined> {
  let date = addDays(dayAt(at, zone).date, -1);
  for (let n = 0; n < MOST_DAYS; n += 1, date = addDays(date, 1)) {
    const why = nonWorkingReason(date, work, holidays);
    const last = work.from < work.to ? date : addDays(date, 1);
    yield why === undefined
      ? { date, shift: { opens: clock(date, work.from, zone), closes: clock(last, work.to, zone) } }
      : { date, why };
  }
}

/** Working days that were passed over between an instant and the day on which counting went on. */
type LeftOut = DeadlineCounting['leftOut'];

/**
 * The business hours that an instant lies in, or the next ones, with the days passed over on the way. Hours that
 * touch, as where work goes on round the clock, are one. Undefined when no day is worked.
 */
function shiftAt(
  at: number,
  zone: Zone,
  work: WorkingTime,
  holidays: HolidayList | undefined,
): (Shift & { leftOut: LeftOut }) | undefined {
  const today = dayAt(at, zone).date;
  const leftOut: LeftOut = [];
  let found: Shift | undefined;
  for (const day of daysFrom(at, zone, work, holidays)) {
    if (!('shift' in day)) {
      if (found !== undefined) break;
      if (day.date >= today) leftOut.push({ date: day.date, why: day.why });
      continue;
    }
    if (found === undefined && day.shift.closes > at) found = { ...day.shift };
    else if (found !== undefined && day.shift.opens === found.closes) found.closes = day.shift.closes;
    else if (found !== undefined) break;
  }
  return found === undefined ? undefined : { ...found, leftOut };
}

/**
 * The instant at which that many working hours have passed. Hours are elapsed hours: a clock change during working
 * time makes the working day longer or shorter, as it does for those who work.
 * @param at milliseconds since 1970 UTC
 */
export function addWorkingHours(
  at: number,
  zone: Zone,
  hours: number,
  work: WorkingTime,
  holidays: HolidayList | undefined,
): { at: number; leftOut: LeftOut } {
  const today = dayAt(at, zone).date;
  const leftOut: LeftOut = [];
  let left = hours * HOUR;
  if (left <= 0) return { at, leftOut };
  for (const day of daysFrom(at, zone, work, holidays)) {
    if (!('shift' in day)) {
      if (day.date >= today) leftOut.push({ date: day.date, why: day.why });
      continue;
    }
    const opens = Math.max(at, day.shift.opens);
    const worked = Math.max(0, day.shift.closes - opens);
    if (left <= worked) return { at: opens + left, leftOut };
    left -= worked;
  }
  return { at: at + hours * HOUR, leftOut: [] };
}

/** The end of a time to reject, and which sentence of 7 CFR 46.2(cc)(4) decided it. */
export interface RejectionEnd {
  at: number;
  leftOut: LeftOut;
  counted: 'uninterrupted' | 'from-opening' | 'rest-from-opening';
  /** The opening at which counting began or went on. */
  opening?: number;
}

/**
 * The end of a time to reject that begins at an instant, as 7 CFR 46.2(cc)(4) counts it. (i): outside business hours
 * with nobody there who may reject, the hours before the next opening do not count. (ii): in business hours it runs
 * without interruption; but when it begins less than `carriedWithin` hours before the close, the rest runs from the
 * next opening. From there on it is interrupted no more.
 * @param at milliseconds since 1970 UTC
 */
export function rejectionEnd(
  at: number,
  zone: Zone,
  hours: number,
  carriedWithin: number,
  work: WorkingTime,
  holidays: HolidayList | undefined,
): RejectionEnd {
  const span = hours * HOUR;
  const whole: RejectionEnd = { at: at + span, leftOut: [], counted: 'uninterrupted' };
  const shift = shiftAt(at, zone, work, holidays);
  if (shift === undefined) return whole;
  if (shift.opens > at) {
    if (work.mayReject === 'at-all-hours') return whole;
    return { at: shift.opens + span, leftOut: shift.leftOut, counted: 'from-opening', opening: shift.opens };
  }
  const before = shift.closes - at;
  if (before >= carriedWithin * HOUR || before >= span) return whole;
  const next = shiftAt(shift.closes, zone, work, holidays);
  if (next === undefined) return whole;
  const { opens: opening, leftOut } = next;
  return { at: opening + span - before, leftOut, counted: 'rest-from-opening', opening };
}

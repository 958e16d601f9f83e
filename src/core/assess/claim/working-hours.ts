import { DateTime } from 'luxon';
import type { HolidayList, Weekday, WorkingTime } from '../../model/claim-deadlines.js';
import type { DeadlineCounting } from '../../model/results.js';
import type { CalendarDay, Zone } from '../../model/time.js';
import { zoneRules } from '../../model/zone-rules.js';
import { addDays, dayAt, weekdayOf } from './calendar.js';
import { isHoliday } from './holidays.js';

const DAYS: readonly Weekday[] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
const HOUR = 3_600_000;
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
): { at: number; leftOut: DeadlineCounting['leftOut'] } {
  const leftOut: DeadlineCounting['leftOut'] = [];
  let left = hours * HOUR;
  if (left <= 0) return { at, leftOut };
  let { date } = dayAt(at, zone);
  for (let n = 0; n < MOST_DAYS; n += 1, date = addDays(date, 1)) {
    const why = nonWorkingReason(date, work, holidays);
    if (why !== undefined) {
      leftOut.push({ date, why });
      continue;
    }
    const opens = Math.max(at, clock(date, work.from, zone));
    const closes = clock(date, work.to, zone);
    const worked = Math.max(0, closes - opens);
    if (left <= worked) return { at: opens + left, leftOut };
    left -= worked;
  }
  return { at: at + hours * HOUR, leftOut: [] };
}

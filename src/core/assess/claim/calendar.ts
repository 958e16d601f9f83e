import { DateTime } from 'luxon';
import type { Day } from '../../model/claim.js';
import { assertNever } from '../../model/error.js';
import { type CalendarDay, calendarDay, type Zone } from '../../model/time.js';
import { zoneRules } from '../../model/zone-rules.js';

/** Arithmetic of days at a place. A day is 23, 24 or 25 hours long where clocks are changed; counting days ignores that. */

const utc = (date: CalendarDay): DateTime => DateTime.fromISO(date, { zone: 'utc' });
const written = (date: DateTime): CalendarDay => calendarDay.parse(date.toISODate());

/** The day that an instant (milliseconds since 1970 UTC) lies in, in a zone. */
export function dayAt(at: number, zone: Zone): Day {
  return { date: written(DateTime.fromMillis(at, { zone: zoneRules(zone) })), zone };
}

/** First instant of a day, milliseconds since 1970 UTC. Where midnight is skipped, the first that there is. */
export function startOfDay({ date, zone }: Day): number {
  return DateTime.fromISO(date, { zone: zoneRules(zone) })
    .startOf('day')
    .toMillis();
}

/** First instant after a day. */
export function endOfDay({ date, zone }: Day): number {
  return startOfDay({ date: addDays(date, 1), zone });
}

/** The day so many days later by the calendar; earlier for a number below zero. */
export function addDays(date: CalendarDay, days: number): CalendarDay {
  return written(utc(date).plus({ days }));
}

/**
 * The same day of a later month or year, or the last day of the month where there is none: 31 May and nine months is
 * 28 February. No source read for this says how; it is a convention.
 */
export function addCalendar(date: CalendarDay, count: number, unit: 'months' | 'years'): CalendarDay {
  switch (unit) {
    case 'months':
      return written(utc(date).plus({ months: count }));
    case 'years':
      return written(utc(date).plus({ years: count }));
    default:
      return assertNever(unit);
  }
}

/** 1 Monday … 7 Sunday. */
export const weekdayOf = (date: CalendarDay): number => utc(date).weekday;

/** Whole days from one to the other; negative when the second is earlier. */
export function daysBetween(from: CalendarDay, to: CalendarDay): number {
  return Math.round((utc(to).toMillis() - utc(from).toMillis()) / 86_400_000);
}

/** Why a day is left out of a count; undefined when it counts. */
export type DayExclusion<W extends string> = (date: CalendarDay) => W | undefined;

/** A row of days left out can't be longer: a list that leaves out everything would never end. */
const MOST_IN_A_ROW = 400;

/**
 * Counts days after a day, without those that are left out: the first counted day is number one.
 * @returns the last day of the count, and what was left out on the way, in order
 */
export function countDays<W extends string>(
  start: CalendarDay,
  count: number,
  why: DayExclusion<W>,
): { date: CalendarDay; leftOut: { date: CalendarDay; why: W }[] } {
  const leftOut: { date: CalendarDay; why: W }[] = [];
  let date = start;
  let row = 0;
  for (let left = count; left > 0 && row < MOST_IN_A_ROW; ) {
    date = addDays(date, 1);
    const reason = why(date);
    if (reason === undefined) {
      left -= 1;
      row = 0;
    } else {
      leftOut.push({ date, why: reason });
      row += 1;
    }
  }
  return { date, leftOut };
}

/** The day itself, or the next that counts. */
export function nextCountedDay<W extends string>(date: CalendarDay, why: DayExclusion<W>): CalendarDay {
  return why(date) === undefined ? date : countDays(date, 1, why).date;
}

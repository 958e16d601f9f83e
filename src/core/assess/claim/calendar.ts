import { DateTime } from 'luxon';
import type { Day } from '../../model/claim.js';
import { assertNever } from '../../model/error.js';
import { type CalendarDay, calendarDay, type Zone } from '../../model/time.js';
import { zoneRules } from '../../model/zone-rules.js';

/** Arithmetic of days at a place. A day is 23, 24 or 25 hours long where clocks are changed; counting days ignores that. */

const utc = (date: CalendarDay): DateTime => DateTime.fromISO(date, { zone: 'utc' });
const written = (date: DateTime): CalendarDay => calendarDay.parse(date.toISODate());

/** The calendar day of an instant (milliseconds since 1970 UTC) in a zone. */
export function dayAt(at: number, zone: Zone): Day {
  return { date: written(DateTime.fromMillis(at, { zone: zoneRules(zone) })), zone };
}

/**
 * First instant of a day, milliseconds since 1970 UTC. Where the clock skips midnight, the first instant that
 * exists.
 */
export function startOfDay({ date, zone }: Day): number {
  return DateTime.fromISO(date, { zone: zoneRules(zone) })
    .startOf('day')
    .toMillis();
}

/** First instant after a day. */
export function endOfDay({ date, zone }: Day): number {
  return startOfDay({ date: addDays(date, 1), zone });
}

/** The day that many days later by the calendar; earlier for a negative number. */
export function addDays(date: CalendarDay, days: number): CalendarDay {
  return written(utc(date).plus({ days }));
}

/**
 * The same day of a later month or year, or the last day of a shorter month: 31 May plus nine months is 28
 * February. Convention of this project; no source read states it.
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

/** Longest run of excluded days: a list that excludes every day would never end. */
const MOST_IN_A_ROW = 400;

/**
 * Counts days after a day, skipping excluded ones: the first counted day is number one.
 * @returns the last day of the count, and the days skipped, in order
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

/** The day itself, or the next day that is not excluded. */
export function nextCountedDay<W extends string>(date: CalendarDay, why: DayExclusion<W>): CalendarDay {
  return why(date) === undefined ? date : countDays(date, 1, why).date;
}

import { DateTime } from 'luxon';
import type { HolidayList } from '../../model/claim-deadlines.js';
import { type CalendarDay, calendarDay } from '../../model/time.js';

/** Day of the month, or which weekday of it: 1 Monday … 7 Sunday; `nth` -1 is the last. */
type Rule = { month: number; since?: number } & ({ day: number } | { weekday: number; nth: number });

/** 5 U.S.C. 6103(a). Inauguration Day, 6103(c), is kept only around Washington and is left out. */
const FEDERAL: readonly Rule[] = [
  { month: 1, day: 1 },
  { month: 1, weekday: 1, nth: 3, since: 1986 },
  { month: 2, weekday: 1, nth: 3 },
  { month: 5, weekday: 1, nth: -1 },
  { month: 6, day: 19, since: 2021 },
  { month: 7, day: 4 },
  { month: 9, weekday: 1, nth: 1 },
  { month: 10, weekday: 1, nth: 2 },
  { month: 11, day: 11 },
  { month: 11, weekday: 4, nth: 4 },
  { month: 12, day: 25 },
];

function dateOf(rule: Rule, year: number): DateTime {
  if ('day' in rule) return DateTime.utc(year, rule.month, rule.day);
  if (rule.nth < 0) {
    const last = DateTime.utc(year, rule.month, 1).endOf('month').startOf('day');
    return last.minus({ days: (last.weekday - rule.weekday + 7) % 7 });
  }
  const first = DateTime.utc(year, rule.month, 1);
  return first.plus({ days: ((rule.weekday - first.weekday + 7) % 7) + (rule.nth - 1) * 7 });
}

const written = (date: DateTime): CalendarDay => calendarDay.parse(date.toISODate());

/**
 * Federal holidays of the United States whose own date lies in the year, on the days when they are kept: one on a
 * Saturday the Friday before (5 U.S.C. 6103(b)), one on a Sunday the Monday after (Executive Order 11582). New Year's
 * Day can so be kept on 31 December of the year before.
 */
export function federalHolidays(year: number): CalendarDay[] {
  return FEDERAL.filter(({ since }) => since === undefined || year >= since).map((rule) => {
    const date = dateOf(rule, year);
    return written(date.plus({ days: date.weekday === 6 ? -1 : date.weekday === 7 ? 1 : 0 }));
  });
}

const years = new Map<number, ReadonlySet<CalendarDay>>();

function federalHoliday(date: CalendarDay): boolean {
  const year = Number(date.slice(0, 4));
  let found = years.get(year);
  if (found === undefined) {
    found = new Set([...federalHolidays(year), ...federalHolidays(year + 1)]);
    years.set(year, found);
  }
  return found.has(date);
}

/** Whether a day is on a list. */
export function isHoliday(date: CalendarDay, list: HolidayList | undefined): boolean {
  if (list === undefined) return false;
  return list === 'us-federal' ? federalHoliday(date) : list.includes(date);
}

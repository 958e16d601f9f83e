import type { ClaimDeadlines, DeadlineRule, DeadlineSpan } from '../../model/claim-deadlines.js';
import { assertNever } from '../../model/error.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { DeadlineCounting, DeadlineTime } from '../../model/results.js';
import type { CalendarDay } from '../../model/time.js';
import { addWorkingHours, HOUR, nonWorkingReason, rejectionEnd } from './business-hours.js';
import { addCalendar, addDays, countDays, nextCountedDay, weekdayOf } from './calendar.js';
import { atTime, beginningOf, dayOf, endOf, onDay } from './deadline-milestones.js';
import { isHoliday } from './holidays.js';

/** Holiday lists and working hours that a count uses. */
export type Calendars = Pick<ClaimDeadlines, 'work' | 'holidays'>;

export interface Due {
  due: DeadlineTime;
  counting?: DeadlineCounting;
}

/** The end of a span that starts at a deadline time, and what the count excluded. */
export function dueOf(
  rule: Pick<DeadlineRule, 'counting'> & Partial<Pick<DeadlineRule, 'oneDayMore'>>,
  span: DeadlineSpan,
  start: DeadlineTime,
  calendars: Calendars,
): Due {
  const { firstDay } = rule.counting;
  const day = dayOf(start);
  switch (span.unit) {
    case 'hours':
      return dueInHours(rule, span.count, start, calendars);
    case 'days':
    case 'working-days': {
      const working = span.unit === 'working-days';
      const why = (date: CalendarDay) =>
        working
          ? nonWorkingReason(date, calendars.work, listed(calendars, calendars.work.holidays))
          : excepted(rule, calendars, date);
      const first = firstDay === 'counted' && why(day.date) === undefined ? 1 : 0;
      const { date, leftOut } = countDays(day.date, Math.max(0, span.count - first), why);
      const list = working
        ? calendars.work.holidays
        : usesHolidays(rule)
          ? rule.counting.holidays
          : undefined;
      return {
        due: onDay({ ...day, date: atItsEnd(rule, calendars, date) }, []),
        ...omitUndefined({
          counting:
            leftOut.length === 0 && list === undefined
              ? undefined
              : { leftOut, ...namedList(calendars, list) },
        }),
      };
    }
    case 'months':
    case 'years': {
      const last = addCalendar(day.date, span.count, span.unit);
      const more = (rule.oneDayMore === true ? 1 : 0) - (firstDay === 'counted' && span.count > 0 ? 1 : 0);
      const date = addDays(last, more);
      return { due: onDay({ ...day, date: atItsEnd(rule, calendars, date) }, []) };
    }
    default:
      return assertNever(span.unit);
  }
}

/** Hours from a time of day; from a day without an hour they run from the day's end. */
function dueInHours(
  rule: Pick<DeadlineRule, 'counting'>,
  hours: number,
  start: DeadlineTime,
  calendars: Calendars,
): Due {
  const { zone } = dayOf(start);
  const from = start.is === 'day' ? endOf(start) : beginningOf(start);
  const everyHourEnd = from + hours * HOUR;
  const everyHour = atTime(everyHourEnd, zone, []);
  const { hours: which, carriedWithin } = rule.counting;
  if (which === 'running') return { due: everyHour };
  const { work } = calendars;
  const holidays = listed(calendars, work.holidays);
  const counted =
    which === 'to-reject'
      ? rejectionEnd(from, zone, hours, carriedWithin, work, holidays)
      : { ...addWorkingHours(from, zone, hours, work, holidays), counted: 'at-work' as const };
  const { from: opens, to, assumed } = work;
  const opening = 'opening' in counted ? counted.opening : undefined;
  return {
    due: atTime(counted.at, zone, []),
    counting: {
      leftOut: counted.leftOut,
      ...namedList(calendars, work.holidays),
      hours: { from: opens, to, assumed, counted: counted.counted, ...omitUndefined({ opening }) },
      ...omitUndefined({ ifEveryHourCounts: counted.at === everyHourEnd ? undefined : everyHour }),
    },
  };
}

const listed = ({ holidays }: Calendars, name: string | undefined) =>
  name === undefined ? undefined : holidays[name];

const usesHolidays = ({ counting }: Pick<DeadlineRule, 'counting'>) => counting.except.includes('holidays');

function namedList(calendars: Calendars, name: string | undefined): Pick<DeadlineCounting, 'holidays'> {
  if (name === undefined) return {};
  const list = listed(calendars, name);
  return { holidays: { list: name, known: list === 'us-federal' || (list?.length ?? 0) > 0 } };
}

function excepted(rule: Pick<DeadlineRule, 'counting'>, calendars: Calendars, date: CalendarDay) {
  const { except, holidays } = rule.counting;
  const weekday = weekdayOf(date);
  if (weekday === 6 && except.includes('saturdays')) return 'saturday';
  if (weekday === 7 && except.includes('sundays')) return 'sunday';
  return except.includes('holidays') && isHoliday(date, listed(calendars, holidays)) ? 'holiday' : undefined;
}

/** The last day as it falls, or moved off Saturdays, Sundays and holidays where the rule says so. */
function atItsEnd(
  rule: Pick<DeadlineRule, 'counting'>,
  calendars: Calendars,
  date: CalendarDay,
): CalendarDay {
  if (rule.counting.lastDay === 'as-it-falls') return date;
  const list = listed(calendars, rule.counting.holidays);
  return nextCountedDay(date, (one) =>
    weekdayOf(one) >= 6 || isHoliday(one, list) ? 'not-a-working-day' : undefined,
  );
}

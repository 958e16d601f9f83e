import type { Day } from '../../model/claim.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { DeadlineTime } from '../../model/results.js';
import type { Zone } from '../../model/time.js';
import type { MilestoneEvent } from '../milestones.js';
import { dayAt, endOfDay, startOfDay } from './calendar.js';

/** Times of deadlines: calendar days where the rule counts days, times of day where it counts hours. */

export const onDay = (day: Day, evidence: DeadlineTime['evidence'], seq?: number): DeadlineTime => ({
  is: 'day',
  day,
  evidence,
  ...omitUndefined({ seq }),
});

export const atTime = (at: number, zone: Zone, evidence: DeadlineTime['evidence']): DeadlineTime => ({
  is: 'time',
  at,
  zone,
  evidence,
});

export const eventTime = (event: MilestoneEvent, zone: Zone): DeadlineTime =>
  atTime(event.at, zone, [event.evidence]);

/** The calendar day of a deadline time at its place. */
export const dayOf = (moment: DeadlineTime): Day =>
  moment.is === 'day' ? moment.day : dayAt(moment.at, moment.zone);

/** First instant of a deadline time, milliseconds since 1970 UTC. */
export const beginningOf = (moment: DeadlineTime): number =>
  moment.is === 'day' ? startOfDay(moment.day) : moment.at;

/** First instant at which a deadline time is past. */
export const endOf = (moment: DeadlineTime): number =>
  moment.is === 'day' ? endOfDay(moment.day) : moment.at + 1;

/**
 * Whether an action was not later than the deadline. Where days are counted, calendar days of the deadline's place
 * are compared; where hours are counted and only the day of the action is known, its beginning is taken.
 */
export function isInTime(done: DeadlineTime, due: DeadlineTime): boolean {
  if (due.is === 'time') return beginningOf(done) <= due.at;
  const day = done.is === 'day' ? done.day : dayAt(done.at, due.day.zone);
  return day.date <= due.day.date;
}

export const isPast = (due: DeadlineTime, now: number): boolean => now >= endOf(due);

export const byBeginning = (a: DeadlineTime, b: DeadlineTime): number => beginningOf(a) - beginningOf(b);

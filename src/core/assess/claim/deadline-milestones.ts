import type { Day } from '../../model/claim.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { DeadlineTime } from '../../model/results.js';
import type { Zone } from '../../model/time.js';
import type { MilestoneEvent } from '../milestones.js';
import { dayAt, endOfDay, startOfDay } from './calendar.js';

/** Moments of clocks: days where days are counted, times of day where hours are. */

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

/** The calendar day of a moment at its place. */
export const dayOf = (moment: DeadlineTime): Day =>
  moment.is === 'day' ? moment.day : dayAt(moment.at, moment.zone);

/** First instant of it, milliseconds since 1970 UTC. */
export const beginningOf = (moment: DeadlineTime): number =>
  moment.is === 'day' ? startOfDay(moment.day) : moment.at;

/** First instant at which it is over. */
export const endOf = (moment: DeadlineTime): number =>
  moment.is === 'day' ? endOfDay(moment.day) : moment.at + 1;

/**
 * Whether what was done came not later than its end. Where days are counted, days are compared, a time of day by the
 * calendar of the place where it is due; where hours are counted and only the day is known, its beginning is taken.
 */
export function isInTime(done: DeadlineTime, due: DeadlineTime): boolean {
  if (due.is === 'time') return beginningOf(done) <= due.at;
  const day = done.is === 'day' ? done.day : dayAt(done.at, due.day.zone);
  return day.date <= due.day.date;
}

export const isPast = (due: DeadlineTime, now: number): boolean => now >= endOf(due);

export const byBeginning = (a: DeadlineTime, b: DeadlineTime): number => beginningOf(a) - beginningOf(b);

import { type EventTime, type Instant, milliseconds } from '../../model/time.js';

const DAY = 86_400_000;

/**
 * Whole days from the time that an entry tells of to the time at which it was entered; nothing below one day, or
 * where no time is known. A record made at or near the time carries more weight (Fed. R. Evid. 803(6)(A)).
 */
export function daysLate(enteredAt: Instant, time: EventTime | undefined): number | undefined {
  if (time?.is !== 'known') return undefined;
  const days = Math.floor((milliseconds(enteredAt) - milliseconds(time.instant)) / DAY);
  return days < 1 ? undefined : days;
}

import { meaningsOf, milliseconds, readLocal, type Zone } from '../../core/model/time.js';
import { TO_THE_SECOND } from './event-time.js';
import { dateParts, readTimeOfDay, toLocalTime, wallOf } from './wall-time.js';

const DAY = 86_400_000;
const HALF_MINUTE = 30;

/**
 * What a clock's display meant when its true time was about `near` (milliseconds UTC). Without a date the day
 * that brings it nearest is taken. A display without seconds holds for its whole minute, so its middle is taken,
 * give or take 30 s. Undefined when the text is not a time, or its date can be read two ways.
 */
export function readDisplay(
  text: string,
  zone: Zone,
  near: number,
): { at: number; uncertaintySeconds: number } | undefined {
  const typed = text.trim().replaceAll(/\s+/g, ' ');
  const dated = dateParts(typed);
  const clock = readTimeOfDay(dated === undefined ? typed : (dated.clock ?? ''));
  if (clock === undefined || clock.offset !== undefined) return undefined;
  const days: number[] = [];
  if (dated === undefined) {
    const today = Math.floor(near / DAY) * DAY;
    days.push(today - DAY, today, today + DAY);
  } else {
    const orders =
      dated.order === undefined ? (['month-day-year', 'day-month-year'] as const) : [dated.order];
    const read = [...new Set(orders.flatMap((order) => wallOf(dated, order, undefined)?.wall ?? []))];
    if (read.length !== 1) return undefined;
    days.push(...read);
  }
  const hasSeconds = /\d[:.]\d{2}[:.]\d{2}/.test(typed.slice(-15));
  const shift = hasSeconds ? 0 : HALF_MINUTE * 1000;
  const meant = days.flatMap((day) => moments(day + clock.ms, zone)).map((at) => at + shift);
  const at = meant.reduce((best, one) => (Math.abs(one - near) < Math.abs(best - near) ? one : best));
  return { at, uncertaintySeconds: hasSeconds ? TO_THE_SECOND : HALF_MINUTE };
}

function moments(wall: number, zone: Zone): number[] {
  return meaningsOf(readLocal(toLocalTime(wall), zone)).map(milliseconds);
}

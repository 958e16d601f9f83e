import {
  type Instant,
  type KnownTime,
  meaningsOf,
  milliseconds,
  readLocal,
  type TimeBasis,
  toInstant,
  type Zone,
} from '../../core/model/time.js';
import { toLocalTime } from './wall-time.js';

const DAY = 86_400_000;

/**
 * A day whose hour is not known: the middle between its midnights, give or take half of it. Days on which the clock is
 * changed are an hour shorter or longer.
 * @param midnight wall-clock milliseconds
 * @param until a moment after which it was not, such as now
 */
export function wholeDay(
  midnight: number,
  zone: Zone,
  basis: TimeBasis,
  stated: string,
  until?: Instant,
): KnownTime {
  const from = startOf(midnight, zone);
  const end = startOf(midnight + DAY, zone);
  const latest = until === undefined ? end : milliseconds(until);
  const to = latest > from && latest < end ? latest : end;
  return {
    is: 'known',
    instant: toInstant(Math.floor((from + to) / 2)),
    zone,
    basis,
    uncertaintySeconds: Math.ceil((to - from) / 2000),
    stated,
  };
}

function startOf(midnight: number, zone: Zone): number {
  return milliseconds(meaningsOf(readLocal(toLocalTime(midnight), zone))[0]);
}

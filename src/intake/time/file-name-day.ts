import type { Delivery, Stop } from '../../core/model/delivery.js';
import { type KnownTime, milliseconds, toInstant } from '../../core/model/time.js';
import { wholeDay } from './whole-day.js';

/** A day in a name: `IMG-20260714-WA0012.jpg`, `Image 2026-07-14 at 14.05.32.jpg`, `20260714_140532.jpg`. */
const DAY = /(?:^|[^0-9])(20\d{2})([-_.]?)(0[1-9]|1[0-2])\2(0[1-9]|[12]\d|3[01])(?![0-9])/;

/**
 * The day that programs and phones write into the names of pictures, as a proposal: files are renamed, and a picture
 * that was sent on carries the day of that. The zone is that of the stop, or any of the delivery's, which the
 * uncertainty covers. Undefined for a name without a day.
 */
export function dayOfFileName(
  name: string,
  { stops }: Delivery,
  stop: Stop | undefined,
): KnownTime | undefined {
  const [, year, , month, day] = DAY.exec(name.split('/').at(-1) ?? '') ?? [];
  if (year === undefined || month === undefined || day === undefined) return undefined;
  const midnight = Date.UTC(Number(year), Number(month) - 1, Number(day));
  const stated = `${year}-${month}-${day}`;
  if (!new Date(midnight).toISOString().startsWith(stated)) return undefined;
  const zones = stop === undefined ? [...new Set(stops.map(({ zone }) => zone))] : [stop.zone];
  const days = zones.map((zone) => wholeDay(midnight, zone, 'file-name', stated));
  const [first] = days;
  if (first === undefined) return undefined;
  const from = Math.min(...days.map((one) => milliseconds(one.instant) - one.uncertaintySeconds * 1000));
  const to = Math.max(...days.map((one) => milliseconds(one.instant) + one.uncertaintySeconds * 1000));
  return {
    ...first,
    instant: toInstant(Math.floor((from + to) / 2)),
    uncertaintySeconds: Math.ceil((to - from) / 2000),
  };
}

import { DateTime } from 'luxon';
import type { Delivery } from '../../core/model/delivery.js';
import { DossierError } from '../../core/model/error.js';
import { zoneRules } from '../../core/model/zone-rules.js';
import { chooseDate } from '../../intake/time/date-choice.js';
import { dateParts, toLocalTime } from '../../intake/time/wall-time.js';
import { plannedWalls } from '../typed/place-options.js';

/**
 * The day that a box names, `2026-07-14`: `7/14`, `7/14/2026`, `Jul 14`, `today`. The year that is left out is the
 * planned one, or this. Throws DossierError of the box, with the choices where it can be two days.
 */
export function parseDay(
  text: string,
  part: string,
  box: number,
  { delivery, now }: { delivery: Delivery; now: Date },
): string {
  const stops = delivery.stops.filter(({ id, does }) => (part === 'transit' ? does === 'load' : id === part));
  const [stop] = stops;
  const zone = stop?.zone ?? delivery.stops[0]?.zone;
  if (zone === undefined) throw new Error('a delivery without stops');
  const today = DateTime.fromJSDate(now, { zone: zoneRules(zone) });
  const plain = text.trim();
  if (/^(?:now|today)$/i.test(plain)) return today.toFormat('yyyy-MM-dd');
  if (/^yesterday$/i.test(plain)) return today.minus({ days: 1 }).toFormat('yyyy-MM-dd');
  const near = plannedWalls(stops);
  const year = near[0] === undefined ? today.year : new Date(near[0]).getUTCFullYear();
  const written = dateParts(plain) ?? dateParts(`${plain}/${year}`) ?? dateParts(`${plain} ${year}`);
  const latest = Date.UTC(today.year, today.month - 1, today.day, 23, 59);
  const read =
    written === undefined || written.clock !== undefined || /^\d{5}$/.test(plain)
      ? ({ is: 'none' } as const)
      : chooseDate(written, { zone, latest, near });
  const fail = (message: string, fix: string, choices?: readonly string[]) =>
    new DossierError('bad-value', message, {
      where: { field: `box ${box}` },
      fix,
      ...(choices === undefined ? {} : { choices }),
    });
  switch (read.is) {
    case 'none':
      throw fail(`"${text}" is not a day of the calendar`, 'Write it like 7/14, 2026-07-14 or Jul 14.');
    case 'one':
      return toLocalTime(read.wall).slice(0, 10);
    case 'two': {
      const days = read.walls.map((wall) => toLocalTime(wall).slice(0, 10));
      throw fail(`"${text}" can be ${days.join(' or ')}`, `Write ${days.join(' or ')}.`, days);
    }
  }
}

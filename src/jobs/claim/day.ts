import { DateTime } from 'luxon';
import type { Day } from '../../core/model/claim.js';
import type { Delivery } from '../../core/model/delivery.js';
import { DossierError } from '../../core/model/error.js';
import { calendarDay, type Zone, zone as zoneSchema } from '../../core/model/time.js';
import { zoneRules } from '../../core/model/zone-rules.js';

/** A year such as 0026 is a typing error; a deadline from it would be two thousand years overdue. */
const EARLIEST = '1970-01-01';

/** A day at a place: the one typed, or today. Without a zone, that of the last unloading stop. */
export function dayOf(
  said: string | undefined,
  zoneSaid: string | undefined,
  delivery: Delivery,
  now: Date,
): Day {
  const last = delivery.stops.findLast(({ does }) => does === 'unload');
  const read = zoneSaid === undefined ? undefined : zoneSchema.safeParse(zoneSaid);
  if (read?.success === false)
    throw new DossierError('bad-value', read.error.issues[0]?.message ?? 'not a time zone', {
      where: { field: '--zone' },
      fix: 'Use a name of the IANA list, such as America/Chicago.',
    });
  const zone: Zone = read?.data ?? last?.zone ?? zoneSchema.parse('UTC');
  const today = DateTime.fromJSDate(now, { zone: zoneRules(zone) });
  const word = said?.trim().toLowerCase() ?? 'today';
  const date =
    word === 'today' ? today.toISODate() : word === 'yesterday' ? today.minus({ days: 1 }).toISODate() : word;
  const day = calendarDay.safeParse(date);
  if (!day.success)
    throw new DossierError('bad-value', `"${said}" is not a day of the calendar`, {
      where: { field: '--on' },
      fix: 'Write it like 2026-08-03, or today, or yesterday.',
    });
  if (day.data < EARLIEST)
    throw new DossierError('bad-value', `${day.data} is before any claim of this delivery can be`, {
      where: { field: '--on' },
      fix: 'Write the year with its four digits, such as 2026.',
    });
  if (day.data > (today.toISODate() ?? ''))
    throw new DossierError('bad-value', `${day.data} has not come yet in ${zone}`, {
      where: { field: '--on' },
      fix: 'Write when it happened, or set the machine’s clock right.',
    });
  return { date: day.data, zone };
}

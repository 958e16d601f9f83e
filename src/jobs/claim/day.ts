import { DateTime } from 'luxon';
import type { ClaimId, Day } from '../../core/model/claim.js';
import type { Delivery } from '../../core/model/delivery.js';
import { DossierError } from '../../core/model/error.js';
import type { RecordState } from '../../core/model/state.js';
import { calendarDay, type Zone, zone as zoneSchema } from '../../core/model/time.js';
import { zoneRules } from '../../core/model/zone-rules.js';
import { chooseDate } from '../../intake/time/date-choice.js';
import { dateParts, toLocalTime } from '../../intake/time/wall-time.js';
import { parseZoneOption } from '../typed/zone-option.js';

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
  const zone: Zone =
    zoneSaid === undefined
      ? (last?.zone ?? zoneSchema.parse('UTC'))
      : parseZoneOption(zoneSaid, '--zone', last?.zone);
  const today = DateTime.fromJSDate(now, { zone: zoneRules(zone) });
  const word = said?.trim().toLowerCase() ?? 'today';
  const date =
    word === 'today'
      ? today.toISODate()
      : word === 'yesterday'
        ? today.minus({ days: 1 }).toISODate()
        : dayTyped(word, zone, today);
  const day = calendarDay.safeParse(date);
  if (!day.success)
    throw new DossierError('bad-value', `"${said}" is not a day of the calendar`, {
      where: { field: '--on' },
      fix: 'Write it like 2026-08-03 or Aug 3 2026, or today, or yesterday.',
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

/**
 * The day of what only answers a claim. Throws DossierError where it lies before the day on which the claim came in: a
 * written denial of that day would start the time for suit, and end what is still to be done.
 */
export function notBeforeReceipt(day: Day, claim: ClaimId, { claims }: Pick<RecordState, 'claims'>): Day {
  const received = claims.findLast(
    (one) => one.is === 'received' && one.claim === claim && one.replacedBy === undefined,
  );
  if (received?.is !== 'received' || received.received.zone !== day.zone) return day;
  if (day.date >= received.received.date) return day;
  throw new DossierError(
    'bad-value',
    `${day.date} is before claim ${claim} came in, ${received.received.date}`,
    {
      where: { field: '--on' },
      fix: 'Write the day on which it was answered; where the day of receipt is wrong, first record the claim again with --correct.',
    },
  );
}

/** A day in figures or with its month's name, in the order of the place. Throws DossierError where it can be two. */
function dayTyped(word: string, zone: Zone, today: DateTime): string {
  const parts = /^\d{4}-\d{2}-\d{2}$|^\d+$/.test(word) ? undefined : dateParts(word);
  if (parts === undefined || parts.clock !== undefined) return word;
  const latest = Date.UTC(today.year, today.month - 1, today.day);
  const read = chooseDate(parts, { zone, latest });
  switch (read.is) {
    case 'none':
      return word;
    case 'one':
      return toLocalTime(read.wall).slice(0, 10);
    case 'two': {
      const days = read.walls.map((wall) => toLocalTime(wall).slice(0, 10));
      throw new DossierError('bad-value', `"${word}" can be ${days.join(' or ')}`, {
        where: { field: '--on' },
        fix: `Write ${days.join(' or ')}.`,
        choices: days,
      });
    }
  }
}

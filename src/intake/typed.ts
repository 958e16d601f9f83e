import { DateTime } from 'luxon';
import type { Problem } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { type EventTime, type Instant, readLocal, type Zone } from '../core/model/time.js';
import { zoneRules } from '../core/model/zone-rules.js';
import { TO_THE_MINUTE, TO_THE_SECOND, timeWithOffset } from './time/event-time.js';
import { dateParts, readOffset, readTimeOfDay, toLocalTime, wallOf } from './time/wall-time.js';

export interface TypedContext {
  now: Instant;
  /** Zone of the stop that the time belongs to. */
  zone: Zone;
  /** Name of the field for problems. */
  field?: string;
}

export type TypedTime = { is: 'time'; time: EventTime } | { is: 'problem'; problem: Problem };

/** A typed clock names minutes; one that names seconds was read from a display. */
const PATTERN = /^(?:(now|today|yesterday)\b)?\s*(.*)$/i;
/** Times are of what has happened; a phone's clock may be a little ahead. */
const AHEAD_MINUTES = 10;
/** No time is written longer; a bound on what the patterns have to look at. */
const LONGEST = 80;

/**
 * Reads a time as people type it: `14:05`, `2:05pm`, `yesterday 14:05`, `2026-07-14T04:10`,
 * `Jul 14 2026 4:10 AM`, each with an offset (`-07:00`, `Z`) or the zone's own abbreviation (`MST`) behind it.
 * Without a date the last such time before now is meant. Dates that can be read two ways, and times that
 * daylight saving makes happen twice or never, come back as a problem that names the choices.
 */
export function parseTypedTime(text: string, { now, zone, field }: TypedContext): TypedTime {
  const fail: Fail = (message, fix, choices) => ({
    is: 'problem',
    problem: {
      code: 'bad-value',
      message,
      where: omitUndefined({ field }),
      fix,
      ...omitUndefined({ choices }),
    },
  });
  const typed = text.trim().slice(0, LONGEST).replaceAll(/\s+/g, ' ');
  const here = DateTime.fromISO(now, { zone: 'utc' }).setZone(zoneRules(zone));
  const [, word = '', rest = ''] = PATTERN.exec(typed) ?? [];
  if (word.toLowerCase() === 'now') {
    if (rest !== '') return fail(`"${text}" is not a time`, EXAMPLES);
    return known(now, zone, TO_THE_MINUTE, typed);
  }
  const { clockText, abbreviation } = splitAbbreviation(rest);
  const today = Date.UTC(here.year, here.month - 1, here.day);
  const dated = word === '' ? dateParts(clockText) : undefined;
  const clock = readTimeOfDay(dated === undefined ? clockText : (dated.clock ?? ''));
  if (clock === undefined) {
    const why = dated === undefined ? `"${text}" is not a time` : `"${text}" has a date but no time of day`;
    return fail(why, EXAMPLES);
  }
  let wall: number;
  if (dated === undefined) {
    wall = today + clock.ms - (word.toLowerCase() === 'yesterday' ? DAY : 0);
    const nowWall = today + here.diff(here.startOf('day')).toMillis();
    // At half past midnight, 23:50 is yesterday's.
    if (word === '' && clock.offset === undefined && wall > nowWall + AHEAD_MINUTES * 60_000) wall -= DAY;
  } else {
    const readings =
      dated.order === undefined ? (['month-day-year', 'day-month-year'] as const) : [dated.order];
    const walls = [...new Set(readings.flatMap((order) => wallOf(dated, order, dated.clock)?.wall ?? []))];
    const [first, second] = walls;
    if (first === undefined) return fail(`"${text}" names no day that there is`, EXAMPLES);
    if (second !== undefined)
      return fail(
        `"${text}" can be ${toLocalTime(first)} or ${toLocalTime(second)}`,
        `write ${toLocalTime(first)} or ${toLocalTime(second)}`,
        [toLocalTime(first), toLocalTime(second)],
      );
    wall = first;
  }
  const uncertainty = clock.ms % 60_000 === 0 ? TO_THE_MINUTE : TO_THE_SECOND;
  if (clock.offset !== undefined)
    return {
      is: 'time',
      time: timeWithOffset({ wall, offset: clock.offset }, zone, uncertainty, typed, 'typed'),
    };
  return inZoneOf(wall, zone, abbreviation, uncertainty, typed, fail);
}

type Fail = (message: string, fix: string, choices?: readonly string[]) => TypedTime;

const DAY = 86_400_000;
const EXAMPLES = 'write it like 14:05, 2:05pm, yesterday 14:05 or 2026-07-14T04:10';

/** Takes letters such as MST off the end; am and pm belong to the clock. */
function splitAbbreviation(text: string): { clockText: string; abbreviation?: string } {
  const match = /^(.*\d\s*(?:[ap]\.?m\.?)?)\s+([A-Za-z]{2,5})$/i.exec(text);
  const [, clockText, abbreviation] = match ?? [];
  if (
    clockText === undefined ||
    abbreviation === undefined ||
    /^[ap]m$/i.test(abbreviation) ||
    readOffset(abbreviation) !== undefined
  )
    return { clockText: text };
  return { clockText, abbreviation: abbreviation.toUpperCase() };
}

function inZoneOf(
  wall: number,
  zone: Zone,
  abbreviation: string | undefined,
  uncertainty: number,
  typed: string,
  fail: Fail,
): TypedTime {
  const local = toLocalTime(wall);
  const reading = readLocal(local, zone);
  const moments =
    reading.is === 'one' ? [reading.instant] : reading.is === 'twice' ? [reading.earlier, reading.later] : [];
  const named = (at: Instant): string =>
    DateTime.fromISO(at, { zone: 'utc' }).setZone(zoneRules(zone)).setLocale('en-US').offsetNameShort ?? '';
  const withOffset = (at: Instant): string =>
    DateTime.fromISO(at, { zone: 'utc' }).setZone(zoneRules(zone)).toFormat("yyyy-MM-dd'T'HH:mm:ssZZ");
  if (moments.length === 0)
    return fail(
      `${local} did not happen in ${zone}: the clock was put forward over it`,
      'write the time that the clock showed, or add the offset, such as -06:00',
    );
  const fitting =
    abbreviation === undefined ? moments : moments.filter((at) => named(at).toUpperCase() === abbreviation);
  const [only, other] = fitting;
  if (only === undefined)
    return fail(
      `${abbreviation} is not in force in ${zone} at ${local}; ${moments.map(named).join(' and ')} is`,
      `leave the abbreviation out, or write the offset: ${moments.map(withOffset).join(' or ')}`,
      moments.map(withOffset),
    );
  if (other !== undefined)
    return fail(
      `${local} happened twice in ${zone}: the clock was put back`,
      `write ${withOffset(only)} or ${withOffset(other)}`,
      [withOffset(only), withOffset(other)],
    );
  return known(only, zone, uncertainty, typed);
}

function known(instant: Instant, zone: Zone, uncertaintySeconds: number, stated: string): TypedTime {
  return { is: 'time', time: { is: 'known', instant, zone, basis: 'typed', uncertaintySeconds, stated } };
}

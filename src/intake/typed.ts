import { DateTime } from 'luxon';
import type { Problem } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { type EventTime, type Instant, type LocalTime, readLocal, type Zone } from '../core/model/time.js';
import { zoneRules } from '../core/model/zone-rules.js';
import { chooseDate } from './time/date-choice.js';
import { TO_THE_MINUTE, TO_THE_SECOND, timeWithOffset } from './time/event-time.js';
import { dateParts, readOffset, readTimeOfDay, toLocalTime } from './time/wall-time.js';
import { wholeDay } from './time/whole-day.js';
import { zonesOfPlace } from './time/zone-places.js';
import { type NamedZone, zoneOfWord } from './time/zone-words.js';

export interface TypedContext {
  now: Instant;
  /** Zone of the stop that the time belongs to. */
  zone: Zone;
  /** Wall-clock times, milliseconds, that a date should lie near, such as planned ones. */
  near?: readonly number[];
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
 * `Jul 14 2026 4:10 AM`, each with an offset (`-07:00`, `Z`) or a zone (`MST`, `PT`, `Pacific`, `Arizona`) behind
 * it. Without a date the last such time before now is meant; a day alone is the whole of it, from midnight to
 * midnight or now. Dates that can be read two ways where neither the country nor planned times decide, and times that
 * daylight saving makes happen twice or never, come back as a problem that names the choices.
 */
export function parseTypedTime(text: string, { now, zone, near, field }: TypedContext): TypedTime {
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
  const { clockText, zoneName } = splitZone(rest);
  const today = Date.UTC(here.year, here.month - 1, here.day);
  const nowWall = today + here.diff(here.startOf('day')).toMillis();
  // Only spreadsheets write a day as its number.
  const dated = word === '' && !/^\d{5}(?:[.,]\d+)?$/.test(clockText) ? dateParts(clockText) : undefined;
  const dayOnly = dated === undefined ? word !== '' && clockText === '' : dated.clock === undefined;
  const clock = dayOnly ? { ms: 0 } : readTimeOfDay(dated === undefined ? clockText : (dated.clock ?? ''));
  if (clock === undefined || (dayOnly && zoneName !== undefined))
    return fail(`"${text}" is not a time`, EXAMPLES);
  let wall: number;
  if (dated === undefined) {
    wall = today + clock.ms - (word.toLowerCase() === 'yesterday' ? DAY : 0);
    // At half past midnight, 23:50 is yesterday's.
    if (word === '' && clock.offset === undefined && wall > nowWall + AHEAD_MINUTES * 60_000) wall -= DAY;
  } else {
    const read = chooseDate(dated, {
      zone,
      latest: nowWall + AHEAD_MINUTES * 60_000,
      ...omitUndefined({ near }),
    });
    if (read.is === 'none') return fail(`"${text}" names no day that there is`, EXAMPLES);
    if (read.is === 'two') {
      const [first, second] = read.walls.map((at) => toLocalTime(at).slice(0, dayOnly ? 10 : undefined));
      return fail(`"${text}" can be ${first} or ${second}`, `write ${first} or ${second}`, [
        `${first}`,
        `${second}`,
      ]);
    }
    wall = read.wall;
  }
  if (dayOnly) return { is: 'time', time: wholeDay(wall, zone, 'typed', typed, now) };
  const uncertainty = clock.ms % 60_000 === 0 ? TO_THE_MINUTE : TO_THE_SECOND;
  if (clock.offset !== undefined)
    return {
      is: 'time',
      time: timeWithOffset({ wall, offset: clock.offset }, zone, uncertainty, typed, 'typed'),
    };
  return inZoneOf(wall, zone, zoneName, uncertainty, typed, fail);
}

type Fail = (message: string, fix: string, choices?: readonly string[]) => TypedTime;

const DAY = 86_400_000;
const EXAMPLES = 'write it like 14:05, 2:05pm, yesterday 14:05 or 2026-07-14T04:10';

/** Takes `MST`, `Pacific` or `Arizona time` off the end; am and pm belong to the clock. */
function splitZone(text: string): { clockText: string; zoneName?: string } {
  const match = /^(.*\d\s*(?:[ap]\.?\s?m\.?)?)\s+([A-Za-z][A-Za-z. ]{1,30})$/i.exec(text);
  const [, clockText, zoneName] = match ?? [];
  if (
    clockText === undefined ||
    zoneName === undefined ||
    /^[ap]\.?\s?m\.?$/i.test(zoneName) ||
    readOffset(zoneName) !== undefined
  )
    return { clockText: text };
  return { clockText, zoneName };
}

function inZoneOf(
  wall: number,
  zone: Zone,
  zoneName: string | undefined,
  uncertainty: number,
  typed: string,
  fail: Fail,
): TypedTime {
  const local = toLocalTime(wall);
  const abbreviation = zoneName?.toUpperCase();
  const own = momentsOf(local, zone);
  const isOwn = own.some((at) => nameOf(at, zone).toUpperCase() === abbreviation);
  const other = zoneName === undefined || isOwn ? undefined : otherZone(zoneName, zone);
  if (zoneName !== undefined && !isOwn && other === undefined)
    return fail(`"${zoneName}" is not a time zone that is known`, EXAMPLES);
  const read = other?.zone ?? zone;
  const moments = other === undefined ? own : momentsOf(local, read);
  if (moments.length === 0)
    return fail(
      `${local} did not happen in ${read}: the clock was put forward over it`,
      'write the time that the clock showed, or add the offset, such as -06:00',
    );
  const fitting = moments.filter((at) =>
    other?.offset !== undefined
      ? zoneRules(read).offset(Date.parse(at)) === other.offset
      : !isOwn || nameOf(at, zone).toUpperCase() === abbreviation,
  );
  const [only, second] = fitting;
  if (only === undefined) {
    // Said of the season that it is not: the letters, or the clock on the wall.
    const meant = [...(other?.offset === undefined ? [] : [withMinutes(local, other.offset)])];
    const choices = [...meant, ...moments.map((at) => withOffset(at, read))];
    return fail(
      `${zoneName} is not in force in ${read} at ${local}; ${moments.map((at) => nameOf(at, read)).join(' and ')} is`,
      `leave the zone out, or write the offset: ${choices.join(' or ')}`,
      choices,
    );
  }
  if (second !== undefined)
    return fail(
      `${local} happened twice in ${read}: the clock was put back`,
      `write ${withOffset(only, read)} or ${withOffset(second, read)}`,
      [withOffset(only, read), withOffset(second, read)],
    );
  return known(only, zone, uncertainty, typed);
}

/** Letters and names of zones first, then places. */
function otherZone(name: string, near: Zone): NamedZone | undefined {
  const word = zoneOfWord(name, near);
  if (word !== undefined) return word;
  const [zone, second] = zonesOfPlace(name.replace(/\s+(?:local\s+)?time$/i, ''));
  return zone === undefined || second !== undefined ? undefined : { zone };
}

function momentsOf(local: LocalTime, zone: Zone): Instant[] {
  const reading = readLocal(local, zone);
  switch (reading.is) {
    case 'one':
      return [reading.instant];
    case 'twice':
      return [reading.earlier, reading.later];
    case 'never':
      return [];
  }
}

const at = (moment: Instant, zone: Zone): DateTime =>
  DateTime.fromISO(moment, { zone: 'utc' }).setZone(zoneRules(zone));
const nameOf = (moment: Instant, zone: Zone): string =>
  at(moment, zone).setLocale('en-US').offsetNameShort ?? '';
const withOffset = (moment: Instant, zone: Zone): string =>
  at(moment, zone).toFormat("yyyy-MM-dd'T'HH:mm:ssZZ");

function withMinutes(local: LocalTime, minutes: number): string {
  const of = (n: number): string => String(Math.floor(n)).padStart(2, '0');
  const sign = minutes < 0 ? '-' : '+';
  return `${local}${sign}${of(Math.abs(minutes) / 60)}:${of(Math.abs(minutes) % 60)}`;
}

function known(instant: Instant, zone: Zone, uncertaintySeconds: number, stated: string): TypedTime {
  return { is: 'time', time: { is: 'known', instant, zone, basis: 'typed', uncertaintySeconds, stated } };
}

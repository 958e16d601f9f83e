import fc from 'fast-check';
import { DateTime, IANAZone } from 'luxon';
import { describe, expect, it } from 'vitest';
import { dayAt, endOfDay } from '../../../src/core/assess/claim/calendar.js';
import { timeTicks } from '../../../src/core/charts/time-axis.js';
import { calendarDay, instant, localTime, readLocal, type Zone, zone } from '../../../src/core/model/time.js';
import { inZone, zoneShown } from '../../../src/core/model/zoned-time.js';
import { formatFor } from '../../../src/core/words/format.js';
import { cases } from '../../properties.js';

const isLocalTime = (text: string) => localTime.safeParse(text).success;
const isZone = (name: string) => zone.safeParse(name).success;

describe('a local time', () => {
  it.each([
    '2026-07-14T04:00',
    '2026-07-14T04:00:59',
    '2026-07-14T04:00:59.123456',
    '2024-02-29T00:00',
    '2026-07-14T24:00',
    '2026-07-14T24:00:00.000',
    '0001-01-01T00:00',
  ])('%s is one', (text) => {
    expect(isLocalTime(text)).toBe(true);
  });

  it.each([
    '2026-02-29T00:00',
    '2026-04-31T00:00',
    '2026-13-01T00:00',
    '2026-00-01T00:00',
    '2026-07-00T00:00',
    '2026-07-14T25:00',
    '2026-07-14T24:01',
    '2026-07-14T24:00:00.001',
    '2026-07-14T24:00:00.000001',
    '2026-07-14T12:60',
    '2026-07-14T12:00:60',
    '2026-07-14 12:00',
    '2026-07-14T12:00Z',
    '2026-07-14',
  ])('%s is none', (text) => {
    expect(isLocalTime(text)).toBe(false);
  });

  // Luxon reads milliseconds, so that smaller parts of a second past the end of a day are nothing to it.
  it('is what Luxon takes for one, among texts of its form', () => {
    const digits = (most: number, length: number) =>
      fc.integer({ min: 0, max: most }).map((n) => String(n).padStart(length, '0'));
    fc.assert(
      fc.property(
        fc.tuple(digits(9999, 4), digits(13, 2), digits(32, 2), digits(25, 2), digits(61, 2)),
        fc.option(digits(61, 2)),
        fc.option(fc.constantFrom('0', '000', '5', '999999', '001')),
        ([year, month, day, hour, minute], second, fraction) => {
          const end = second === null ? '' : `:${second}${fraction === null ? '' : `.${fraction}`}`;
          const text = `${year}-${month}-${day}T${hour}:${minute}${end}`;
          expect([text, isLocalTime(text)]).toEqual([text, DateTime.fromISO(text, { zone: 'utc' }).isValid]);
        },
      ),
      { numRuns: cases(2000) },
    );
  });
});

describe('a zone', () => {
  const names = [
    ...Intl.supportedValuesOf('timeZone'),
    ...Array.from({ length: 31 }, (_, i) => `Etc/GMT${i < 15 ? '-' : '+'}${i < 15 ? i : i - 15}`),
    ...['UTC', 'Etc/UTC', 'US/Central', 'Asia/Calcutta', 'america/phoenix', 'America/Nowhere', 'A/B', '/'],
    ...['Etc/GMT+07', 'Etc/GMT', 'Etc/GMT7', 'Etc/GMT-5.5', ' America/Phoenix', 'America/Phoenix\n'],
  ];

  it('is what the zone data knows by a name of place or offset', () => {
    for (const name of names)
      expect([name, isZone(name)]).toEqual([
        name,
        (name.includes('/') || name === 'UTC') && IANAZone.isValidZone(name),
      ]);
  });

  it.each(['America/Ciudad_Juarez', 'America/Coyhaique'])('is %s, which not every engine knows', (name) => {
    expect(isZone(name)).toBe(true);
  });

  it.each(['CST', 'EST', 'GMT', '+07:00', ''])('"%s" alone is none', (name) => {
    expect(isZone(name)).toBe(false);
  });
});

/** A name as a newer list has it: this engine has no rules for it. */
const UNKNOWN = 'Mars/Olympus_Mons' as Zone;

describe('a zone that the engine has no rules for is refused where a time is computed:', () => {
  const at = instant.parse('2026-07-14T12:00:00.000Z');
  const format = formatFor({ temperature: '°F', language: 'en' }, { zoneUnknown: '', notKnown: '' });
  const day = { date: calendarDay.parse('2026-07-14'), zone: UNKNOWN };
  it.each<[string, () => unknown]>([
    ['a wall clock read', () => readLocal(localTime.parse('2026-07-14T04:00'), UNKNOWN)],
    ['an instant shown', () => inZone(at, UNKNOWN)],
    ['a time in words', () => format.time(Date.parse(at), UNKNOWN)],
    ['the day of an instant', () => dayAt(Date.parse(at), UNKNOWN)],
    ['the end of a day', () => endOfDay(day)],
    ['the axis of a chart', () => timeTicks(0, 3_600_000, UNKNOWN, 4)],
  ])('%s', (_, compute) => {
    expect(compute).toThrow(
      expect.objectContaining({ code: 'zone-rules', message: expect.stringContaining(UNKNOWN) }),
    );
  });
});

describe('a zone beside a time', () => {
  // Names as of the IANA list and CLDR for English of the United States.
  it.each([
    ['2026-07-14T12:00:00.000Z', 'America/Phoenix', 'MST'],
    ['2026-07-14T12:00:00.000Z', 'America/Chicago', 'CDT'],
    ['2026-12-14T12:00:00.000Z', 'America/Chicago', 'CST'],
    ['2026-07-14T12:00:00.000Z', 'America/Denver', 'MDT'],
    ['2026-07-14T12:00:00.000Z', 'Asia/Kolkata', 'GMT+5:30'],
    ['2026-07-14T12:00:00.000Z', 'UTC', 'UTC'],
  ])('%s in %s is %s', (at, name, shown) => {
    for (let again = 0; again < 2; again += 1)
      expect(zoneShown(inZone(instant.parse(at), zone.parse(name)))).toBe(shown);
  });
});

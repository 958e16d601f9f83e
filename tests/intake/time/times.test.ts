import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import { readLocal, zone } from '../../../src/core/model/time.js';
import { DateOrderEvidence } from '../../../src/intake/time/date-order.js';
import { timeInZone, zoneOfOffset } from '../../../src/intake/time/event-time.js';
import { readOffset, readWall, toLocalTime } from '../../../src/intake/time/wall-time.js';
import { cases } from '../../properties.js';

const wall = (text: string): number => Date.parse(`${text}Z`);
const HOUR = 3600;

describe('wall times in a zone', () => {
  // Worked by hand from the zones' rules.
  it.each([
    ['America/Phoenix', '2026-03-08T02:30:00', '2026-03-08T09:30:00.000Z', undefined, 1],
    ['America/Chicago', '2026-03-08T02:30:00', '2026-03-08T08:30:00.000Z', 'time-never-happened', 1 + HOUR],
    ['America/Chicago', '2026-11-01T01:30:00', '2026-11-01T06:30:00.000Z', 'time-happened-twice', 1 + HOUR],
    ['America/Chicago', '2026-11-01T00:59:59', '2026-11-01T05:59:59.000Z', undefined, 1],
    ['America/Chicago', '2026-11-01T02:00:00', '2026-11-01T08:00:00.000Z', undefined, 1],
    // Lord Howe goes from +11:00 to +10:30 on the first Sunday of April at 02:00.
    [
      'Australia/Lord_Howe',
      '2026-04-05T01:45:00',
      '2026-04-04T14:45:00.000Z',
      'time-happened-twice',
      1 + HOUR / 2,
    ],
    [
      'Australia/Lord_Howe',
      '2026-10-04T02:15:00',
      '2026-10-03T15:45:00.000Z',
      'time-never-happened',
      1 + HOUR / 2,
    ],
    ['Asia/Kathmandu', '2026-07-14T05:45:00', '2026-07-14T00:00:00.000Z', undefined, 1],
  ])('%s %s is %s', (name, local, instant, flag, uncertaintySeconds) => {
    const { time, flags } = timeInZone(wall(local), zone.parse(name), 'place-zone', 1);
    expect(time).toMatchObject({ is: 'known', instant, uncertaintySeconds, basis: 'place-zone' });
    expect(flags.map((f) => f.is)).toEqual(flag === undefined ? [] : [flag]);
  });

  it('means every moment at which a clock of the zone shows it, by luxon, and no other', () => {
    const names = [
      'America/Phoenix',
      'America/Chicago',
      'Australia/Lord_Howe',
      'Asia/Kathmandu',
      'Europe/Madrid',
    ];
    const minutes = fc.integer({
      min: wall('2025-01-01T00:00') / 60_000,
      max: wall('2027-12-31T00:00') / 60_000,
    });
    // Half of the samples near the changes.
    const near = fc
      .constantFrom(
        '2026-03-08T02:00',
        '2026-11-01T01:00',
        '2026-04-05T02:00',
        '2026-10-04T02:00',
        '2026-03-29T02:00',
      )
      .chain((t) => fc.integer({ min: -200, max: 200 }).map((m) => wall(t) / 60_000 + m));
    /** Moments within 15 hours, by the quarter of an hour that all offsets of today are multiples of. */
    const shown = (local: string, name: string) =>
      Array.from({ length: 121 }, (_, i) => Date.parse(`${local}Z`) + (i - 60) * 900_000)
        .filter((at) => DateTime.fromMillis(at, { zone: name }).toFormat("yyyy-MM-dd'T'HH:mm:ss") === local)
        .map((at) => new Date(at).toISOString());
    fc.assert(
      fc.property(fc.constantFrom(...names), fc.oneof(minutes, near), (name, minute) => {
        const local = toLocalTime(minute * 60_000);
        const reading = readLocal(local, zone.parse(name));
        const moments = {
          one: () => [reading.is === 'one' && reading.instant],
          twice: () => (reading.is === 'twice' ? [reading.earlier, reading.later] : []),
          never: () => [],
        }[reading.is]();
        expect(moments).toEqual(shown(local, name));
      }),
      { numRuns: cases(200) },
    );
  });

  it.each([
    [-420, 'Etc/GMT+7'],
    [330, 'UTC'],
    [0, 'UTC'],
    [60, 'Etc/GMT-1'],
  ])('names an offset of %s minutes %s', (minutes, name) => expect(zoneOfOffset(minutes)).toBe(name));
});

describe('dates as logs and people write them', () => {
  it.each([
    ['2026-07-14T04:05:06', 'iso', '2026-07-14T04:05:06', undefined],
    ['2026-07-14 04:05', 'iso', '2026-07-14T04:05:00', undefined],
    ['2026/07/14 04:05:06.250', 'iso', '2026-07-14T04:05:06.250', undefined],
    ['2026-07-14T04:05:06Z', 'iso', '2026-07-14T04:05:06', 0],
    ['2026-07-14T04:05:06+05:45', 'iso', '2026-07-14T04:05:06', 345],
    ['2026-07-14 04:05 -0700', 'iso', '2026-07-14T04:05:00', -420],
    ['20260714T040506Z', 'iso', '2026-07-14T04:05:06', 0],
    ['7/14/2026 4:05 PM', 'month-day-year', '2026-07-14T16:05:00', undefined],
    ['07/14/26 12:05 AM', 'month-day-year', '2026-07-14T00:05:00', undefined],
    ['14.07.2026 04:05', 'day-month-year', '2026-07-14T04:05:00', undefined],
    ['14/07/2026, 04:05:06', 'day-month-year', '2026-07-14T04:05:06', undefined],
    ['14-Jul-2026 04:05', 'month-day-year', '2026-07-14T04:05:00', undefined],
    ['Jul 14, 2026 4:05 am', 'iso', '2026-07-14T04:05:00', undefined],
    ['14 July 2026 04:05', 'iso', '2026-07-14T04:05:00', undefined],
    ['2026-07-14 24:00', 'iso', '2026-07-15T00:00:00', undefined],
  ] as const)('%s (%s)', (text, order, local, offset) => {
    expect(readWall(text, order)).toEqual({ wall: wall(local), ...omitUndefined({ offset }) });
  });

  it.each([
    '',
    '2026-02-30 01:00',
    '2026-13-01 01:00',
    '0000:00:00 00:00:00',
    '14:05',
    '2026-07-14 25:00',
    '2026-07-14 13:05 PM',
    '2026-07-14 04:60',
    '1/2/3/4',
    '2026-07-14T04:05+99:00',
  ])('refuses "%s"', (text) => expect(readWall(text, 'iso')).toBeUndefined());

  it('prints and reads the same', () => {
    const pad = (n: number, width = 2): string => String(n).padStart(width, '0');
    const moments = fc.integer({
      min: wall('1990-01-01T00:00') / 1000,
      max: wall('2099-12-31T00:00') / 1000,
    });
    fc.assert(
      fc.property(moments, (second) => {
        const d = new Date(second * 1000);
        const [y, m, day] = [d.getUTCFullYear(), d.getUTCMonth() + 1, d.getUTCDate()];
        const [h, min, s] = [d.getUTCHours(), d.getUTCMinutes(), d.getUTCSeconds()];
        const clock = `${pad(h)}:${pad(min)}:${pad(s)}`;
        const twelve = `${h % 12 === 0 ? 12 : h % 12}:${pad(min)}:${pad(s)} ${h < 12 ? 'AM' : 'PM'}`;
        expect(readWall(`${y}-${pad(m)}-${pad(day)} ${clock}`, 'iso')?.wall).toBe(second * 1000);
        expect(readWall(`${m}/${day}/${y} ${twelve}`, 'month-day-year')?.wall).toBe(second * 1000);
        expect(readWall(`${pad(day)}.${pad(m)}.${y} ${clock}`, 'day-month-year')?.wall).toBe(second * 1000);
      }),
    );
  });

  it('never throws on any text', () => {
    fc.assert(fc.property(fc.string(), (text) => void [readWall(text, 'iso'), readOffset(text)]));
  });
});

describe('order of day and month', () => {
  const verdict = (texts: string[], near: string[] = []) => {
    const evidence = new DateOrderEvidence();
    for (const text of texts) evidence.add(text);
    return evidence.verdict(near.map(wall));
  };
  const order = (name: string) => ({ is: 'order', order: name });
  it.each([
    ['a year in front', ['2026-07-08 04:00'], [], order('iso')],
    ['a number above 12 in first place', ['07/08/2026', '13/08/2026'], [], order('day-month-year')],
    ['a number above 12 in second place', ['07/08/2026', '07/13/2026'], [], order('month-day-year')],
    ['points', ['07.08.2026 04:00'], [], order('day-month-year')],
    [
      'rows that run one way (month first)',
      ['06/11/2026', '06/12/2026', '07/01/2026'],
      [],
      order('month-day-year'),
    ],
    [
      'a trip of days, not of months',
      ['07/08/2026', '07/09/2026', '07/10/2026'],
      [],
      order('month-day-year'),
    ],
    [
      'the planned time',
      ['07/08/2026 01:00', '07/08/2026 02:00'],
      ['2026-07-08T04:00'],
      order('month-day-year'),
    ],
    [
      'a month of one row a day, whose pause is a week',
      ['07/01/2026', '07/02/2026', '07/09/2026', '07/10/2026', '07/11/2026', '07/12/2026'],
      [],
      order('month-day-year'),
    ],
    [
      'the step from day to day (two digits of the year first)',
      ['26.07.08 23:30', '26.07.08 23:45', '26.07.09 00:00', '26.07.09 00:15'],
      [],
      order('iso'),
    ],
    [
      'the step from day to day (month first, with points)',
      ['07.08.26 23:30', '07.08.26 23:45', '07.09.26 00:00'],
      [],
      order('month-day-year'),
    ],
    [
      'the step from day to day (day first), whatever was planned',
      ['08.07.2026 23:45', '09.07.2026 00:00', '09.07.2026 00:15'],
      ['2026-08-07T04:00'],
      order('day-month-year'),
    ],
    [
      'the planned time, before points',
      ['07.08.2026 01:00', '07.08.2026 02:00'],
      ['2026-07-08T04:00'],
      order('month-day-year'),
    ],
    [
      'nothing',
      ['07/08/2026 01:00'],
      [],
      {
        is: 'ambiguous',
        example: '07/08/2026 01:00',
        orders: ['month-day-year', 'day-month-year'],
      },
    ],
    [
      'nothing, in two digits',
      ['07.08.09 01:00', '07.08.09 01:05'],
      [],
      {
        is: 'ambiguous',
        example: '07.08.09 01:00',
        orders: ['month-day-year', 'day-month-year', 'iso'],
      },
    ],
    ['no dates', ['hello', ''], [], { is: 'no-dates' }],
  ])('is decided by %s', (_, texts, near, expected) => expect(verdict(texts, near)).toEqual(expected));
});

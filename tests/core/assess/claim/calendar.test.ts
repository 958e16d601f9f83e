import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addCalendar,
  addDays,
  countDays,
  dayAt,
  daysBetween,
  endOfDay,
  nextCountedDay,
  startOfDay,
  weekdayOf,
} from '../../../../src/core/assess/claim/calendar.js';
import { federalHolidays, isHoliday } from '../../../../src/core/assess/claim/holidays.js';
import type { CalendarDay, Zone } from '../../../../src/core/model/time.js';

const d = (date: string) => date as CalendarDay;
const CHICAGO = 'America/Chicago' as Zone;
const HOUR = 3_600_000;

/** Expected days: Python 3 `datetime.date + timedelta`. */
describe('days after a day', () => {
  it.each([
    ['2025-01-15', 30, '2025-02-14'],
    ['2025-01-15', 120, '2025-05-15'],
    ['2025-01-15', 180, '2025-07-14'],
    ['2025-01-15', 240, '2025-09-12'],
    ['2024-01-15', 120, '2024-05-14'],
    ['2024-02-28', 1, '2024-02-29'],
    ['2023-02-28', 1, '2023-03-01'],
    ['2026-12-31', 1, '2027-01-01'],
    ['2026-03-07', 2, '2026-03-09'],
  ])('%s and %i are %s', (from, days, to) => {
    expect(addDays(d(from), days)).toBe(to);
    expect(daysBetween(d(from), d(to))).toBe(days);
  });
});

/** Expected days: Python `dateutil.relativedelta` 2.9.0, which keeps to the month's last day too. */
describe('months and years after a day', () => {
  it.each([
    ['2025-06-10', 9, 'months', '2026-03-10'],
    ['2024-05-31', 9, 'months', '2025-02-28'],
    ['2023-05-31', 9, 'months', '2024-02-29'],
    ['2025-12-31', 2, 'months', '2026-02-28'],
    ['2024-02-29', 2, 'years', '2026-02-28'],
    ['2024-02-29', 4, 'years', '2028-02-29'],
    ['2024-03-01', 1, 'years', '2025-03-01'],
  ] as const)('%s and %i %s are %s', (from, count, unit, to) => {
    expect(addCalendar(d(from), count, unit)).toBe(to);
  });
});

describe('the day that an instant lies in', () => {
  it.each([
    ['2026-08-04T04:59:59Z', 'America/Chicago', '2026-08-03'],
    ['2026-08-04T05:00:00Z', 'America/Chicago', '2026-08-04'],
    ['2026-08-04T05:00:00Z', 'America/Phoenix', '2026-08-03'],
    ['2026-08-03T22:30:00Z', 'Europe/Madrid', '2026-08-04'],
  ])('%s in %s is %s', (at, zone, date) => {
    expect(dayAt(Date.parse(at), zone as Zone)).toEqual({ date, zone });
  });

  /** United States, 2026: clocks go forward on 8 March and back on 1 November (15 U.S.C. 260a). */
  it.each([
    ['2026-03-07', 24],
    ['2026-03-08', 23],
    ['2026-11-01', 25],
  ])('%s in Chicago has %i hours', (date, hours) => {
    const day = { date: d(date), zone: CHICAGO };
    expect((endOfDay(day) - startOfDay(day)) / HOUR).toBe(hours);
  });
});

describe('counting without some days', () => {
  const sunday = (date: CalendarDay) => (weekdayOf(date) === 7 ? 'sunday' : undefined);

  /** CMR, article 30(1) and (4): delivered on a Friday, its day not counted, one Sunday left out. */
  it('gives the seventh day after Friday 1 March 2024 as Saturday 9 March', () => {
    expect(countDays(d('2024-03-01'), 7, sunday)).toEqual({
      date: '2024-03-09',
      leftOut: [{ date: '2024-03-03', why: 'sunday' }],
    });
  });

  it('ends at once when nothing is to be counted, and never hangs where every day is left out', () => {
    expect(countDays(d('2024-03-01'), 0, sunday).date).toBe('2024-03-01');
    expect(countDays(d('2024-03-01'), 1, () => 'sunday').leftOut.length).toBe(400);
  });

  it('moves a day that does not count to the next that does', () => {
    expect(nextCountedDay(d('2024-03-03'), sunday)).toBe('2024-03-04');
    expect(nextCountedDay(d('2024-03-04'), sunday)).toBe('2024-03-04');
  });
});

describe('federal holidays', () => {
  /** As the Office of Personnel Management published them for 2023, in a copy of its list; the others from memory. */
  it.each([
    [
      2023,
      '2023-01-02 2023-01-16 2023-02-20 2023-05-29 2023-06-19 2023-07-04 2023-09-04 2023-10-09 2023-11-10 2023-11-23 2023-12-25',
    ],
    [
      2024,
      '2024-01-01 2024-01-15 2024-02-19 2024-05-27 2024-06-19 2024-07-04 2024-09-02 2024-10-14 2024-11-11 2024-11-28 2024-12-25',
    ],
    [
      2026,
      '2026-01-01 2026-01-19 2026-02-16 2026-05-25 2026-06-19 2026-07-03 2026-09-07 2026-10-12 2026-11-11 2026-11-26 2026-12-25',
    ],
    [
      2022,
      '2021-12-31 2022-01-17 2022-02-21 2022-05-30 2022-06-20 2022-07-04 2022-09-05 2022-10-10 2022-11-11 2022-11-24 2022-12-26',
    ],
  ])('of %i are those published', (year, days) => {
    expect(federalHolidays(year)).toEqual(days.split(' '));
  });

  it('of 2020 have no Juneteenth, which is a holiday since 2021', () => {
    expect(federalHolidays(2020)).not.toContain('2020-06-19');
    expect(federalHolidays(2020)).toHaveLength(10);
  });

  it('find New Year’s Day kept in the year before', () => {
    expect(isHoliday(d('2021-12-31'), 'us-federal')).toBe(true);
    expect(isHoliday(d('2022-01-01'), 'us-federal')).toBe(false);
  });

  it('fall on no weekend in any year, eleven of them', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2021, max: 2100 }), (year) => {
        const days = federalHolidays(year);
        expect(new Set(days).size).toBe(11);
        for (const day of days) expect(weekdayOf(day)).toBeLessThan(6);
      }),
    );
  });
});

describe('laws of counting', () => {
  const day = fc.integer({ min: 0, max: 40_000 }).map((n) => addDays(d('1990-01-01'), n));
  const weekend = (date: CalendarDay) => (weekdayOf(date) >= 6 ? 'weekend' : undefined);

  it('days add', () => {
    fc.assert(
      fc.property(day, fc.nat(3000), fc.nat(3000), (from, a, b) => {
        expect(addDays(addDays(from, a), b)).toBe(addDays(from, a + b));
      }),
    );
  });

  it('a later start never gives an earlier end, in days, counted days, months or years', () => {
    fc.assert(
      fc.property(day, fc.nat(90), fc.nat(60), (from, later, count) => {
        const to = addDays(from, later);
        expect(addDays(to, count) >= addDays(from, count)).toBe(true);
        expect(countDays(to, count, weekend).date >= countDays(from, count, weekend).date).toBe(true);
        for (const unit of ['months', 'years'] as const)
          expect(addCalendar(to, count, unit) >= addCalendar(from, count, unit)).toBe(true);
      }),
    );
  });

  it('leaving days out only makes it longer, by just the days left out', () => {
    fc.assert(
      fc.property(day, fc.integer({ min: 1, max: 60 }), (from, count) => {
        const { date, leftOut } = countDays(from, count, weekend);
        expect(daysBetween(from, date)).toBe(count + leftOut.length);
        expect(weekend(date)).toBeUndefined();
      }),
    );
  });
});

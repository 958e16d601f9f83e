import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { currency } from '../../../src/core/model/money.js';
import type { CalendarDay, EventTime, Zone } from '../../../src/core/model/time.js';
import { formatFor } from '../../../src/core/words/format.js';

const words = { zoneUnknown: 'zone not known', notKnown: 'not known' };
const us = formatFor({ temperature: '°F', language: 'en' }, words);
const metric = formatFor({ temperature: '°C', language: 'en' }, words);
const PHOENIX = 'America/Phoenix' as Zone;
const plain = (text: string) => text.replace(/\u00a0/g, ' ');

describe('quantities in words', () => {
  it.each([
    // 36 °F = 2.2 °C: Handbook-style table value, checked by °C = (°F − 32) × 5/9.
    ['temperature, °F first', us.temperature(20 / 9), '36.0 °F (2.2 °C)'],
    ['temperature, °C first', metric.temperature(20 / 9), '2.2 °C (36.0 °F)'],
    ['a difference is no temperature: 2 °F are 1.1 °C', us.difference(10 / 9), '2.0 °F (1.1 °C)'],
    ['a true minus sign', us.temperature(-20), '−4.0 °F (−20.0 °C)'],
    ['no negative zero', us.difference(-0.01), '0.0 °F (0.0 °C)'],
    ['degree-hours scale like differences', us.degreeHours(5), '9.0 °F·h (5.0 °C·h)'],
    ['seconds', us.duration(40), '40 s'],
    ['minutes', us.duration(840), '14 min'],
    ['hours', us.duration(7200), '2 h'],
    ['hours and minutes', us.duration(192_300), '53 h 25 min'],
    ['59.6 minutes are an hour', us.duration(3599), '1 h'],
    ['almost all is not all', us.share(0.99999), '99.9%'],
    ['almost nothing is not nothing', us.share(0.00001), '0.1%'],
    ['all', us.share(1), '100%'],
    ['nothing', us.share(0), '0%'],
    ['a float’s noise does not show', us.share(0.55000000000000004), '55%'],
    ['thousands', us.number(12345), '12,345'],
    ['bytes', us.bytes(3_153_132), '3.2 MB'],
    ['a clock’s difference to the second', us.exactDuration(-3723), '1 h 2 min 3 s'],
    ['no difference of a clock', us.exactDuration(0.2), '0 s'],
    ['money with its code before it', us.money(1_248_050, 'USD'), 'USD 12,480.50'],
    ['a range of money', us.moneyRange(10_000, 25_000, 'USD'), 'USD 100.00 – 250.00'],
    ['a range of one amount', us.moneyRange(10_000, 10_000, 'USD'), 'USD 100.00'],
    [
      'money as it was written',
      us.statedMoney({ amount: '3000', currency: currency.parse('USD') }),
      'USD 3,000',
    ],
    [
      'a day in a letter',
      us.letterDay({ date: '2026-08-03' as CalendarDay, zone: PHOENIX }),
      'August 3, 2026',
    ],
  ])('%s', (_, shown, expected) => {
    expect(plain(shown)).toBe(expected);
  });

  it('shows a time in its own zone, whatever the machine’s', () => {
    expect(us.time(Date.parse('2026-07-14T12:42:08.370Z'), PHOENIX)).toBe('Tue Jul 14, 2026, 5:42 AM MST');
    expect(us.time(Date.parse('2026-07-16T11:24:00.000Z'), 'America/Chicago' as Zone)).toBe(
      'Thu Jul 16, 2026, 6:24 AM CDT',
    );
  });

  it.each<[EventTime, string]>([
    [
      { is: 'local', local: '2026-07-14T05:42:08' as never, why: 'x' },
      'Tue Jul 14, 2026, 5:42 AM (zone not known)',
    ],
    [{ is: 'none', why: 'x' }, 'not known'],
  ])('says when a time is not fully known', (time, expected) => {
    expect(us.eventTime(time)).toBe(expected);
  });

  it('never shows a share of less than one as whole', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (of) => {
        expect(us.share(of) === '100%').toBe(of === 1);
        expect(us.share(of) === '0%').toBe(of === 0);
      }),
    );
  });
});

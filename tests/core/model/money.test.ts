import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { currency, minorUnits, money, parseMoney } from '../../../src/core/model/money.js';
import { formatFor } from '../../../src/core/words/format.js';

describe('a currency', () => {
  it.each(Intl.supportedValuesOf('currency'))('is %s, which this engine knows', (code) => {
    expect(currency.safeParse(code).success).toBe(true);
  });

  it.each([
    ['of a newer list than some engines have', 'XCG'],
    ['withdrawn since, and in older records', 'BGN'],
    ['in which conventions of carriage set limits', 'XDR'],
  ])('may be one %s: %s', (_, code) => {
    expect(currency.safeParse(code).success).toBe(true);
  });

  it.each(['usd', 'US', 'ABC', 'XXX', '$', ''])('is not %j', (code) => {
    expect(currency.safeParse(code).success).toBe(false);
  });
});

describe('money as people write it', () => {
  it.each([
    ['12480.50 USD', '12480.50', 'USD'],
    ['USD 12,480.50', '12480.50', 'USD'],
    ['$12,480 USD', '12480', 'USD'],
    ['1.250,75 EUR', '1250.75', 'EUR'],
    ['1 250,75 EUR', '1250.75', 'EUR'],
    ['1,250 EUR', '1250', 'EUR'],
    ['0.5 USD', '0.5', 'USD'],
    ['980 MXN', '980', 'MXN'],
    ['1.250,500 KWD', '1250.500', 'KWD'],
    ['12480.500 KWD', '12480.500', 'KWD'],
    ['0.750 KWD', '0.750', 'KWD'],
    ['JPY 1,200', '1200', 'JPY'],
    ['1,200.00 JPY', '1200.00', 'JPY'],
  ])('%s', (text, amount, code) => {
    expect(parseMoney(text)).toEqual({ amount, currency: code });
  });

  it.each([
    ['$11.00', 'USD', '11.00', 'USD'],
    ['9504', 'USD', '9504', 'USD'],
    ['$9,504', 'CAD', '9504', 'CAD'],
    ['9,504.00 $', 'USD', '9504.00', 'USD'],
    ['11 EUR', 'USD', '11', 'EUR'],
    ['€11', 'USD', '11', 'EUR'],
    ['US$ 11', 'MXN', '11', 'USD'],
    ['£12.50', 'GBP', '12.50', 'GBP'],
    ['1,200', 'JPY', '1200', 'JPY'],
  ])('%s in a delivery of %s', (text, usual, amount, code) => {
    expect(parseMoney(text, currency.parse(usual))).toEqual({ amount, currency: code });
  });

  it.each([
    ['$11.00', 'EUR'],
    ['£11.00', 'USD'],
    ['$11.00$', 'USD'],
    ['$11.00 EUR', 'USD'],
    ['C$ 11 USD', 'USD'],
    ['eleven', 'USD'],
    ['', 'USD'],
  ])('%j cannot be told in a delivery of %s', (text, usual) => {
    expect(parseMoney(text, currency.parse(usual))).toBeUndefined();
  });

  it('tells the euro by its sign alone', () => {
    expect(parseMoney('€ 11,50')).toEqual({ amount: '11.50', currency: 'EUR' });
  });

  it.each([
    '12480.50',
    '$12480.50',
    '12,48,0 USD',
    '1.2.3 USD',
    '1,25,0.5 USD',
    '-5 USD',
    '12 ABC',
    'USD',
    'USD 5 EUR',
    '5.123,4.1 USD',
    '12480.500 USD',
    '1.250,500 USD',
    'KWD 1.250',
    'JPY 1,200.50',
    '',
  ])('%j is not one that can be told', (text) => {
    expect(parseMoney(text)).toBeUndefined();
  });
});

describe('an amount', () => {
  it('is exact in minor units, up to the largest that can be written', () => {
    const amounts = fc.bigInt({ min: 0n, max: 999_999_999_999n });
    fc.assert(
      fc.property(amounts, (value) => {
        const text = String(value).padStart(3, '0');
        const read = parseMoney(`${text.slice(0, -2)}.${text.slice(-2)} USD`);
        expect(read && String(minorUnits(read))).toBe(String(value));
      }),
    );
  });

  it.each([
    ['12480.5', 'USD', 1_248_050],
    ['0', 'USD', 0],
    ['9999999999.99', 'USD', 999_999_999_999],
    ['1.25', 'KWD', 1250],
    ['9999999999.999', 'KWD', 9_999_999_999_999],
    ['1200', 'JPY', 120_000],
    ['1200.50', 'JPY', 120_050],
  ])('of %s %s is %i minor units', (amount, code, value) => {
    expect(minorUnits(money.parse({ amount, currency: code }))).toBe(value);
  });

  it.each([
    ['1.234', 'USD'],
    ['1.2345', 'KWD'],
    ['1e5', 'USD'],
    ['', 'USD'],
    ['12345678901', 'USD'],
    ['+1', 'USD'],
  ])('is not %j %s', (amount, code) => {
    expect(money.safeParse({ amount, currency: code }).success).toBe(false);
  });

  it.each([
    [1_248_050, 'USD', 'USD 12,480.50'],
    [1_248_000, 'USD', 'USD 12,480.00'],
    [1250, 'KWD', 'KWD 1.250'],
    [120_000, 'JPY', 'JPY 1,200'],
    [120_050, 'JPY', 'JPY 1,200.50'],
    [-500, 'CLP', 'CLP −5'],
  ])('of %i minor units of %s is written %s', (minor, code, shown) => {
    const format = formatFor({ temperature: '°F', language: 'en' }, { zoneUnknown: '', notKnown: '' });
    expect(format.money(minor, code)).toBe(shown.replace(' ', '\u00a0'));
  });
});

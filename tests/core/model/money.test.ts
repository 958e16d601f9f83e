import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { currency, hundredths, money, parseMoney } from '../../../src/core/model/money.js';

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
  ])('%s', (text, amount, code) => {
    expect(parseMoney(text)).toEqual({ amount, currency: code });
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
    '',
  ])('%j is not one that can be told', (text) => {
    expect(parseMoney(text)).toBeUndefined();
  });
});

describe('an amount', () => {
  it('is exact in hundredths, up to the largest that can be written', () => {
    const amounts = fc.bigInt({ min: 0n, max: 999_999_999_999n });
    fc.assert(
      fc.property(amounts, (value) => {
        const text = String(value).padStart(3, '0');
        const read = parseMoney(`${text.slice(0, -2)}.${text.slice(-2)} USD`);
        expect(read && String(hundredths(read))).toBe(String(value));
      }),
    );
  });

  it.each([
    ['12480.5', 1_248_050],
    ['0', 0],
    ['9999999999.99', 999_999_999_999],
  ])('of %s is %i hundredths', (amount, value) => {
    expect(hundredths(money.parse({ amount, currency: 'USD' }))).toBe(value);
  });

  it.each(['1.234', '1e5', '', '12345678901', '+1'])('is not %j', (amount) => {
    expect(money.safeParse({ amount, currency: 'USD' }).success).toBe(false);
  });
});

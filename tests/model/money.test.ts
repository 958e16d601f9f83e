import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { currency, fromHundredths, hundredths, money, parseMoney } from '../../src/model/money.js';

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
  it('is exact in hundredths, and comes back', () => {
    const amounts = fc.integer({ min: 0, max: 999_999_999_999 });
    const usd = currency.parse('USD');
    fc.assert(
      fc.property(amounts, (value) => {
        const read = money.parse(fromHundredths(value, usd));
        expect(hundredths(read)).toBe(value);
        expect(parseMoney(`${read.amount} USD`)).toEqual(read);
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

import { describe, expect, it } from 'vitest';
import { lostQuantity, quantitiesOf } from '../../../../src/core/assess/claim/quantities.js';
import { thousandths } from '../../../../src/core/model/quantity.js';
import { claimEntries } from './notes.js';

const count = (state: string, quantity: string, saidBy = 'receiver', more: object = {}) => ({
  is: 'quantity' as const,
  line: 'romaine',
  state,
  quantity,
  unit: 'cartons',
  saidBy,
  ...more,
});

describe('how much was shipped, accepted, rejected, damaged, short', () => {
  it('is kept apart by line and unit, from the least that anybody says to the most', () => {
    const rows = quantitiesOf(
      claimEntries(
        count('rejected', '400'),
        count('rejected', '380.5', 'carrier'),
        count('rejected', '5', 'receiver', { unit: 'pallets' }),
      ),
    );
    expect(rows).toEqual([
      {
        line: 'romaine',
        unit: 'cartons',
        states: [{ state: 'rejected', low: '380.5', high: '400', seqs: [10, 11] }],
      },
      { line: 'romaine', unit: 'pallets', states: [{ state: 'rejected', low: '5', high: '5', seqs: [12] }] },
    ]);
  });

  it.each<[string, ReturnType<typeof count>[], boolean | undefined]>([
    [
      'all of it',
      [count('shipped', '10'), count('accepted', '6'), count('rejected', '3'), count('short', '1')],
      true,
    ],
    ['less', [count('shipped', '10'), count('accepted', '6'), count('rejected', '3')], false],
    ['more', [count('shipped', '10'), count('accepted', '8'), count('rejected', '3')], false],
    [
      'either, as people differ',
      [
        count('shipped', '10'),
        count('accepted', '7'),
        count('accepted', '6', 'carrier'),
        count('rejected', '3'),
      ],
      true,
    ],
    [
      'damaged goods are among them',
      [count('shipped', '10'), count('accepted', '10'), count('damaged', '4')],
      true,
    ],
    ['nobody knows of what', [count('accepted', '10')], undefined],
    ['nobody says', [count('shipped', '10')], undefined],
  ])('adds up to what was shipped: %s', (_, notes, expected) => {
    expect(quantitiesOf(claimEntries(...notes))[0]?.addsUp).toBe(expected);
  });

  it('leaves out what was corrected, in any order', () => {
    const entries = claimEntries(
      count('rejected', '400'),
      count('rejected', '300', 'receiver', { replaces: 10 }),
    );
    expect(quantitiesOf([...entries].reverse())[0]?.states).toEqual([
      { state: 'rejected', low: '300', high: '300', seqs: [11] },
    ]);
  });
});

describe('how much is claimed for', () => {
  const lost = (notes: ReturnType<typeof count>[], short = true, unit?: 'cartons' | 'lb') => {
    const found = lostQuantity(claimEntries(...notes), { line: 'romaine', unit, short });
    return found && [found.low / 1000, found.high / 1000];
  };
  it.each<[string, ReturnType<typeof count>[], number[] | undefined]>([
    ['the rejected', [count('rejected', '400'), count('accepted', '80')], [400, 400]],
    ['the damaged', [count('damaged', '40')], [40, 40]],
    ['between the larger and both', [count('rejected', '400'), count('damaged', '40')], [400, 440]],
    [
      'but no more than was shipped',
      [count('rejected', '400'), count('damaged', '40'), count('shipped', '420')],
      [400, 420],
    ],
    ['and what is short', [count('rejected', '400'), count('short', '4')], [404, 404]],
    ['nothing that anybody says', [count('accepted', '80')], undefined],
  ])('%s', (_, notes, expected) => {
    expect(lost(notes)).toEqual(expected);
  });

  it('leaves out what is short where nothing can be got for it', () => {
    expect(lost([count('rejected', '400'), count('short', '4')], false)).toEqual([400, 400]);
  });

  it('needs the unit where several are counted, and never mixes them', () => {
    const two = [count('rejected', '400'), count('rejected', '9600', 'receiver', { unit: 'lb' })];
    expect(lost(two)).toBeUndefined();
    expect(lost(two, true, 'lb')).toEqual([9600, 9600]);
  });
});

it('decimal quantities are read exactly', () => {
  expect(['12.5', '0.001', '7', '999999999.999'].map(thousandths)).toEqual([12500, 1, 7000, 999999999999]);
});

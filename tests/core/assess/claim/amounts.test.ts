import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { amountsOf } from '../../../../src/core/assess/claim/amounts.js';
import { amountItem, statementSource } from '../../../../src/core/model/claim.js';
import type { AmountStep, AmountWorksheet } from '../../../../src/core/model/results.js';
import { amountStated, claimEntries, claimReceived, usd } from './notes.js';

type Notes = Parameters<typeof claimEntries>;
const sheetOf = (...notes: Notes): AmountWorksheet => {
  const sheet = amountsOf(claimEntries(...notes));
  if (sheet === undefined) throw new Error('no sheet');
  return sheet;
};
const dollars = (range?: { low: number; high: number }) => range && [range.low / 100, range.high / 100];
const step = (sheet: AmountWorksheet, id: AmountStep['id'], line?: string) =>
  dollars(sheet.steps.find((one) => one.id === id && one.line === line)?.range);
const noted = (sheet: AmountWorksheet) => sheet.notes.map((note) => `${note.is}: ${note.detail}`);

describe('worked examples of others', () => {
  it('net salvage: Texas & N. O. R. v. Searcy, 220 S.W.2d 366 (Tex. Civ. App. 1949), as the plaintiff pleaded', () => {
    // A carload of produce worth $3,022.67 sound; sold for $1,447.95; $216.64 of costs and $170.85 refunded to buyers.
    const sheet = sheetOf(
      amountStated('market-value', '3022.67'),
      amountStated('salvage', '1447.95'),
      amountStated('salvage-cost', '216.64'),
      amountStated('refunds', '170.85'),
    );
    expect(step(sheet, 'salvage-net')).toEqual([1060.46, 1060.46]);
    expect(dollars(sheet.computed)).toEqual([1962.21, 1962.21]);
  });

  it('price each: growers’ association guide on provable damages, WGA, 2021-03-10', () => {
    // A market report from $18 to $21 averages $19.50; sold at $15.75 on average: $3.75 a carton.
    const each = (item: string, amount: string, quantity: string) => ({
      is: 'amount' as const,
      item,
      saidBy: 'market-report',
      each: usd(amount),
      quantity,
      unit: 'cartons',
    });
    const one = sheetOf(each('market-value', '19.50', '1'), each('salvage', '15.75', '1'));
    expect(dollars(one.computed)).toEqual([3.75, 3.75]);
    // The two ends of the report are kept as a range rather than averaged.
    const ends = sheetOf(
      each('market-value', '18', '1'),
      each('market-value', '21', '1'),
      each('salvage', '15.75', '1'),
    );
    expect(dollars(ends.computed)).toEqual([2.25, 5.25]);
  });

  it('inspection fee on top: trade press example of a load worth $18,000 that brought $12,000', () => {
    const sheet = sheetOf(
      amountStated('market-value', '18000'),
      amountStated('salvage', '12000'),
      amountStated('inspection-cost', '200'),
      amountStated('invoice-value', '10000'),
      amountStated('freight-paid', '5000'),
    );
    expect(dollars(sheet.computed)).toEqual([6200, 6200]);
    expect(noted(sheet)).toEqual([
      'counted-once: invoice-beside-market',
      'counted-once: freight-in-market-value',
    ]);
  });

  it('a shortage by weight: Illinois Central R. Co. v. Crail, 281 U.S. 57 (1930)', () => {
    // 5,500 lb of coal short at $5.50 a ton plus $3.30 freight, or at $13.00 retail. The tons of that case: 2.75.
    const tons = (amount: string) => ({
      is: 'amount' as const,
      item: 'market-value',
      saidBy: 'carrier',
      each: usd(amount),
      quantity: '2.75',
    });
    expect(dollars(sheetOf(tons('8.80')).computed)).toEqual([24.2, 24.2]);
    expect(dollars(sheetOf(tons('13.00')).computed)).toEqual([35.75, 35.75]);
  });
});

/** Sums written from the articles before the code ran on them. */
describe('the measure of value by what governs', () => {
  const CMR = { is: 'terms' as const, governs: 'cmr' };
  const terms = (governs: string, measure?: string) => ({ is: 'terms' as const, governs, measure });

  it('CMR 23(1), 25(1): from the value at acceptance, whatever the market at destination', () => {
    const sheet = sheetOf(
      CMR,
      amountStated('origin-value', '8000'),
      amountStated('market-value', '11000'),
      amountStated('salvage', '3000'),
    );
    expect([sheet.measure, sheet.measureBy]).toEqual(['origin-value', 'law']);
    // 8,000 less 3,000.
    expect(dollars(sheet.computed)).toEqual([5000, 5000]);
    expect(noted(sheet)).toEqual(['counted-once: not-the-measure']);
  });

  it('CMR 23(4): charges in full for a total loss, in proportion for a part, on top of the cap', () => {
    const whole = sheetOf(
      CMR,
      amountStated('origin-value', '8000'),
      amountStated('freight-paid', '1200'),
      amountStated('arrived-value', '0'),
    );
    expect(dollars(whole.computed)).toEqual([9200, 9200]);
    const part = sheetOf(
      CMR,
      amountStated('origin-value', '8000'),
      amountStated('arrived-value', '6000'),
      amountStated('freight-paid', '1200'),
      amountStated('carriage-charges', '100'),
      amountStated('released-value', '1500'),
    );
    // Loss 2,000, a quarter; capped at 1,500; a quarter of 1,300 is 325.
    expect([step(part, 'loss'), step(part, 'carriage-charges')]).toEqual([
      [2000, 2000],
      [325, 325],
    ]);
    expect(dollars(part.computed)).toEqual([1825, 1825]);
  });

  it('CMR 23(4): a third of 100.00 is 33.33, and says what rounding did', () => {
    const sheet = sheetOf(
      CMR,
      amountStated('origin-value', '300'),
      amountStated('arrived-value', '200'),
      amountStated('freight-paid', '100'),
    );
    expect(step(sheet, 'carriage-charges')).toEqual([33.33, 33.33]);
    expect(sheet.steps.find(({ id }) => id === 'carriage-charges')?.rounded).toBeCloseTo(-0.333, 3);
    expect(dollars(sheet.computed)).toEqual([133.33, 133.33]);
  });

  it('CMR 23(4): no further damages, and freight that is not paid is not refunded', () => {
    const sheet = sheetOf(
      CMR,
      amountStated('origin-value', '8000'),
      amountStated('salvage', '3000'),
      amountStated('inspection-cost', '200'),
      amountStated('mitigation-cost', '50'),
      amountStated('freight-due', '900'),
    );
    expect(dollars(sheet.computed)).toEqual([5000, 5000]);
    expect(noted(sheet)).toEqual(['counted-once: no-further-damages', 'counted-once: freight-not-paid']);
  });

  it('CMR 23(3): 8.33 SDR for each kilogram affected, not of the load, and not converted (23(7))', () => {
    const kg = (state: string, quantity: string) => ({
      is: 'quantity' as const,
      line: 'peas',
      state,
      quantity,
      unit: 'kg',
      saidBy: 'receiver',
    });
    const sheet = sheetOf(
      CMR,
      amountStated('origin-value', '8000'),
      kg('shipped', '18000'),
      kg('damaged', '1500'),
      kg('short', '20.5'),
    );
    // 8.33 × 1,520.5 = 12,665.765.
    expect(sheet.weightLimit).toMatchObject({
      sdr: { low: 1_266_577, high: 1_266_577 },
      kilograms: { low: '1520.5' },
    });
    expect(dollars(sheet.computed)).toEqual([8000, 8000]);
    expect(
      sheetOf(terms('state-law'), amountStated('market-value', '1'), kg('damaged', '1500')).weightLimit,
    ).toBeUndefined();
  });

  it('CMR: an invoice is taken for the value at acceptance where nothing else states it, and that is said', () => {
    const sheet = sheetOf(CMR, amountStated('invoice-value', '7000'), amountStated('salvage', '3000'));
    expect(dollars(sheet.computed)).toEqual([4000, 4000]);
    expect(noted(sheet)).toEqual(['counted-once: invoice-as-origin']);
  });

  it.each<[string, string, string | undefined, Notes, number, string[]]>([
    [
      '253 U.S. 97: market value at destination',
      'us-carriage-by-law',
      undefined,
      [amountStated('market-value', '900'), amountStated('origin-value', '700')],
      900,
      ['counted-once: not-the-measure'],
    ],
    [
      'an invoice, by the contract',
      'state-law',
      'invoice-value',
      [
        amountStated('market-value', '900'),
        amountStated('invoice-value', '700'),
        amountStated('freight-paid', '80'),
      ],
      780,
      ['counted-once: not-the-measure'],
    ],
    [
      'a value agreed in writing',
      'us-carriage-waived',
      'agreed-value',
      [amountStated('agreed-value', '650'), amountStated('freight-paid', '80')],
      650,
      ['counted-once: freight-with-agreed-value'],
    ],
    [
      'a value at origin, by the contract: freight paid is added',
      'state-law',
      'origin-value',
      [
        amountStated('origin-value', '700'),
        amountStated('freight-paid', '80'),
        amountStated('inspection-cost', '20'),
      ],
      800,
      [],
    ],
  ])('%s', (_, governs, measure, notes, sum, said) => {
    const sheet = sheetOf(terms(governs, measure), ...notes, amountStated('arrived-value', '0'));
    expect(dollars(sheet.computed)).toEqual([sum, sum]);
    expect(noted(sheet)).toEqual(said);
    expect(sheet.measureBy).toBe(measure === undefined ? 'law' : 'contract');
  });

  it('sums of the cases: McCaull-Dinsmore, Slaughter 1938, each less what was paid or left', () => {
    // 253 U.S. 97: 1,422.11 (interest in it, freight off it) less 1,200.48 paid.
    expect(
      dollars(
        sheetOf(
          amountStated('market-value', '1422.11'),
          amountStated('credit', '1200.48'),
          amountStated('arrived-value', '0'),
        ).computed,
      ),
    ).toEqual([221.63, 221.63]);
    // 122 S.W.2d 1101: 1,241.25 sound, 415.35 the best price obtainable.
    expect(
      dollars(sheetOf(amountStated('market-value', '1241.25'), amountStated('salvage', '415.35')).computed),
    ).toEqual([825.9, 825.9]);
  });
});

describe('the sum, worked by hand', () => {
  it.each<[string, Notes, number[]]>([
    [
      'an invoice at origin, freight paid',
      [amountStated('invoice-value', '800'), amountStated('freight-paid', '200')],
      [1000, 1000],
    ],
    [
      'an invoice, freight not paid',
      [amountStated('invoice-value', '800'), amountStated('freight-due', '200')],
      [800, 800],
    ],
    [
      'a market value, freight saved',
      [amountStated('market-value', '900'), amountStated('freight-due', '200')],
      [700, 700],
    ],
    [
      'a market value, freight in it',
      [amountStated('market-value', '900'), amountStated('freight-paid', '200')],
      [900, 900],
    ],
    [
      'value as arrived',
      [amountStated('market-value', '900'), amountStated('arrived-value', '250')],
      [650, 650],
    ],
    [
      'a sale that cost more than it brought',
      [
        amountStated('market-value', '900'),
        amountStated('salvage', '50'),
        amountStated('salvage-cost', '80'),
      ],
      [930, 930],
    ],
    [
      'costs of one line’s sale beside those of the whole',
      [
        amountStated('market-value', '900', 'claimant', { line: 'broccoli' }),
        amountStated('salvage', '100'),
        amountStated('salvage-cost', '30'),
        amountStated('salvage-cost', '10', 'claimant', { line: 'romaine' }),
      ],
      [830, 830],
    ],
    [
      'a sale and its costs, told of the whole and of each line: each account has its own costs',
      [
        amountStated('market-value', '900'),
        amountStated('salvage', '100'),
        amountStated('salvage-cost', '8'),
        ...['romaine', 'broccoli'].flatMap((line) => [
          amountStated('salvage', line === 'romaine' ? '60' : '50', 'claimant', { line }),
          amountStated('salvage-cost', '5', 'claimant', { line }),
        ]),
      ],
      [800, 808],
    ],
    [
      'costs of the only line sold, and of the whole: accounts of the same',
      [
        amountStated('market-value', '900', 'claimant', { line: 'broccoli' }),
        amountStated('salvage', '100', 'claimant', { line: 'romaine' }),
        amountStated('salvage-cost', '30', 'claimant', { line: 'romaine' }),
        amountStated('salvage-cost', '10'),
      ],
      [810, 830],
    ],
    [
      'costs of a sale that brought nothing, beside a value as arrived',
      [
        amountStated('market-value', '900'),
        amountStated('arrived-value', '500'),
        amountStated('salvage-cost', '30'),
      ],
      [430, 430],
    ],
    [
      'credits',
      [amountStated('market-value', '900'), amountStated('credit', '100'), amountStated('credit', '50')],
      [750, 750],
    ],
    [
      'costs',
      [
        amountStated('market-value', '900'),
        amountStated('mitigation-cost', '10'),
        amountStated('disposal-cost', '5'),
      ],
      [915, 915],
    ],
    [
      'never less than nothing',
      [amountStated('market-value', '900'), amountStated('salvage', '1000')],
      [0, 0],
    ],
    [
      'a released value',
      [amountStated('market-value', '900'), amountStated('released-value', '500')],
      [500, 500],
    ],
    [
      'a released value above what is left after credits',
      [
        amountStated('market-value', '900'),
        amountStated('credit', '600'),
        amountStated('released-value', '500'),
      ],
      [300, 300],
    ],
    [
      'papers that disagree',
      [
        amountStated('market-value', '900'),
        amountStated('market-value', '800', 'market-report'),
        amountStated('salvage', '300', 'carrier'),
        amountStated('salvage', '250'),
      ],
      [500, 650],
    ],
    [
      'lots of one sale',
      [amountStated('market-value', '900'), amountStated('salvage', '100'), amountStated('salvage', '150')],
      [650, 650],
    ],
    [
      'valued and sold, of the same goods',
      [
        amountStated('market-value', '900'),
        amountStated('salvage', '100'),
        amountStated('arrived-value', '200'),
      ],
      [700, 800],
    ],
    [
      'lines of their own',
      [
        amountStated('market-value', '500', 'claimant', { line: 'romaine' }),
        amountStated('invoice-value', '400', 'claimant', { line: 'romaine' }),
        amountStated('invoice-value', '300', 'claimant', { line: 'broccoli' }),
        amountStated('salvage', '50', 'claimant', { line: 'romaine' }),
        amountStated('arrived-value', '20', 'claimant', { line: 'broccoli' }),
      ],
      [730, 730],
    ],
    [
      'freight, where lines rest on market and on invoice',
      [
        amountStated('market-value', '500', 'claimant', { line: 'romaine' }),
        amountStated('invoice-value', '300', 'claimant', { line: 'broccoli' }),
        amountStated('freight-paid', '100'),
      ],
      [800, 900],
    ],
    [
      'a whole beside all of its lines',
      [
        amountStated('market-value', '500', 'claimant', { line: 'romaine' }),
        amountStated('market-value', '300', 'claimant', { line: 'broccoli' }),
        amountStated('market-value', '900'),
      ],
      [800, 900],
    ],
    [
      'a whole in place of one of its lines',
      [
        amountStated('market-value', '500', 'claimant', { line: 'romaine' }),
        amountStated('market-value', '900'),
        amountStated('salvage', '100', 'claimant', { line: 'broccoli' }),
      ],
      [800, 800],
    ],
  ])('%s', (_, notes, expected) => {
    expect(dollars(sheetOf(...notes).computed)).toEqual(expected);
  });

  it('rounds each line to whole hundredths, a half up, and says by how much', () => {
    const each = (amount: string, quantity: string) =>
      sheetOf({ is: 'amount', item: 'market-value', saidBy: 'claimant', each: usd(amount), quantity });
    // 0.05 × 0.5 = 0.025; 0.01 × 0.333 = 0.00333; 0.03 × 1.5 = 0.045
    for (const [amount, quantity, range, off] of [
      ['0.05', '0.5', 3, 0.5],
      ['0.01', '0.333', 0, -0.333],
      ['0.03', '1.5', 5, 0.5],
    ] as const) {
      const [found] = each(amount, quantity).steps;
      expect(found).toMatchObject({ range: { low: range, high: range }, rounded: off });
    }
    expect(each('14.25', '320').steps[0]).not.toHaveProperty('rounded');
  });

  it('takes a quantity that is not stated from what was rejected, damaged or short', () => {
    const sheet = sheetOf(
      {
        is: 'quantity',
        line: 'romaine',
        state: 'rejected',
        quantity: '400',
        unit: 'cartons',
        saidBy: 'receiver',
      },
      {
        is: 'quantity',
        line: 'romaine',
        state: 'rejected',
        quantity: '380',
        unit: 'cartons',
        saidBy: 'carrier',
      },
      {
        is: 'quantity',
        line: 'romaine',
        state: 'short',
        quantity: '20',
        unit: 'cartons',
        saidBy: 'receiver',
      },
      { is: 'amount', item: 'market-value', saidBy: 'claimant', line: 'romaine', each: usd('10') },
      { is: 'amount', item: 'arrived-value', saidBy: 'inspector', line: 'romaine', each: usd('1') },
    );
    expect(step(sheet, 'value-sound')).toEqual([4000, 4200]);
    expect(step(sheet, 'value-arrived')).toEqual([380, 400]);
    expect(sheet.steps[0]?.seqs).toEqual([10, 11, 12, 13]);
  });
});

describe('what is not in the sum is noted', () => {
  it.each<[string, Notes, string[]]>([
    [
      'another currency',
      [
        claimReceived({ amount: usd('900') }),
        amountStated('market-value', '900'),
        { ...amountStated('salvage', '100'), total: { amount: '100', currency: 'MXN' } },
      ],
      ['other-currency: MXN', 'no-paper: value-arrived'],
    ],
    [
      'no paper',
      [amountStated('market-value', '900'), amountStated('salvage', '100', 'claimant', { evidence: [] })],
      ['no-paper: salvage', 'no-paper: value-arrived'],
    ],
    [
      'so much each, of nobody knows how many',
      [
        amountStated('market-value', '900'),
        { is: 'amount', item: 'salvage', saidBy: 'claimant', each: usd('1') },
      ],
      ['quantity-unknown: salvage', 'no-paper: value-arrived'],
    ],
    [
      'more valued than was lost',
      [
        {
          is: 'quantity',
          line: 'romaine',
          state: 'rejected',
          quantity: '400',
          unit: 'cartons',
          saidBy: 'receiver',
        },
        {
          is: 'amount',
          item: 'market-value',
          saidBy: 'claimant',
          line: 'romaine',
          each: usd('10'),
          quantity: '800',
          unit: 'cartons',
        },
        amountStated('arrived-value', '100', 'inspector', { line: 'romaine' }),
      ],
      ['disagree: quantity'],
    ],
    [
      'a total that is not what its parts come to',
      [
        amountStated('market-value', '900', 'claimant', { each: usd('10'), quantity: '80' }),
        amountStated('salvage', '1'),
      ],
      ['disagree: market-value'],
    ],
    [
      'costs of a sale, of a line and of the whole',
      [
        amountStated('market-value', '900', 'claimant', { line: 'broccoli' }),
        amountStated('salvage-cost', '30'),
        amountStated('salvage-cost', '10', 'claimant', { line: 'romaine' }),
      ],
      ['counted-once: whole-and-lines'],
    ],
    [
      'goods that may be counted twice',
      [
        {
          is: 'quantity',
          line: 'romaine',
          state: 'rejected',
          quantity: '100',
          unit: 'cartons',
          saidBy: 'receiver',
        },
        {
          is: 'quantity',
          line: 'romaine',
          state: 'damaged',
          quantity: '30',
          unit: 'cartons',
          saidBy: 'receiver',
        },
        { is: 'amount', item: 'market-value', saidBy: 'claimant', line: 'romaine', each: usd('10') },
        amountStated('arrived-value', '100', 'inspector', { line: 'romaine' }),
      ],
      ['counted-once: rejected-and-damaged', 'disagree: market-value'],
    ],
    ['no sound value at all', [amountStated('salvage', '100')], ['no-paper: value-sound']],
  ])('%s', (_, notes, expected) => {
    expect(noted(sheetOf(...notes))).toEqual(expected);
  });

  it('and nothing is computed without a sound value, or made of nothing at all', () => {
    expect(sheetOf(claimReceived({ amount: usd('900') }))).toEqual({
      currency: 'USD',
      measure: 'destination-value',
      measureBy: 'law',
      claimed: 90000,
      steps: [],
      notes: [{ is: 'no-paper', seqs: [], detail: 'value-sound' }],
    });
    expect(amountsOf(claimEntries(claimReceived()))).toBeUndefined();
    expect(amountsOf([])).toBeUndefined();
  });
});

const money = fc.integer({ min: 0, max: 5_000_000 }).map((n) => (n / 100).toFixed(2));
const note = fc
  .record({
    item: fc.constantFrom(...amountItem.options),
    saidBy: fc.constantFrom(...statementSource.options),
    line: fc.option(fc.constantFrom('a', 'b'), { nil: undefined }),
    total: fc.option(money, { nil: undefined }),
    each: fc.option(money, { nil: undefined }),
    quantity: fc.option(
      fc.integer({ min: 0, max: 9_999_999 }).map((n) => (n / 1000).toFixed(3)),
      { nil: undefined },
    ),
    currency: fc.constantFrom('USD', 'USD', 'USD', 'MXN'),
    paper: fc.boolean(),
  })
  .map(({ total, each, currency, paper, ...rest }) => ({
    is: 'amount' as const,
    ...rest,
    total: total && { amount: total, currency },
    each: each && { amount: each, currency },
    evidence: paper ? ['e1'] : [],
  }));
const notes = fc.array(note, { maxLength: 14 });

describe('whatever is said', () => {
  it('the least is no more than the most, in every step, in whole hundredths', () => {
    fc.assert(
      fc.property(notes, (all) => {
        const sheet = amountsOf(claimEntries(...all));
        for (const { range } of sheet?.steps ?? []) {
          expect(range.low).toBeLessThanOrEqual(range.high);
          expect(Number.isSafeInteger(range.low) && Number.isSafeInteger(range.high)).toBe(true);
        }
        if (sheet?.computed !== undefined) expect(sheet.computed.low).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('the order in which entries are handed in changes nothing', () => {
    const inAnyOrder = notes.chain((all) => {
      const entries = claimEntries(...all);
      const any = { minLength: entries.length, maxLength: entries.length };
      return fc.tuple(fc.constant(entries), fc.shuffledSubarray(entries, any));
    });
    fc.assert(
      fc.property(inAnyOrder, ([entries, other]) => {
        expect(amountsOf(other)).toEqual(amountsOf(entries));
      }),
    );
  });

  it('an entry that was corrected counts as if it were not there', () => {
    fc.assert(
      fc.property(notes, note, (all, wrong) => {
        const corrected = claimEntries(...all, wrong, {
          ...amountStated('credit', '1'),
          replaces: 10 + all.length,
        });
        const without = corrected.filter((one) => one.replacedBy === undefined);
        expect(amountsOf(corrected)).toEqual(amountsOf(without));
      }),
    );
  });

  it('every entry of the sum is in a step or in a note', () => {
    fc.assert(
      fc.property(notes, (all) => {
        const entries = claimEntries(...all);
        const sheet = amountsOf(entries);
        const named = new Set([
          ...(sheet?.steps ?? []).flatMap(({ seqs }) => seqs),
          ...(sheet?.notes ?? []).flatMap(({ seqs }) => seqs),
        ]);
        for (const { seq } of entries)
          if (sheet !== undefined && sheet.computed !== undefined) expect(named).toContain(seq);
      }),
    );
  });
});

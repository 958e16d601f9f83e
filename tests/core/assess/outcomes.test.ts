import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMilestones } from '../../../src/core/assess/milestones.js';
import { outcomeExcesses, outcomesOf } from '../../../src/core/assess/outcomes.js';
import type { OutcomeReason, OutcomeVerdict } from '../../../src/core/model/evidence.js';
import type { OutcomeAmount } from '../../../src/core/model/results.js';
import { at, DAY_START, HOUR, items, state } from './made.js';

const TWO_DROPS = {
  stops: [
    { id: 'load-1', does: 'load' as const, place: 'Cooler A', zone: 'UTC' },
    { id: 'denver', does: 'unload' as const, place: 'Denver', zone: 'UTC' },
    { id: 'omaha', does: 'unload' as const, place: 'Omaha', zone: 'UTC' },
  ],
  lines: [
    { id: 'strawberries', goods: 'strawberry', from: 'load-1', to: 'denver', pallets: 18, cartons: 1728 },
    { id: 'celery', goods: 'celery', from: 'load-1', to: 'omaha', pallets: 6, cartons: 480 },
    { id: 'leeks', goods: 'leek', from: 'load-1', to: 'omaha' },
  ],
};

interface Told {
  hour: number;
  outcome?: OutcomeVerdict;
  event?: 'refused' | 'unloaded';
  much?: string;
  line?: string;
  stop?: string;
  rest?: 'accepted' | 'refused';
  why?: OutcomeReason[];
}

const recorded = (told: readonly Told[]) =>
  state(
    items(
      ...told.map(({ hour, outcome, event, much, line, stop, rest, why = [] }) => {
        const [amount = '', unit = ''] = (much ?? '').split(' ');
        const common = {
          time: at(hour),
          ...(line === undefined ? {} : { line }),
          ...(stop === undefined ? {} : { place: { stop } }),
        };
        if (event !== undefined) return { kind: 'event' as const, event, ...common };
        return {
          kind: 'outcome' as const,
          outcome: outcome ?? 'refused',
          reasons: why,
          documents: [],
          ...(much === 'all'
            ? { all: true as const }
            : much === undefined
              ? {}
              : { quantity: { amount, unit: unit as 'pallets' } }),
          ...(rest === undefined ? {} : { rest }),
          ...common,
        };
      }),
    ),
    TWO_DROPS,
  );
const now = DAY_START + 100 * HOUR;
const of = (told: readonly Told[], line = 'strawberries') => {
  const record = recorded(told);
  const found = outcomesOf(record, readMilestones(record, now)).find((one) => one.line === line);
  return [found?.is, ...(found?.amounts ?? [])];
};
const pallets = (amounts: Omit<OutcomeAmount, 'unit'>): OutcomeAmount => ({ unit: 'pallets', ...amounts });
const berries = { line: 'strawberries', stop: 'denver' };

describe('the outcome of a line', () => {
  it.each<[string, Told[], string, (string | OutcomeAmount)[]]>([
    ['is not recorded when nobody said anything', [], 'strawberries', ['not-recorded']],
    [
      'counts what was refused of what was shipped, and leaves the rest open',
      [{ hour: 5, much: '8 pallets', ...berries }],
      'strawberries',
      ['refused-in-part', pallets({ shipped: 18, refused: 8, open: 10 })],
    ],
    [
      'takes the rest as the same person said',
      [{ hour: 5, much: '8 pallets', rest: 'accepted', ...berries }],
      'strawberries',
      ['refused-in-part', pallets({ shipped: 18, refused: 8, accepted: 10 })],
    ],
    [
      'takes the rest as said for the whole stop',
      [
        { hour: 5, much: '8 pallets', ...berries },
        { hour: 6, outcome: 'accepted', stop: 'denver' },
      ],
      'strawberries',
      ['refused-in-part', pallets({ shipped: 18, refused: 8, accepted: 10 })],
    ],
    [
      'counts an acceptance after a whole refusal among what was refused',
      [
        { hour: 5, ...berries },
        { hour: 30, outcome: 'accepted', much: '12 pallets', ...berries },
      ],
      'strawberries',
      ['refused-in-part', pallets({ shipped: 18, refused: 6, accepted: 12 })],
    ],
    [
      'is accepted when all was taken after all, and only when all was said',
      [
        { hour: 5, ...berries },
        { hour: 30, outcome: 'accepted', much: 'all', ...berries },
      ],
      'strawberries',
      ['accepted'],
    ],
    [
      'is refused in whole when two refusals make up the whole',
      [
        { hour: 5, much: '8 pallets', ...berries },
        { hour: 6, much: '10 pallets', ...berries },
      ],
      'strawberries',
      ['refused', pallets({ shipped: 18, refused: 18 })],
    ],
    [
      'shows a shortage in a sound load',
      [
        {
          hour: 5,
          outcome: 'accepted-with-exceptions',
          much: '24 cartons',
          why: ['shortage'],
          line: 'celery',
        },
      ],
      'celery',
      ['accepted-with-exceptions', { unit: 'cartons', shipped: 480, short: 24, accepted: 456 }],
    ],
    [
      'keeps a shortage whatever becomes of the others',
      [
        {
          hour: 5,
          outcome: 'accepted-with-exceptions',
          much: '24 cartons',
          why: ['shortage'],
          line: 'celery',
        },
        { hour: 6, outcome: 'accepted', much: 'all', line: 'celery' },
      ],
      'celery',
      ['accepted-with-exceptions', { unit: 'cartons', shipped: 480, short: 24, accepted: 456 }],
    ],
    [
      'counts what came over beside what was shipped',
      [{ hour: 5, outcome: 'accepted-with-exceptions', much: '3 cartons', why: ['overage'], line: 'celery' }],
      'celery',
      ['accepted-with-exceptions', { unit: 'cartons', shipped: 480, over: 3, accepted: 480 }],
    ],
    [
      'notes an exception without undoing the refusal of a part',
      [
        { hour: 5, much: '8 pallets', rest: 'accepted', ...berries },
        { hour: 6, outcome: 'accepted-with-exceptions', much: '2 pallets', why: ['damage'], ...berries },
      ],
      'strawberries',
      ['refused-in-part', pallets({ shipped: 18, refused: 8, excepted: 2, accepted: 8 })],
    ],
    [
      'is of the whole stop where no line is named',
      [{ hour: 5, outcome: 'accepted', stop: 'omaha' }],
      'leeks',
      ['accepted'],
    ],
    ['leaves the other stop alone', [{ hour: 5, stop: 'denver' }], 'celery', ['not-recorded']],
    [
      'reads the event of a refusal as the outcome of its whole stop',
      [{ hour: 5, event: 'refused', stop: 'denver' }],
      'strawberries',
      ['refused'],
    ],
    [
      'lets an outcome say how much an event of refusal was about',
      [
        { hour: 5, event: 'refused', stop: 'denver' },
        { hour: 5, much: '8 pallets', ...berries },
        { hour: 6, event: 'unloaded', stop: 'denver' },
      ],
      'strawberries',
      ['refused-in-part', pallets({ shipped: 18, refused: 8, unloaded: 10 })],
    ],
    [
      'counts an acceptance after an event of refusal among what was refused',
      [
        { hour: 5, event: 'refused', stop: 'denver' },
        { hour: 9, outcome: 'accepted', much: '10 pallets', ...berries },
      ],
      'strawberries',
      ['refused-in-part', pallets({ shipped: 18, refused: 8, accepted: 10 })],
    ],
    [
      'knows goods that were unloaded and of which nothing else is said',
      [{ hour: 5, event: 'unloaded', stop: 'omaha' }],
      'celery',
      ['unloaded'],
    ],
    [
      'counts in units of which it does not know how many were shipped',
      [{ hour: 5, much: '200 lb', line: 'leeks' }],
      'leeks',
      ['refused-in-part', { unit: 'lb', refused: 200 }],
    ],
    [
      'has not happened yet when it is dated later',
      [{ hour: 200, ...berries }],
      'strawberries',
      ['not-recorded'],
    ],
  ])('%s', (_, told, line, is) => {
    expect(of(told, line)).toEqual(is);
  });

  it.each<[string, Told[], number]>([
    ['more than was shipped', [{ hour: 5, much: '19 pallets', ...berries }], 1000],
    [
      'more than is left',
      [
        { hour: 5, much: '8 pallets', ...berries },
        { hour: 6, much: '11 pallets', ...berries },
      ],
      1000,
    ],
    [
      'of what is refused already',
      [
        { hour: 5, ...berries },
        { hour: 6, much: '3 pallets', ...berries },
      ],
      3000,
    ],
  ])('exceeds its goods: %s', (_, told, excess) => {
    const record = recorded(told);
    expect(outcomeExcesses(record, readMilestones(record, now))).toMatchObject([{ excess }]);
  });

  it('adds nothing when everything has been spoken of', () => {
    const record = recorded([
      { hour: 5, ...berries },
      { hour: 6, outcome: 'accepted', ...berries },
    ]);
    expect(outcomeExcesses(record, readMilestones(record, now))).toMatchObject([{ counted: false }]);
  });

  it('never makes more or less of the goods than were shipped', () => {
    const step = fc.record({
      outcome: fc.constantFrom('accepted' as const, 'refused' as const, 'accepted-with-exceptions' as const),
      much: fc.option(
        fc.oneof(
          fc.constant('all'),
          fc.integer({ min: 1, max: 20 }).map((count) => `${count} pallets`),
        ),
        { nil: undefined },
      ),
      why: fc.constantFrom<OutcomeReason[][]>([], ['shortage'], ['damage']),
      rest: fc.option(fc.constantFrom('accepted' as const, 'refused' as const), { nil: undefined }),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 6 }), (steps) => {
        const told = steps.map(
          ({ rest, much, ...one }, index): Told => ({
            hour: index,
            ...one,
            ...(much === undefined ? {} : { much }),
            ...(rest === undefined ? {} : { rest }),
            ...berries,
          }),
        );
        for (const amount of of(told).slice(1)) {
          if (typeof amount !== 'object') continue;
          const { unit: _, shipped = 0, over: __, ...fates } = amount;
          const counts = Object.values(fates);
          expect(counts.every((count) => count >= 0)).toBe(true);
          expect(counts.reduce((sum, count) => sum + count, 0)).toBe(shipped);
        }
      }),
    );
  });
});

describe('milestones of outcomes', () => {
  it('are at the stop of their line, and end the delivery there', () => {
    const record = recorded([
      { hour: 5, much: '8 pallets', line: 'strawberries' },
      { hour: 30, outcome: 'accepted', line: 'celery' },
    ]);
    expect(readMilestones(record, now).events).toMatchObject([
      { event: 'refused', stop: 'denver', line: 'strawberries' },
      { event: 'accepted', stop: 'omaha', line: 'celery' },
    ]);
  });
});

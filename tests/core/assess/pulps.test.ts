import { describe, expect, it } from 'vitest';
import { comparePulps } from '../../../src/core/assess/pulp-pairs.js';
import { pulpGroups } from '../../../src/core/assess/pulps.js';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import { at, facts, items, rulesOf, state } from './made.js';

const RULES = rulesOf({ needs: { event: 'arrived' } });
const pulp = (
  celsius: number,
  stop: string,
  more: {
    from?: 'driver' | 'receiver';
    position?: 'nose' | 'tail';
    instrument?: string;
    pallet?: string;
    hour?: number;
  } = {},
) =>
  ({
    kind: 'pulp',
    temperature: { value: celsius, unit: '°C' },
    from: more.from ?? 'driver',
    place: { stop, ...omitUndefined({ position: more.position, pallet: more.pallet }) },
    time: at(more.hour ?? 1),
    ...omitUndefined({ instrument: more.instrument }),
  }) as const;
const ice = (hour: number, caption: string) =>
  ({
    kind: 'photo',
    subject: { is: 'thermometer-in-ice', sure: 'confirmed' },
    time: at(hour),
    caption,
  }) as const;
const groups = (...list: Parameters<typeof items>) => pulpGroups(state(items(...list)), RULES);

describe('pulps of one line at one stop', () => {
  it('have spread, share in band and a row per part of the load', () => {
    const [group] = groups(
      pulp(2, 'load-1', { position: 'nose' }),
      pulp(4, 'load-1', { position: 'nose' }),
      pulp(6, 'load-1', { position: 'tail' }),
      pulp(3, 'load-1'),
    );
    expect(group).toMatchObject({ count: 4, inBand: 2, spread: 4 });
    expect(group?.byPosition).toEqual([
      { position: 'nose', count: 2, min: 2, max: 4, mean: 3 },
      { position: 'tail', count: 1, min: 6, max: 6, mean: 6 },
      { position: 'not-stated', count: 1, min: 3, max: 3, mean: 3 },
    ]);
  });

  it.each([
    {
      what: 'its own check',
      checks: [ice(-5, 'P-7 in ice'), ice(-1, 'P-9 in ice')],
      evidence: 'e2',
      names: true,
    },
    { what: 'the last of any', checks: [ice(-5, 'in ice'), ice(-1, 'in ice')], evidence: 'e3', names: false },
    {
      what: 'never a later one',
      checks: [ice(-5, 'in ice'), ice(2, 'P-7 in ice')],
      evidence: 'e2',
      names: false,
    },
  ])('a thermometer goes with $what', ({ checks, evidence, names }) => {
    const [group] = groups(pulp(2, 'load-1', { instrument: 'P 7' }), ...checks);
    expect(group?.instruments).toMatchObject([{ instrument: 'P 7', count: 1, check: { evidence, names } }]);
  });

  it('a thermometer that nobody checked has no check', () => {
    const [group] = groups(pulp(2, 'load-1', { instrument: 'P-7' }));
    expect(group?.instruments).toMatchObject([
      { instrument: 'P-7', count: 1, record: { name: 'P-7', checks: [] } },
    ]);
    expect(group?.instruments?.[0]).not.toHaveProperty('check');
  });
});

describe('pulps compared', () => {
  const compare = (...list: Parameters<typeof items>) => comparePulps(groups(...list), facts());
  const [nose, tail] = [{ position: 'nose' }, { position: 'tail' }] as const;
  const checked = { instrument: 'P-7' };

  it('delivery against loading, and the receiver’s against the driver’s, place by place', () => {
    const found = compare(
      pulp(2, 'load-1', { ...nose, ...checked }),
      pulp(6, 'load-1', { ...tail, ...checked }),
      pulp(5, 'drop-1', { ...nose, ...checked, hour: 10 }),
      pulp(6, 'drop-1', { ...tail, ...checked, hour: 10 }),
      pulp(7, 'drop-1', { ...tail, from: 'receiver', hour: 10 }),
    );
    expect(found).toMatchObject([
      {
        is: 'delivery-against-loading',
        counts: [2, 3],
        pairs: [
          { place: nose, counts: [1, 1], change: 3, answer: 'rose', sameThermometer: true },
          { place: tail, counts: [1, 1], change: 0, answer: 'not-decidable', sameThermometer: true },
        ],
        differs: ['thermometer-not-named'],
      },
      { is: 'receiver-against-driver', stop: 'drop-1', pairs: [{ place: tail, change: 1 }] },
    ]);
    expect(found[0]).not.toHaveProperty('mean');
  });

  it('never averages an unnamed thermometer with a checked probe', () => {
    const [one] = compare(
      pulp(2, 'load-1', { ...nose, ...checked }),
      pulp(5, 'drop-1', { ...nose, hour: 10 }),
    );
    expect(one?.differs).toEqual(['thermometer-not-named']);
    expect(one).not.toHaveProperty('mean');
  });

  it('gives a mean change only where places and thermometer are the same', () => {
    const [one] = compare(
      pulp(2, 'load-1', { ...nose, ...checked }),
      pulp(4, 'load-1', { ...tail, ...checked }),
      pulp(3, 'drop-1', { ...nose, ...checked, hour: 10 }),
      pulp(9, 'drop-1', { ...tail, ...checked, hour: 10 }),
    );
    expect(one).toMatchObject({ differs: [], mean: 3, leastRise: -1, mostRise: 7 });
  });

  it('without a place in common, says rose only where every later reading is clearly warmer than every earlier', () => {
    const far = compare(pulp(2, 'load-1', nose), pulp(3, 'load-1'), pulp(9, 'drop-1', tail));
    expect(far).toMatchObject([
      {
        pairs: [],
        leastRise: 6,
        answer: 'rose',
        differs: ['place-not-stated', 'place', 'thermometer-not-named'],
      },
    ]);
    const near = compare(pulp(2, 'load-1', nose), pulp(4, 'load-1'), pulp(5, 'drop-1', tail));
    expect(near).toMatchObject([{ leastRise: 1, answer: 'not-decidable' }]);
  });

  it('pairs pallets by their marks before parts of the load', () => {
    const [one] = compare(
      pulp(2, 'load-1', { ...nose, ...checked, pallet: 'R-01' }),
      pulp(4, 'load-1', { ...nose, ...checked, pallet: 'R-02' }),
      pulp(8, 'drop-1', { ...tail, ...checked, pallet: 'R-02', hour: 10 }),
    );
    expect(one?.pairs).toMatchObject([{ place: { pallet: 'R-02' }, change: 4, answer: 'rose' }]);
    expect(one?.pairs[0]?.place).not.toHaveProperty('position');
  });

  it('one end alone is nothing to compare', () => {
    expect(compare(pulp(2, 'load-1'))).toEqual([]);
  });
});

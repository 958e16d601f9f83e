import { describe, expect, it } from 'vitest';
import { comparePulps } from '../../../src/core/assess/pulp-details.js';
import { pulpGroups } from '../../../src/core/assess/pulps.js';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import { at, items, rulesOf, state } from './made.js';

const RULES = rulesOf({ needs: { event: 'arrived' } });
const pulp = (
  celsius: number,
  stop: string,
  more: { from?: 'driver' | 'receiver'; position?: 'nose' | 'tail'; instrument?: string; hour?: number } = {},
) =>
  ({
    kind: 'pulp',
    temperature: { value: celsius, unit: '°C' },
    from: more.from ?? 'driver',
    place: { stop, ...omitUndefined({ position: more.position }) },
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
    expect(group?.instruments).toEqual([{ instrument: 'P-7', count: 1 }]);
  });
});

describe('pulps compared', () => {
  it('delivery against loading, and the receiver’s against the driver’s', () => {
    const found = comparePulps(
      groups(
        pulp(2, 'load-1'),
        pulp(4, 'load-1'),
        pulp(5, 'drop-1', { hour: 10 }),
        pulp(7, 'drop-1', { from: 'receiver', hour: 10 }),
      ),
    );
    expect(found).toMatchObject([
      { is: 'delivery-against-loading', counts: [2, 2], mean: 3, min: 3, max: 3 },
      { is: 'receiver-against-driver', stop: 'drop-1', counts: [1, 1], mean: 2 },
    ]);
  });

  it('one end alone is nothing to compare', () => {
    expect(comparePulps(groups(pulp(2, 'load-1')))).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { loadPlan } from '../../../../src/core/assess/loading/plan.js';
import type { DeliveryInput } from '../../../../src/core/model/delivery.js';
import type { RowPattern } from '../../../../src/core/model/evidence.js';
import { items, state } from '../made.js';

const IN = 0.0254;
const trailer = (more: object): Partial<DeliveryInput> => ({
  equipment: { trailer: { number: 'T-118', ...more } },
});
const rows = (pattern: RowPattern, from: number, to: number, stop = 'load-1') => ({
  kind: 'pattern' as const,
  pattern,
  rows: { from, to },
  blocks: [],
  place: { stop },
});
const planOf = (change: Partial<DeliveryInput>, ...noted: ReturnType<typeof rows>[]) =>
  loadPlan(state(items(...noted), change));

describe('the load as its rows were noted', () => {
  it('is not made up where no row was noted', () => {
    expect(planOf({})).toBeUndefined();
  });

  it('has side room, floor, rear gap and capacity from the inside dimensions', () => {
    const plan = planOf(trailer({ insideWidth: '98.5 in', insideLength: '630 in' }), rows('straight', 1, 13));
    expect(plan?.rows.every((row) => Math.abs((row.sideRoom ?? 0) / IN - 18.5) < 1e-9)).toBe(true);
    expect((plan?.floorUsed ?? 0) / IN).toBeCloseTo(624, 9);
    expect((plan?.rearGap ?? 0) / IN).toBeCloseTo(6, 9);
    expect(plan?.lengthFrom).toBe('inside');
    expect(plan?.fits.map(({ pallets }) => pallets)).toEqual([26, 28, 30]);
  });

  it('says when only the outside length is known, and that the footprint is assumed', () => {
    const plan = planOf(trailer({ length: '53 ft' }), rows('straight', 1, 2));
    expect(plan).toMatchObject({ lengthFrom: 'outside', assumedFootprint: ['romaine'], fits: [] });
    expect(plan?.rows[0]).not.toHaveProperty('sideRoom');
  });

  it('a later word on a row holds, and a word from where the goods go off does not count', () => {
    const plan = planOf({}, rows('straight', 1, 4), rows('turned', 3, 4), rows('single', 1, 4, 'drop-1'));
    expect(plan?.rows.map(({ pattern }) => pattern)).toEqual(['straight', 'straight', 'turned', 'turned']);
  });

  it('states no floor length over rows that were not noted', () => {
    const plan = planOf(trailer({ insideLength: '630 in' }), rows('straight', 1, 2), rows('straight', 5, 6));
    expect(plan?.unknownRows).toEqual([3, 4]);
    expect(plan).not.toHaveProperty('floorUsed');
    expect(plan).not.toHaveProperty('rearGap');
    expect(plan?.pallets).toHaveLength(8);
  });
});

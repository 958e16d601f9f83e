import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exhibitNumbers, numberExhibits } from '../../src/compose/exhibits.js';
import { knownMilliseconds } from '../../src/core/model/time.js';
import { cases } from '../properties.js';
import { sampleInput } from './sample.js';

const { state } = await sampleInput();
const item = new Map(state.evidence.map((one) => [one.evidence, one]));
const at = (id: (typeof state.evidence)[number]['evidence']) => {
  const found = item.get(id);
  return (found === undefined ? undefined : knownMilliseconds(found.time)) ?? Number.POSITIVE_INFINITY;
};

describe('exhibits', () => {
  const numbered = numberExhibits(state);

  it('are all the evidence, numbered from 1 without holes', () => {
    expect(numbered.map((one) => one.exhibit)).toEqual(state.evidence.map((_, i) => i + 1));
    expect(new Set(numbered.map((one) => one.evidence)).size).toBe(state.evidence.length);
  });

  it('stand in the order of time, then of entry; what has no known time comes last', () => {
    const order = numbered.map((one) => [at(one.evidence), one.seq] as const);
    expect(order).toEqual([...order].sort((a, b) => (a[0] === b[0] ? a[1] - b[1] : a[0] - b[0])));
    expect(
      at(numbered.at(-1)?.evidence ?? state.evidence[0]?.evidence ?? (numbered[0]?.evidence as never)),
    ).toBe(Number.POSITIVE_INFINITY);
  });

  it('have the same numbers whatever the order of collecting', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(state.evidence, { minLength: state.evidence.length }), (evidence) => {
        expect(numberExhibits({ ...state, evidence })).toEqual(numbered);
      }),
      { numRuns: cases(30) },
    );
  });

  it('are found by their evidence', () => {
    const numberOf = exhibitNumbers(numbered);
    for (const one of numbered) expect(numberOf(one.evidence)).toBe(one.exhibit);
    expect(exhibitNumbers([])(numbered[0]?.evidence ?? ('e1' as never))).toBeUndefined();
  });
});

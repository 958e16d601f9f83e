import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MOST_LISTED, type Outside } from '../../../src/core/assess/temperature/excursion-list.js';
import { findExcursions } from '../../../src/core/assess/temperature/excursions.js';
import { summarise } from '../../../src/core/assess/temperature/summary.js';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import type { Excursion, ExcursionCause } from '../../../src/core/model/results.js';

const MINUTE = 60_000;
const BAND = { low: 0, high: 4 };
const CAUSES: readonly ExcursionCause[] = [
  { is: 'unexplained' },
  { is: 'defrost', how: 'logged' },
  { is: 'pull-down', how: 'inferred' },
  { is: 'door-open', how: 'logged' },
];
const causeOf = (one: Pick<Outside, 'from'>): ExcursionCause =>
  CAUSES[Math.round(one.from / MINUTE) % CAUSES.length] ?? { is: 'unexplained' };

function found(times: readonly number[], values: readonly number[]) {
  const window = { from: times[0] ?? 0, to: times.at(-1) ?? 0 };
  const [ats, air] = [Float64Array.from(times), Float64Array.from(values)];
  return {
    ...findExcursions(
      'return-air',
      ats,
      air,
      window,
      1800,
      BAND,
      (index) => `x${index}`,
      (one) => ({
        cause: causeOf(one),
      }),
    ),
    sums: summarise('return-air', ats, air, window, 1800, BAND),
  };
}

/** The sums by going through a list of all. */
function addedUp(all: readonly Excursion[]) {
  const [first] = all;
  if (first === undefined) return undefined;
  const peaks = (side: Excursion['side']) => all.filter((one) => one.side === side).map(({ peak }) => peak);
  return {
    count: all.length,
    seconds: expect.closeTo(
      all.reduce((sum, one) => sum + one.seconds, 0),
      6,
    ),
    longestSeconds: Math.max(...all.map(({ seconds }) => seconds)),
    ...omitUndefined({
      highest: peaks('above').length === 0 ? undefined : Math.max(...peaks('above')),
      lowest: peaks('below').length === 0 ? undefined : Math.min(...peaks('below')),
    }),
    degreeHours: expect.closeTo(
      all.reduce((sum, one) => sum + one.degreeHours, 0),
      6,
    ),
    firstAt: first.from,
  };
}

const CLASSES = ['normal-operation', 'handling', 'equipment', 'instruction', 'not-explained'];

function totalsOf(all: readonly Excursion[]) {
  return {
    count: all.length,
    classes: CLASSES.flatMap((name) => {
      const those = all.filter((one) => one.class === name);
      const how = (which: string) =>
        those.filter(({ cause }) => 'how' in cause && cause.how === which).length;
      const sums = addedUp(those);
      const causes = [...new Set(those.map(({ cause }) => cause.is))];
      return sums === undefined
        ? []
        : {
            class: name,
            ...sums,
            logged: how('logged'),
            inferred: how('inferred'),
            causes: causes.map((is) => ({
              is,
              count: those.filter(({ cause }) => cause.is === is).length,
            })),
          };
    }),
  };
}

const rows = fc.array(
  fc.record({
    step: fc.constantFrom(1, 1, 1, 5, 40),
    value: fc.oneof(
      { weight: 5, arbitrary: fc.integer({ min: -40, max: 80 }).map((tenths) => tenths / 10) },
      { weight: 1, arbitrary: fc.constantFrom(0, 4, Number.NaN) },
    ),
  }),
  { maxLength: 40 },
);

describe('the list of excursions', () => {
  it('is in order of time, holds all time outside the band, and is what its totals add up', () => {
    fc.assert(
      fc.property(rows, (all) => {
        let at = 0;
        const times = all.map(({ step }) => {
          at += step * MINUTE;
          return at;
        });
        const { excursions, excursionTotals, sums } = found(
          times,
          all.map(({ value }) => value),
        );
        expect(excursions.map(({ id }) => id)).toEqual(excursions.map((_, i) => `x${i}`));
        expect(excursions).toEqual([...excursions].sort((a, b) => a.from - b.from));
        const seconds = excursions.reduce((sum, one) => sum + one.seconds, 0);
        expect(seconds).toBeCloseTo(sums.aboveSeconds + sums.belowSeconds, 6);
        const degreeHours = excursions.reduce((sum, one) => sum + one.degreeHours, 0);
        expect(degreeHours).toBeCloseTo(sums.degreeHoursAbove + sums.degreeHoursBelow, 9);
        expect(excursionTotals).toEqual(totalsOf(excursions));
        expect(excursions.map(({ cause }) => cause)).toEqual(excursions.map(causeOf));
      }),
    );
  });

  it('keeps the heaviest of very many, counts all, and names each by its place among all', () => {
    const count = 2 * MOST_LISTED + 1_234;
    const peak = (i: number) => 5 + ((i * 7919) % 9973) / 1000;
    const values = Array.from({ length: count }, (_, i) => [2, peak(i), 2]).flat();
    const { excursions, excursionTotals, sums } = found(
      values.map((_, i) => i * MINUTE),
      values,
    );
    const heaviest = Array.from({ length: count }, (_, i) => i)
      .sort((a, b) => peak(b) - peak(a) || a - b)
      .slice(0, MOST_LISTED)
      .sort((a, b) => a - b);
    expect(excursions.map(({ id }) => id)).toEqual(heaviest.map((i) => `x${i}`));
    const { classes } = excursionTotals;
    const sumOf = (of: (one: (typeof classes)[number]) => number) =>
      classes.reduce((sum, one) => sum + of(one), 0);
    expect(excursionTotals.count).toBe(count);
    expect(sumOf((one) => one.count)).toBe(count);
    expect(sumOf(({ degreeHours }) => degreeHours)).toBeCloseTo(sums.degreeHoursAbove, 6);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { furtherReadings, shareBounds } from '../../../../src/core/assess/sampling/share-bounds.js';

const rounded = ({ least, most }: { least: number; most: number }) =>
  [least, most].map((one) => one.toFixed(4));

describe('what a sample allows of the lot', () => {
  // Clopper and Pearson's two-sided 95 % limits are the one-sided ones of 97.5 %; table values from memory, and
  // compared with scipy in the outside checks.
  it.each([
    [0, 10, ['0.0000', '0.3085']],
    [1, 10, ['0.0025', '0.4450']],
    [5, 10, ['0.1871', '0.8129']],
    [10, 10, ['0.6915', '1.0000']],
    [2, 30, ['0.0082', '0.2207']],
  ])('%i of %i out of range, lot not known: limits of 97.5 %% each', (beyond, taken, limits) => {
    expect(rounded(shareBounds({ taken, beyond }, 0.975))).toEqual(limits);
  });

  it.each([1, 3, 6, 12, 59])('none of %i out of range: 1 − 0.05^(1/n) at most', (taken) => {
    expect(shareBounds({ taken, beyond: 0 }).most).toBeCloseTo(1 - 0.05 ** (1 / taken), 12);
  });

  // By hand: of 10 cartons 3 are read and sound. With 5 bad ones that has C(5,3)/C(10,3) = 10/120 = 8.3 %, with 6
  // C(4,3)/120 = 4/120 = 3.3 %: up to 5 of 10 at 95 %.
  it('3 of 10 cartons, all in range: up to half of them out of range', () => {
    expect(shareBounds({ taken: 3, beyond: 0, of: 10 })).toEqual({
      least: 0,
      most: 0.5,
      by: 'hypergeometric',
    });
  });

  // By hand: 2 of 3 bad. With 2 bad among 10 that has C(2,2)·C(8,1)/120 = 6.7 %, so 2 is allowed; the most is 9,
  // where 1 of 3 is sound for certain of one carton: P(≤ 2) = C(9,2)·C(1,1)/120 = 30 %.
  it('2 of 3 read among 10 out of range: 2 to 9 of them', () => {
    expect(shareBounds({ taken: 3, beyond: 2, of: 10 })).toMatchObject({ least: 0.2, most: 0.9 });
  });

  it('all cartons read: the share is known', () => {
    expect(shareBounds({ taken: 8, beyond: 2, of: 8 })).toMatchObject({ least: 0.25, most: 0.25 });
  });

  it('lies round the share that was seen, and closer in a lot that is known', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.nat(60),
        fc.integer({ min: 60, max: 3000 }),
        (taken, some, of) => {
          const beyond = Math.min(some, taken);
          const known = shareBounds({ taken, beyond, of });
          const endless = shareBounds({ taken, beyond });
          expect(known.least).toBeLessThanOrEqual(beyond / taken);
          expect(known.most).toBeGreaterThanOrEqual(beyond / taken);
          expect(known.most).toBeLessThanOrEqual(endless.most + 1 / of);
          expect(known.least).toBeGreaterThanOrEqual(endless.least - 1 / of);
        },
      ),
    );
  });
});

describe('how many readings more', () => {
  it.each([
    // 1 − 0.05^(1/n) ≤ 0.1 from n = 29 (28.4); after 3 that is 26 more.
    [{ taken: 3, beyond: 0 }, 0.1, 26],
    [{ taken: 29, beyond: 0 }, 0.1, 0],
    [{ taken: 3, beyond: 0, of: 10 }, 0.5, 0],
    [{ taken: 3, beyond: 3, of: 10 }, 0.2, undefined],
  ] as const)('%j to at most %f: %s', (sample, most, more) => {
    expect(furtherReadings(sample, most)).toBe(more);
  });
});

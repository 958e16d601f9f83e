import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { goodsTable } from '../../../src/core/reference/goods.js';
import {
  rateAt,
  rateInStretch,
  rateStretches,
  respirationsOf,
} from '../../../src/core/reference/respiration.js';

const respirations = goodsTable.flatMap(({ key }) => respirationsOf(key));

describe('rates in stretches', () => {
  it('are looked at for many goods', () => {
    expect(new Set(respirations.map(({ key }) => key)).size).toBeGreaterThan(30);
  });

  it('are the rates of the definition, at every temperature and for every published respiration', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...respirations),
        fc.constantFrom('low', 'high', 'middle'),
        fc.double({ min: -10, max: 40, noNaN: true }),
        (respiration, edge, celsius) => {
          const stretch = rateStretches(respiration, edge).find((one) => celsius <= one.to);
          if (stretch === undefined) throw new Error('no stretch');
          const rate = rateAt(respiration, celsius, edge);
          expect(Math.abs(rateInStretch(stretch, celsius) - rate)).toBeLessThanOrEqual(1e-12 * rate);
          const [first, last] = [respiration.points[0], respiration.points.at(-1)];
          expect(stretch.beyond && celsius !== first?.celsius).toBe(
            celsius < (first?.celsius ?? 0) || celsius > (last?.celsius ?? 0),
          );
        },
      ),
    );
  });

  it('come from one source alone, and never from one temperature', () => {
    for (const { points } of respirations) expect(points.length).toBeGreaterThan(1);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  rateAt,
  rateInStretch,
  rateStretches,
  respirations,
} from '../../../src/core/reference/respiration.js';

describe('rates in stretches', () => {
  it('are the rates of the definition, at every temperature and for every published commodity', () => {
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
});

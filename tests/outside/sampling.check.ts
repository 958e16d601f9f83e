import { describe, expect } from 'vitest';
import { type Sample, shareBounds } from '../../src/core/assess/sampling/share-bounds.js';
import { ask, checkWith, scipy } from './programs.js';

/**
 * The same bounds by SciPy: Clopper and Pearson's from quantiles of the beta distribution, those of a known lot by
 * trying each count of bad cartons with its hypergeometric distribution.
 */
const PROGRAM = `
import json, sys
import numpy
from scipy.stats import beta, hypergeom

def bounds(taken, beyond, of, confidence):
    risk = 1 - confidence
    if of is None:
        least = 0 if beyond == 0 else beta.ppf(risk, beyond, taken - beyond + 1)
        most = 1 if beyond == taken else beta.ppf(confidence, beyond + 1, taken - beyond)
        return [float(least), float(most)]
    bad = numpy.arange(beyond, of - taken + beyond + 1)
    # Where a probability equals the risk, its last digit must not decide.
    allowed = bad[
        (hypergeom.cdf(beyond, of, bad, taken) >= risk - 1e-12)
        & (hypergeom.sf(beyond - 1, of, bad, taken) >= risk - 1e-12)
    ]
    return [float(allowed[0] / of), float(allowed[-1] / of)]

print(json.dumps([bounds(*case) for case in json.loads(sys.argv[1])]))
`;

const CASES: [Sample, number][] = [1, 2, 3, 6, 12, 30, 59].flatMap((taken) =>
  [0, 1, Math.floor(taken / 2), taken - 1, taken].flatMap((beyond) =>
    [undefined, taken, taken + 1, 60, 96, 864, 1500].flatMap((of) =>
      [0.9, 0.95, 0.99].flatMap((confidence): [Sample, number][] =>
        beyond < 0 || (of !== undefined && of < taken)
          ? []
          : [[of === undefined ? { taken, beyond } : { taken, beyond, of }, confidence]],
      ),
    ),
  ),
);

describe('bounds on the share of cartons out of range', () => {
  checkWith(scipy, `agree in ${CASES.length} cases`, () => {
    const asked = CASES.map(([{ taken, beyond, of }, confidence]) => [taken, beyond, of ?? null, confidence]);
    const { status, out } = ask(scipy, '-c', PROGRAM, JSON.stringify(asked));
    expect(status, out).toBe(0);
    const theirs: unknown = JSON.parse(out);
    const ours = CASES.map(([sample, confidence]) => {
      const { least, most } = shareBounds(sample, confidence);
      return [expect.closeTo(least, 9), expect.closeTo(most, 9)];
    });
    expect(theirs).toEqual(ours);
  });
});

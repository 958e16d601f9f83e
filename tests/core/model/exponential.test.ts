import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exp, expm1, log, power } from '../../../src/core/model/exponential.js';
import { cases } from '../../properties.js';

/** Numbers of 240 bits behind the point, as integers: an oracle that shares nothing with the code under test. */
const POINT = 240n;
const ONE = 1n << POINT;
const product = (a: bigint, b: bigint): bigint => (a * b) >> POINT;

/** A double as such a number, exactly down to 2^-240. */
function fixed(x: number): bigint {
  let [value, places] = [Math.abs(x), 0n];
  while (!Number.isInteger(value)) {
    value *= 2;
    places += 1n;
  }
  const whole = (BigInt(value) << POINT) >> places;
  return x < 0 ? -whole : whole;
}

/** The power series of e^x, after halving x until it is small; then squared back. */
function exactExp(x: bigint): bigint {
  const halvings = 12n;
  const small = x >> halvings;
  let [sum, term] = [ONE, ONE];
  for (let n = 1n; term !== 0n && term !== -1n; n += 1n) {
    term = product(term, small) / n;
    sum += term;
  }
  for (let i = 0n; i < halvings; i += 1n) sum = product(sum, sum);
  return sum;
}

/** How far a double is from an exact value, in units of its last place. */
function unitsApart(got: number, exact: bigint): number {
  const bits = new DataView(new ArrayBuffer(8));
  bits.setFloat64(0, Math.abs(got));
  bits.setBigUint64(0, bits.getBigUint64(0) + 1n);
  const unit = fixed(bits.getFloat64(0)) - fixed(Math.abs(got));
  const apart = fixed(got) - exact;
  return Number(((apart < 0n ? -apart : apart) * 1000n) / unit) / 1000;
}

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

describe('to one unit in the last place,', () => {
  it('exp is the power of e', () => {
    fc.assert(
      fc.property(number(-40, 40), (x) => {
        expect(unitsApart(exp(x), exactExp(fixed(x)))).toBeLessThan(1);
      }),
      { numRuns: cases(500) },
    );
  });

  it('expm1 is the power of e less 1 near 0, where exp less 1 loses its digits', () => {
    fc.assert(
      fc.property(fc.oneof(number(-0.34, 0.34), number(-1e-9, 1e-9)), (x) => {
        fc.pre(Math.abs(x) > 1e-30);
        expect(unitsApart(expm1(x), exactExp(fixed(x)) - ONE)).toBeLessThan(1);
      }),
      { numRuns: cases(500) },
    );
  });

  it('and to a few of them expm1 elsewhere', () => {
    fc.assert(
      fc.property(fc.oneof(number(-40, -0.34), number(0.34, 40)), (x) => {
        expect(unitsApart(expm1(x), exactExp(fixed(x)) - ONE)).toBeLessThan(4);
      }),
    );
  });

  it('log is what exp turns back: its error changes the number by as much', () => {
    fc.assert(
      fc.property(fc.oneof(number(1e-6, 1e6), number(0.5, 2)), (x) => {
        const y = log(x);
        // e^y = x e^(error of y), so that the error of y is ln(e^y / x), for small errors e^y / x − 1.
        const error = (exactExp(fixed(y)) << POINT) / fixed(x) - ONE;
        expect(unitsApart(y, fixed(y) - error)).toBeLessThan(1);
      }),
      { numRuns: cases(500) },
    );
  });
});

describe('a power', () => {
  it.each([
    [1.7, 1, 1.7],
    [5, 0, 1],
    [2, 10, 1024],
    [10, -3, 0.001],
    [0.5, 0.5, Math.SQRT1_2],
  ])('%d to the %d is %d, but for the last digit', (base, exponent, expected) => {
    expect(power(base, exponent) / expected).toBeCloseTo(1, 14);
  });
});

describe('at the ends of what numbers can be', () => {
  it.each([
    ['exp(0)', exp(0), 1],
    ['exp(-0)', exp(-0), 1],
    ['exp beyond the largest', exp(710), Number.POSITIVE_INFINITY],
    ['exp of no end', exp(Number.POSITIVE_INFINITY), Number.POSITIVE_INFINITY],
    ['exp below the least', exp(-746), 0],
    ['exp of no end below', exp(Number.NEGATIVE_INFINITY), 0],
    ['exp of the least that is not nothing', exp(-745), Number.MIN_VALUE],
    ['exp of no number', exp(Number.NaN), Number.NaN],
    ['expm1(0)', expm1(0), 0],
    ['expm1 of a number that 1 would swallow', expm1(1e-300), 1e-300],
    ['expm1 of no end below', expm1(Number.NEGATIVE_INFINITY), -1],
    ['log(1)', log(1), 0],
    ['log(0)', log(0), Number.NEGATIVE_INFINITY],
    ['log of a negative', log(-1), Number.NaN],
    ['log of no number', log(Number.NaN), Number.NaN],
    ['log of no end', log(Number.POSITIVE_INFINITY), Number.POSITIVE_INFINITY],
    ['log of the least', log(Number.MIN_VALUE), -744.4400719213812],
    ['log of the largest', log(Number.MAX_VALUE), 709.782712893384],
  ])('%s', (_, got, expected) => {
    expect(got).toBe(expected);
  });

  it('close below the largest is no more than a few units from what the engine says', () => {
    expect(exp(709.78) / Math.exp(709.78)).toBeCloseTo(1, 14);
  });
});

describe('in every engine', () => {
  /** All bits of many results, folded into one number (FNV-1a). */
  const folded = (results: Float64Array): number =>
    new Uint8Array(results.buffer).reduce((sum, byte) => Math.imul(sum ^ byte, 16_777_619), 2_166_136_261) >>>
    0;
  it.each([
    ['exp', exp, (i: number) => (i - 5000) / 131, 2_497_246_636],
    ['expm1', expm1, (i: number) => (i - 5000) / 17_000, 2_247_363_777],
    ['log', log, (i: number) => (i + 1) / 97, 3_924_028_212],
  ])('the bits of %s are the same', (_, of, at, bits) => {
    expect(folded(Float64Array.from({ length: 10_000 }, (_, i) => of(at(i))))).toBe(bits);
  });
});

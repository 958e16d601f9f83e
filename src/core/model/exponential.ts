/**
 * Exponential and logarithm made of nothing but sums, products and quotients, which IEEE 754 fixes to the last bit.
 * Those of `Math` are each engine's own approximation: Node 20.20 and Chromium 156 differ in the last digit, and what is
 * computed from a record must come out alike wherever it is computed again.
 */

/** ln 2 in two parts: the first ends in zero bits, so that its products with exponents are exact. */
const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;

const LEAST_EXPONENT = -1074;
const GREATEST_EXPONENT = 1023;
/** 2 to the power of each exponent that a number can have, from the least up: doubling is exact. */
const POWERS_OF_TWO = new Float64Array(GREATEST_EXPONENT - LEAST_EXPONENT + 1);
for (let at = 0, power = Number.MIN_VALUE; at < POWERS_OF_TWO.length; at += 1, power *= 2)
  POWERS_OF_TWO[at] = power;
const powerOfTwo = (exponent: number): number => POWERS_OF_TWO[exponent - LEAST_EXPONENT] ?? Number.NaN;

const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));
/** 1/14! … 1/2!: as many as the last bit asks for where |x| < 0.35. */
const EXP_TERMS = Float64Array.from({ length: 13 }, (_, i) => 1 / factorial(14 - i));
/** 2/25, 2/23 … 2/3: artanh(s) beyond its first term, doubled; as many as the last bit asks for where |s| < 0.172. */
const ARTANH_TERMS = Float64Array.from({ length: 12 }, (_, i) => 2 / (25 - 2 * i));

/** The polynomial with these coefficients, the highest first (Horner). */
function polynomial(coefficients: Float64Array, x: number): number {
  let sum = 0;
  for (let i = 0; i < coefficients.length; i += 1) sum = sum * x + (coefficients[i] ?? 0);
  return sum;
}

/** e to the power of x, less 1, where |x| < 0.35. */
const smallExpm1 = (x: number): number => x + x * x * polynomial(EXP_TERMS, x);

/** e to the power of x, to one unit in the last place. */
export function exp(x: number): number {
  if (x > 710) return Number.POSITIVE_INFINITY;
  if (x < -746) return 0;
  const exponent = Math.floor(x / Math.LN2 + 0.5);
  const mantissa = 1 + smallExpm1(x - exponent * LN2_HIGH - exponent * LN2_LOW);
  if (exponent > GREATEST_EXPONENT) return mantissa * powerOfTwo(GREATEST_EXPONENT) * 2;
  if (exponent < LEAST_EXPONENT) return (mantissa / 2) * powerOfTwo(LEAST_EXPONENT);
  return mantissa * powerOfTwo(exponent);
}

/** e to the power of x, less 1, with all its digits near 0, where the 1 would swallow them. */
export function expm1(x: number): number {
  return Math.abs(x) < 0.35 ? smallExpm1(x) : exp(x) - 1;
}

const VIEW = new DataView(new ArrayBuffer(8));

/** Natural logarithm, to one unit in the last place. */
export function log(x: number): number {
  if (x === 0) return Number.NEGATIVE_INFINITY;
  if (!(x > 0)) return Number.NaN;
  if (x === Number.POSITIVE_INFINITY) return x;
  const raised = x < powerOfTwo(-1022) ? 54 : 0;
  const normal = x * powerOfTwo(raised);
  VIEW.setFloat64(0, normal);
  const whole = (VIEW.getUint16(0) >> 4) - 1023;
  // Dividing by a power of two is exact; the mantissa then is from √½ to √2.
  const from1 = normal / powerOfTwo(whole);
  const high = from1 > Math.SQRT2 ? 1 : 0;
  const f = (high === 1 ? from1 / 2 : from1) - 1;
  const exponent = whole + high - raised;
  // ln(1 + f) = f − f²/2 + s (f²/2 + R), where s = f / (2 + f) and R = 2 artanh(s) / s − 2.
  const s = f / (2 + f);
  const half = (f * f) / 2;
  const rest = s * s * polynomial(ARTANH_TERMS, s * s);
  return exponent * LN2_HIGH - (half - (s * (half + rest) + exponent * LN2_LOW) - f);
}

/** A positive number to a power: its error grows with the size of the power's logarithm. */
export function power(base: number, exponent: number): number {
  return exponent === 1 ? base : exp(exponent * log(base));
}

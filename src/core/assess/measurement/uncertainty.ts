import type { ChangeAnswer, LimitAnswer, Uncertainty, UncertaintyPart } from '../../model/results.js';
import { ROUNDING } from '../bands.js';

/** Normal quantile for 95 % to one side: each limit is judged on its own. */
const ONE_SIDED = 1.6448536269514722;

/** Standard uncertainty of a value that may lie anywhere within a half-width: a/√3 (JCGM 100:2008, 4.3.7). */
export const rectangular = (halfWidth: number): number => halfWidth / Math.sqrt(3);

/** Combined standard uncertainty of independent parts (JCGM 100:2008, 5.1.2, with sensitivities of 1). */
export function combined(standard: readonly number[]): number {
  return Math.sqrt(standard.reduce((sum, one) => sum + one * one, 0));
}

/**
 * The uncertainty of a value from half-widths of its parts. Its guard band leaves at most 5 % for the true value beyond
 * the limit (JCGM 106:2012, 8.3); of one part alone it is 0.95 of the half-width.
 */
export function uncertaintyOf(parts: readonly UncertaintyPart[]): Uncertainty {
  const standardKelvin = combined(parts.map(({ halfWidthKelvin }) => rectangular(halfWidthKelvin)));
  return { parts: [...parts], standardKelvin, guardKelvin: ONE_SIDED * standardKelvin };
}

/** Where a value lies about a range, with room for its uncertainty on either side of each limit. */
export function judgeAgainst(
  value: number,
  guardKelvin: number,
  { low, high }: { low: number; high: number },
): LimitAnswer {
  if (value - guardKelvin > high + ROUNDING) return 'above';
  if (value + guardKelvin < low - ROUNDING) return 'below';
  const isWithin = value + guardKelvin <= high + ROUNDING && value - guardKelvin >= low - ROUNDING;
  return isWithin ? 'within' : 'not-decidable';
}

/** Whether a difference is one, given its uncertainty. */
export function judgeChange(kelvin: number, guardKelvin: number): ChangeAnswer {
  if (kelvin > guardKelvin + ROUNDING) return 'rose';
  return kelvin < -guardKelvin - ROUNDING ? 'fell' : 'not-decidable';
}

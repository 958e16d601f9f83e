import type { PercentRange } from '../../model/results.js';

/** Percentages are stated with two decimals at most, so that sums of them are whole hundredths. */
export const rounded = (percent: number): number => Math.round(percent * 100) / 100;

export const range = (low: number, high = low): PercentRange => ({ low: rounded(low), high: rounded(high) });

export const sumOf = (percents: readonly number[]): number => rounded(percents.reduce((a, b) => a + b, 0));

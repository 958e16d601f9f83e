import type { View } from './context.js';

/** Two temperatures, °C, in the reader's units, with a dash between; once where both are equal; a dash for none. */
export const formatRange = ({ format }: View, range: { low: number; high: number } | undefined): string => {
  if (range === undefined) return '–';
  const [low, high] = [format.temperature(range.low), format.temperature(range.high)];
  return low === high ? low : `${low} – ${high}`;
};

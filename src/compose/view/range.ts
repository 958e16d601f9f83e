import type { View } from './context.js';

/** Two temperatures, °C, as the reader wants them, with a dash between; one that is both once; a dash for none. */
export const formatRange = ({ format }: View, range: { low: number; high: number } | undefined): string => {
  if (range === undefined) return '–';
  const [low, high] = [format.temperature(range.low), format.temperature(range.high)];
  return low === high ? low : `${low} – ${high}`;
};

import type { View } from './context.js';

/** Two temperatures, °C, as the reader wants them, with a dash between; a dash alone where there are none. */
export const rangeWords = ({ format }: View, range: { low: number; high: number } | undefined): string =>
  range === undefined ? '–' : `${format.temperature(range.low)} – ${format.temperature(range.high)}`;

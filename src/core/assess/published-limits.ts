import { omitUndefined } from '../model/omit-undefined.js';
import type { FindingQuantity, PublishedLimit } from '../model/results.js';
import type { HumidityRange } from '../reference/company.js';
import type { SourcedRange } from '../reference/limits.js';
import type { PublishedValue } from '../reference/published-values.js';
import { printedAmount } from '../reference/value-cell.js';

const citationOf = ({ source, passage, ...cell }: PublishedValue) => ({
  source: source.name,
  printed: printedAmount(cell),
  passage,
  secondary: source.status === 'secondary',
});

/** A sourced temperature as results hold it, °C. */
export const publishedLimit = ({ low, high, value }: SourcedRange): PublishedLimit => ({
  ...omitUndefined({ low, high }),
  ...citationOf(value),
});

/** Sourced temperatures as a fact of a finding. */
export const publishedTemperatures = (
  ranges: readonly SourcedRange[],
): Extract<FindingQuantity, { is: 'published' }> => ({
  is: 'published',
  of: 'temperature',
  by: ranges.map(publishedLimit),
});

/** Sourced humidities as a fact of a finding. */
export const publishedHumidities = (
  ranges: readonly HumidityRange[],
): Extract<FindingQuantity, { is: 'published' }> => ({
  is: 'published',
  of: 'humidity',
  by: ranges.map(({ low, high, value }) => ({ low: low / 100, high: high / 100, ...citationOf(value) })),
});

/** Whether limits were taken from documents that retell their sources. */
export const isSecondary = (limits: readonly { secondary: boolean }[]) =>
  limits.some(({ secondary }) => secondary);

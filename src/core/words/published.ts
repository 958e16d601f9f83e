import type { FindingQuantity, PublishedLimit } from '../model/results.js';
import { fromCelsius } from '../model/temperature.js';
import type { Format } from './format.js';
import { NBSP } from './spaces.js';

type Published = Extract<FindingQuantity, { is: 'published' }>;

/** What each source says, sources that say the same together: `32 °F (UC Davis); 32–36 °F (New England guide)`. */
export function showPublished({ of, by }: Published, format: Format): string {
  const [written, unit] =
    of === 'temperature'
      ? [(value: number) => tenths(fromCelsius(value, format.unit), format), `${NBSP}${format.unit}`]
      : [(value: number) => tenths(value * 100, format), `${NBSP}%`];
  const sources = new Map<string, string[]>();
  for (const limit of by) {
    const amount = `${amountOf(limit, written)}${unit}`;
    const named = sources.get(amount) ?? [];
    if (!named.includes(limit.source)) sources.set(amount, [...named, limit.source]);
  }
  return [...sources].map(([amount, named]) => `${amount} (${named.join(', ')})`).join('; ');
}

function amountOf({ low, high }: PublishedLimit, written: (value: number) => string): string {
  if (low === undefined) return high === undefined ? '' : `≤${NBSP}${written(high)}`;
  if (high === undefined) return `≥${NBSP}${written(low)}`;
  const [from, to] = [written(low), written(high)];
  return from === to ? from : `${from}–${to}`;
}

/** To a tenth, and without it where it is nought: publications print whole degrees. */
function tenths(value: number, { number }: Format): string {
  const rounded = Math.round(value * 10) / 10;
  return number(rounded, Number.isInteger(rounded) ? 0 : 1);
}

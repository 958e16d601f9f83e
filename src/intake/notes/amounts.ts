import { parseTradeQuantity } from '../../core/model/quantity.js';
import { parseTemperature } from '../../core/model/temperature.js';
import type { WordReading } from './word-reading.js';

/** `8 pallets`, or `24cartons`. */
export function quantityAt(words: readonly string[], at: number): WordReading | undefined {
  for (const length of [2, 1]) {
    const text = words.slice(at, at + length).join(' ');
    if (words.length >= at + length && parseTradeQuantity(text) !== undefined)
      return { field: 'word', text, length };
  }
  return undefined;
}

/** `34.2F`, `34.2 °F`, or a bare number, which is rejected later with the choices. */
export function temperatureAt(
  words: readonly string[],
  at: number,
): { text: string; length: number } | undefined {
  const word = words[at] ?? '';
  const both = `${word} ${words[at + 1] ?? ''}`;
  if (/^\S+ °?[CF]$/i.test(both) && parseTemperature(both) !== undefined) return { text: both, length: 2 };
  if (/^[+\-−]?\d+(?:[.,]\d+)?°?(?:[CF])?$/i.test(word)) return { text: word, length: 1 };
  return undefined;
}

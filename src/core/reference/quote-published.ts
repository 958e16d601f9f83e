import { omitUndefined } from '../model/omit-undefined.js';
import type { Goods } from './goods.js';
import type { PublishedValue } from './published-values.js';
import { loadQuotations } from './quotations.js';
import { celsiusRange, type Quantity, type TemperatureRange } from './value-cell.js';
import { whatIsPublished } from './what-is-published.js';

/** A published value with the sentence or table cell it stands in, and as °C where it is a temperature. */
export interface QuotedValue extends PublishedValue {
  quotation: string;
  celsius?: TemperatureRange;
}

/** Everything published on some goods, quoted. */
export interface QuotedGoods {
  goods: Goods;
  quantities: { quantity: Quantity; values: QuotedValue[] }[];
}

/**
 * What is published on the goods of this name, English or Spanish, by whom, and in which words. Undefined when the
 * library lacks the goods: no nearest match is guessed.
 */
export async function quotePublished(name: string): Promise<QuotedGoods | undefined> {
  const found = whatIsPublished(name);
  if (found === undefined) return undefined;
  const quotations = await loadQuotations();
  return {
    goods: found.goods,
    quantities: found.quantities.map(({ quantity, values }) => ({
      quantity,
      values: values.map((value) => ({
        ...value,
        quotation: quotations.get(value.passage) ?? '',
        ...omitUndefined({ celsius: celsiusRange(value) }),
      })),
    })),
  };
}

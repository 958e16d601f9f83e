import { findGoods, type Goods } from './goods.js';
import { type PublishedValue, valuesOn } from './published-values.js';
import type { Quantity } from './value-cell.js';

/** Everything published on some goods, quantity by quantity, as a person asks for it. */
export interface PublishedOnGoods {
  goods: Goods;
  quantities: { quantity: Quantity; values: readonly PublishedValue[] }[];
}

/** The order in which a reader needs the quantities. */
const ORDER: readonly Quantity[] = [
  'transport',
  'storage-or-transport',
  'storage',
  'deviation',
  'freezing',
  'chilling',
  'chilling-band',
  'humidity',
  'life',
  'ethylene-production',
  'ethylene-sensitivity',
  'top-ice',
  'respiration',
  'specific-heat',
];

/**
 * What is published on the goods of this name, English or Spanish, and by whom: every value with its source, read ones
 * first, general ones before those of a cultivar, a ripeness or a time. Undefined when the library lacks the goods.
 */
export function whatIsPublished(name: string): PublishedOnGoods | undefined {
  const goods = findGoods(name);
  if (goods === undefined) return undefined;
  const all = [...valuesOn(goods.key)].sort((a, b) => rank(a) - rank(b));
  return {
    goods,
    quantities: ORDER.flatMap((quantity) => {
      const values = all.filter((value) => value.quantity === quantity);
      return values.length === 0 ? [] : [{ quantity, values }];
    }),
  };
}

const rank = ({ source, only }: PublishedValue) =>
  (source.status === 'secondary' ? 2 : 0) + (only === undefined ? 0 : 1);

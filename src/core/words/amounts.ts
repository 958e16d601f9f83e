import type { FindingQuantity } from '../model/results.js';
import type { Format } from './format.js';
import type { Labels } from './labels.js';
import { NBSP } from './spaces.js';

/** So much of the goods, of so many where that is known. */
export type Amount = Omit<Extract<FindingQuantity, { is: 'amount' }>, 'is'>;

/** `8 pallets`, `1 pallet`, or `8 of 18 pallets`: the noun agrees with the last number. */
export function formatAmount(
  labels: Labels,
  format: Pick<Format, 'number'>,
  { value, unit, of }: Amount,
): string {
  const number = (count: number) => format.number(count, Number.isInteger(count) ? 0 : 2);
  const counted = of ?? value;
  const noun = labels(counted === 1 ? `quantity-one.${unit}` : `quantity-unit.${unit}`);
  const count = of === undefined ? number(value) : `${number(value)} ${labels('quantity.of')} ${number(of)}`;
  return `${count}${NBSP}${noun}`;
}

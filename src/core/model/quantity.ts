/** How much of the goods: a number as written, and what is counted or weighed. */
import { z } from 'zod';

export const writtenAmount = z
  .string()
  .regex(/^\d{1,9}(\.\d{1,3})?$/, { error: 'at most nine digits and three decimals, such as 876 or 12.5' });

/** What goods are counted or weighed in. A case is no carton here: what a person counts is kept as it was said. */
export const tradeUnit = z.enum([
  'pallets',
  'cartons',
  'cases',
  'boxes',
  'crates',
  'bins',
  'totes',
  'lugs',
  'flats',
  'trays',
  'bags',
  'sacks',
  'pieces',
  'lb',
  'kg',
]);
/** A unit in which the trade counts or weighs goods. */
export type TradeUnit = z.infer<typeof tradeUnit>;

export const tradeQuantity = z.strictObject({ amount: writtenAmount, unit: tradeUnit });
/** So many pallets, cartons, pounds … of goods. */
export type TradeQuantity = z.infer<typeof tradeQuantity>;

/** `12.5` is 12 500 thousandths: amounts are added and compared as whole numbers. */
export function thousandths(written: string): number {
  const [whole = '0', parts = ''] = written.split('.');
  return Number(whole) * 1000 + Number(parts.padEnd(3, '0'));
}

/** Other words for a unit, as people type them. */
const SYNONYMS: Readonly<Record<string, TradeUnit>> = {
  pallet: 'pallets',
  plt: 'pallets',
  plts: 'pallets',
  skid: 'pallets',
  skids: 'pallets',
  carton: 'cartons',
  ctn: 'cartons',
  ctns: 'cartons',
  case: 'cases',
  cs: 'cases',
  box: 'boxes',
  crate: 'crates',
  bin: 'bins',
  tote: 'totes',
  lug: 'lugs',
  flat: 'flats',
  tray: 'trays',
  bag: 'bags',
  sack: 'sacks',
  piece: 'pieces',
  pcs: 'pieces',
  pound: 'lb',
  pounds: 'lb',
  lbs: 'lb',
  kilo: 'kg',
  kilos: 'kg',
  kgs: 'kg',
};

/** The unit that a typed word stands for, in any case. */
function tradeUnitNamed(word: string): TradeUnit | undefined {
  const plain = word.toLowerCase().replace(/\.$/, '');
  return tradeUnit.options.find((unit) => unit === plain) ?? SYNONYMS[plain];
}

/** `8 pallets`, `24 ctns`, `1,200 lb`, `12.5kg`; undefined for anything else. */
export function parseTradeQuantity(text: string): TradeQuantity | undefined {
  const [, number = '', word = ''] = /^\s*([\d,]+(?:\.\d{1,3})?)\s*([a-z]+\.?)\s*$/i.exec(text) ?? [];
  const plain = /^\d{1,3}(,\d{3})+(\.|$)/.test(number) ? number.replaceAll(',', '') : number;
  const unit = tradeUnitNamed(word);
  const read = writtenAmount.safeParse(plain);
  return unit === undefined || !read.success || thousandths(read.data) === 0
    ? undefined
    : { amount: read.data, unit };
}

import { z } from 'zod';
import { CURRENCY_DECIMALS } from './currencies.js';

/** A currency by its ISO 4217 code. */
export const currency = z
  .string()
  .refine((code) => CURRENCY_DECIMALS.has(code), {
    error: 'use a currency by its three letters, such as USD',
  })
  .transform((code) => code as Currency);
export type Currency = string & z.$brand<'Currency'>;

/** An amount as it is written on paper: decimal digits, never a binary fraction. */
export const money = z
  .strictObject({
    amount: z.string().regex(/^\d{1,10}(\.\d{1,2})?$/, { error: 'write an amount such as 12480.50' }),
    currency,
  })
  .meta({
    id: 'Money',
    description: 'An amount of money as a decimal number, with its currency (ISO 4217).',
  });
export type Money = z.infer<typeof money>;

/** Whole hundredths of the currency's unit: exact, since an amount has at most 10 digits and two decimals. */
export type Hundredths = number & z.$brand<'Hundredths'>;

/** The amount in hundredths of its unit: 12480.5 USD is 1 248 050. */
export function hundredths({ amount }: Money): Hundredths {
  const [units = '0', parts = ''] = amount.split('.');
  return (Number(units) * 100 + Number(parts.padEnd(2, '0'))) as Hundredths;
}

const WRITTEN = /^\s*(?:([A-Z]{3})\s*)?[$€£]?\s*([\d][\d,. ]*)\s*(?:([A-Z]{3}))?\s*$/;

/**
 * Reads `12480.50 USD`, `USD 12,480.50`, `$12,480 USD`, `1.250,75 EUR`; undefined when the currency's code is not
 * there, since $ alone is the sign of many, or when the digits could be meant in two ways (`1,250 EUR` is not: a
 * group of three digits behind one separator is thousands).
 */
export function parseMoney(text: string): Money | undefined {
  const match = WRITTEN.exec(text);
  const [, before, digits = '', behind] = match ?? [];
  const code = before ?? behind;
  if (code === undefined || (before !== undefined && behind !== undefined && before !== behind))
    return undefined;
  const plain = digits.replaceAll(' ', '');
  const parts = /^(\d{1,3}(?:([.,])\d{3})+|\d+)(?:([.,])(\d{1,2}))?$/.exec(plain);
  if (parts === null) return undefined;
  const [, whole = '', group, decimal, fraction] = parts;
  if (group !== undefined && group === decimal) return undefined;
  const amount = `${whole.replace(/[.,]/g, '')}${fraction === undefined ? '' : `.${fraction}`}`;
  const read = money.safeParse({ amount, currency: code });
  return read.success ? read.data : undefined;
}

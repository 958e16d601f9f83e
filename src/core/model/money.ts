import { z } from 'zod';
import { CURRENCY_DECIMALS } from './currencies.js';

/** A currency by its ISO 4217 code. */
export const currency = z
  .string()
  .refine((code) => CURRENCY_DECIMALS.has(code), {
    error: 'use a currency by its three letters, such as USD',
  })
  .transform((code) => code as Currency);
/** Three letters of ISO 4217. */
export type Currency = string & z.$brand<'Currency'>;

/** Decimals of the currency's minor unit. */
const decimalsOf = (code: string): number => CURRENCY_DECIMALS.get(code) ?? 2;
/** Decimals that an amount may be written with: prices of currencies without a minor unit have cents all the same. */
const writtenDecimals = (code: string): number => Math.max(2, decimalsOf(code));

/** An amount as it is written on paper: decimal digits, never a binary fraction. */
export const money = z
  .strictObject({
    amount: z.string().regex(/^\d{1,10}(\.\d{1,3})?$/, { error: 'write an amount such as 12480.50' }),
    currency,
  })
  .refine(({ amount, currency: code }) => fractionOf(amount).length <= writtenDecimals(code), {
    path: ['amount'],
    error: 'the currency has fewer decimals; write an amount such as 12480.50',
  })
  .meta({
    id: 'Money',
    description: 'An amount of money as a decimal number, with its currency (ISO 4217).',
  });
/** An amount as it is written on paper, with its currency. */
export type Money = z.infer<typeof money>;

const fractionOf = (amount: string): string => amount.split('.')[1] ?? '';

/**
 * Whole hundredths of the currency's unit, or thousandths where its minor unit is one: exact, since an amount has at
 * most ten digits and three decimals.
 */
export type MinorUnits = number & z.$brand<'MinorUnits'>;

/** How many minor units make one of the currency. */
export const unitsPerOne = (code: string): number => (writtenDecimals(code) === 3 ? 1000 : 100);

/** The smallest amount that is paid in a currency, in minor units: a hundred for those without decimals. */
export const leastPayment = (code: string): number => (decimalsOf(code) === 0 ? 100 : 1);

/** The amount in minor units: 12480.5 USD is 1 248 050, 1.25 KWD is 1250. */
export function minorUnits({ amount, currency: code }: Money): MinorUnits {
  const [ones = '0', parts = ''] = amount.split('.');
  return (Number(ones) * unitsPerOne(code) + Number(parts.padEnd(writtenDecimals(code), '0'))) as MinorUnits;
}

/** Decimals that minor units are shown with: those of the currency, and more where there are any. */
export const shownDecimals = (minor: number, code: string): number =>
  minor % leastPayment(code) === 0 ? decimalsOf(code) : writtenDecimals(code);

const WRITTEN =
  /^\s*(?:([A-Z]{3})\s*)?((?:US|CA?|AU?|MX)?[$]|[€£¥])?\s*([\d][\d,. ]*?)\s*([$€£¥])?\s*(?:([A-Z]{3}))?\s*$/;

/** Signs, and the currencies that they are written for: one that is of many stands for the usual one among them. */
const SIGNS: Readonly<Record<string, readonly string[]>> = {
  US$: ['USD'],
  C$: ['CAD'],
  CA$: ['CAD'],
  A$: ['AUD'],
  AU$: ['AUD'],
  MX$: ['MXN'],
  '€': ['EUR'],
  $: 'USD CAD MXN AUD NZD SGD HKD TWD CLP COP ARS DOP BBD BSD BZD JMD TTD XCD FJD NAD'.split(' '),
  '£': ['GBP', 'EGP', 'GIP', 'FKP', 'SHP'],
  '¥': ['JPY', 'CNY'],
};

/** The code that is written, else the one that the sign alone or the usual currency of the delivery leaves. */
function codeOf(sign: string | undefined, code: string | undefined, usual: string | undefined) {
  const by = sign === undefined ? undefined : (SIGNS[sign.toUpperCase()] ?? []);
  const [only, other] = by ?? [];
  const meant = code ?? (other === undefined ? only : undefined) ?? usual;
  return meant !== undefined && (by === undefined || by.includes(meant)) ? meant : undefined;
}

/**
 * Reads `12480.50 USD`, `USD 12,480.50`, `$12,480 USD`, `1.250,75 EUR`, and where the delivery has a usual currency
 * also `$11.00` and `9504`. Undefined when nothing says the currency, since $ alone is the sign of many, when the sign is
 * not of it, when the currency has no such decimals, or when the digits could be meant in two ways. `1,250 EUR` could not: a group of three digits behind one separator is thousands. `1,250 KWD` could, since
 * a dinar has three decimals.
 */
export function parseMoney(text: string, usual?: Currency): Money | undefined {
  const match = WRITTEN.exec(text);
  const [, before, signBefore, digits = '', signBehind, behind] = match ?? [];
  if (signBefore !== undefined && signBehind !== undefined) return undefined;
  if (before !== undefined && behind !== undefined && before !== behind) return undefined;
  const code = match === null ? undefined : codeOf(signBefore ?? signBehind, before ?? behind, usual);
  if (code === undefined) return undefined;
  const plain = digits.replaceAll(' ', '');
  if (decimalsOf(code) === 3 && /^[1-9]\d{0,2}[.,]\d{3}$/.test(plain)) return undefined;
  const parts =
    /^(0)()([.,])(\d{1,3})$/.exec(plain) ??
    /^(\d{1,3}([.,])\d{3}(?:\2\d{3})*|\d+)(?:([.,])(\d{1,3}))?$/.exec(plain);
  if (parts === null) return undefined;
  const [, whole = '', group, decimal, fraction = ''] = parts;
  if (group !== undefined && group === decimal) return undefined;
  if (/[1-9]/.test(fraction.slice(decimalsOf(code)))) return undefined;
  const amount = `${whole.replace(/[.,]/g, '')}${fraction === '' ? '' : `.${fraction}`}`;
  const read = money.safeParse({ amount, currency: code });
  return read.success ? read.data : undefined;
}

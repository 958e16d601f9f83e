import { z } from 'zod';
import { DossierError } from '../../core/model/error.js';
import { type Currency, type Money, parseMoney } from '../../core/model/money.js';
import { parseTradeQuantity, tradeUnit } from '../../core/model/quantity.js';
import { roleOf } from '../../intake/roles.js';
import { unknownWord } from '../typed/place-options.js';

const text = z.string().optional();
const words = z.array(z.string()).default([]);
/** Options of `dossier record claim`, as typed. */
export const claimOptions = z.object({
  claim: text,
  zone: text,
  on: text,
  paper: words,
  note: text,
  correct: text,
  as: text,
  address: text,
  number: text,
  ourNumber: text,
  amount: text,
  ground: words,
  alsoFiledWith: words,
  form: text,
  made: text,
  says: words,
  lacks: words,
  span: text,
  way: text,
  with: text,
  by: text,
  firm: z.boolean().default(false),
  inWriting: z.boolean().default(false),
  part: text,
  reason: words,
  item: words,
  to: text,
  onBehalf: z.boolean().default(false),
  sent: text,
  receiptNoted: z.boolean().default(false),
  measure: text,
  total: text,
  each: text,
  quantity: text,
  line: text,
  saidBy: text,
});
export type ClaimOptions = z.infer<typeof claimOptions>;

/**
 * Contents of 49 CFR 370.3(b) that the letter states and lacks. Throws DossierError `bad-value` for an unknown
 * part.
 */
export function claimContentsOf({ says, lacks, made }: ClaimOptions) {
  const parts = ['shipment', 'liability', 'amount', 'amount-to-work-out'];
  for (const [option, list] of [
    ['says', says],
    ['lacks', lacks],
  ] as const)
    for (const part of list) choice('part of a claim', part, parts, `--${option}`);
  const flag = (part: string) => (says.includes(part) ? true : lacks.includes(part) ? false : undefined);
  const asked = says.includes('amount')
    ? 'stated'
    : says.includes('amount-to-work-out')
      ? 'can-be-worked-out'
      : lacks.includes('amount')
        ? 'none'
        : undefined;
  return { shipment: flag('shipment'), liability: flag('liability'), amount: asked, form: made };
}

/**
 * A total, or a unit price with its quantity; a unit alone leaves the quantity to the claim’s entries or the outcomes. Throws DossierError
 * `bad-value` for both or neither.
 */
export function parseWorth({ total, each, quantity }: ClaimOptions, usual: Currency | undefined) {
  if ((total === undefined) === (each === undefined))
    throw new DossierError('bad-value', 'say the whole, or so much each', {
      where: { field: total === undefined ? '--total' : '--each' },
      fix: 'Such as --total "12480.50 USD", or --each "14.25 USD" --quantity "876 cartons".',
    });
  if (each !== undefined && quantity === undefined) requireText(quantity, '--quantity', 'how many');
  const unit = each === undefined ? undefined : parseTradeQuantity(`1 ${quantity}`)?.unit;
  return {
    total: parseMoneyOption('--total', total, usual),
    each: parseMoneyOption('--each', each, usual),
    ...(unit !== undefined ? { unit } : quantity === undefined ? {} : parseQuantity(quantity)),
  };
}

/** Parses `876 cartons`. Throws DossierError `bad-value`. */
export function parseQuantity(said: string) {
  const read = parseTradeQuantity(said);
  if (read === undefined)
    throw new DossierError('bad-value', `"${said}" is not a quantity with its unit`, {
      where: { field: '--quantity' },
      fix: `Write it like "876 cartons"; units are ${tradeUnit.options.join(', ')}.`,
    });
  return { quantity: read.amount, unit: read.unit };
}

/** Parses `45 days`, `10 working-days`. Throws DossierError `bad-value`. */
export function parseSpan(said: string | undefined) {
  const [, count, unit = ''] =
    /^\s*(\d+)\s*([a-z -]+?)\s*$/i.exec(requireText(said, '--span', 'how long it runs')) ?? [];
  if (count === undefined)
    throw new DossierError('bad-value', `"${said}" is not a span of time`, {
      where: { field: '--span' },
      fix: 'Write it like "45 days", "10 working-days", "9 months", "24 hours".',
    });
  const plural = unit.toLowerCase().replace(' ', '-').replace(/s?$/, 's');
  return { count: Number(count), unit: plural };
}

/** Parses `romaine: warm when it was loaded`. Throws DossierError `bad-value`. */
export function parseItemReason(said: string): { item: string; reason: string } {
  const [, item = '', reason = ''] = /^([^:]+):(.+)$/s.exec(said) ?? [];
  if (item.trim() !== '' && reason.trim() !== '') return { item: item.trim(), reason: reason.trim() };
  throw new DossierError('bad-value', `"${said}" does not say what is declined and why`, {
    where: { field: '--item' },
    fix: 'Write the item, a colon and the reason, such as --item "salvage-cost: no account of the sale".',
  });
}

/**
 * Parses `12480.50 USD`, and `$11.00` where the delivery has a usual currency; undefined for undefined. Throws
 * DossierError `bad-value` with the option.
 */
export function parseMoneyOption(
  field: string,
  said: string | undefined,
  usual: Currency | undefined,
): Money | undefined {
  if (said === undefined) return undefined;
  const read = parseMoney(said, usual);
  if (read !== undefined) return read;
  throw new DossierError('bad-value', `"${said}" is not an amount with its currency`, {
    where: { field },
    fix:
      usual === undefined
        ? 'Write it like "12480.50 USD", since $ is the sign of several; a line "currency: USD" in delivery.yaml says it once for all.'
        : `Write it like "12480.50" for ${usual}, or with another currency by its three letters.`,
  });
}
export const amount = (word: string | undefined, usual: Currency | undefined) =>
  parseMoneyOption('amount', requireText(word, 'amount', 'how much'), usual);

/** Parses the number of an entry. Throws DossierError `bad-value`. */
export function entryNumber(said: string): number {
  const number = Number(said);
  if (Number.isInteger(number) && number > 0) return number;
  throw new DossierError('bad-value', `"${said}" is not the number of an entry`, {
    where: { field: '--correct' },
    fix: 'dossier trail lists the entries with their numbers.',
  });
}

/** One of the known words. `field` is the option or argument that it was given as. */
export function choice<T extends string>(what: string, said: string, known: readonly T[], field = what): T {
  const found = known.find((one) => one === said.trim().toLowerCase());
  if (found === undefined) throw unknownWord(what, said, known, field);
  return found;
}

/** The same for the parts that others play: `consignee` is the receiver. */
export const role = <T extends string>(said: string, known: readonly T[], field: string): T =>
  roleOf(said, known) ?? choice('role', said, known, field);

/** Text that may not be missing or blank. Throws DossierError `bad-value`. */
export function requireText(said: string | undefined, field: string, what: string): string {
  if (said !== undefined && said.trim() !== '') return said;
  throw new DossierError('bad-value', `it is not said ${what}`, {
    where: { field },
    fix: `Add ${field.startsWith('--') ? field : 'it'}; examples are in: dossier record claim --help`,
  });
}

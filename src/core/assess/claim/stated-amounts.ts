import type { AmountItem } from '../../model/claim.js';
import { type Currency, leastPayment, type Money, minorUnits } from '../../model/money.js';
import { thousandths } from '../../model/quantity.js';
import type { AmountWorksheet } from '../../model/results.js';
import type { ClaimEntry, ClaimEntryOf } from '../../model/state.js';
import {
  type Figure,
  type FiguresByScope,
  plus,
  type Sum,
  sortedSeqs,
  spanning,
  WHOLE_CLAIM,
} from './figures.js';
import { lostQuantity, type Thousandths } from './quantities.js';

export type AmountNote = AmountWorksheet['notes'][number];
export type AmountEntry = ClaimEntryOf<'amount'>;

/**
 * Money that changed hands is stated in parts: amounts from one source add up. The other items are opinions of a
 * value: several amounts from one source, such as the two ends of a market report, are accounts of the same value.
 */
const PARTS: ReadonlySet<AmountItem> = new Set([
  'invoice-value',
  'salvage',
  'salvage-cost',
  'refunds',
  'freight-paid',
  'freight-due',
  'carriage-charges',
  'credit',
  'mitigation-cost',
  'inspection-cost',
  'disposal-cost',
]);
/** Items that include short goods: they never arrived, so that they brought no proceeds. */
const WITH_SHORT: ReadonlySet<AmountItem> = new Set([
  'market-value',
  'origin-value',
  'invoice-value',
  'agreed-value',
  'freight-paid',
  'freight-due',
  'carriage-charges',
  'released-value',
]);
/** Larger entries are typing errors, and sums would no longer be exact. Minor units. */
const LARGEST = 1e13;

/**
 * Unit price times a quantity in thousandths: rounded to the least that is paid in the currency, half up, with the
 * rounding. Undefined when the product is too large for exact sums.
 */
export function multiply(each: Money, quantity: number): Sum | undefined {
  const exact = BigInt(minorUnits(each)) * BigInt(quantity);
  const least = BigInt(leastPayment(each.currency));
  const value = ((exact + 500n * least) / (1000n * least)) * least;
  if (value > BigInt(LARGEST)) return undefined;
  return { value: Number(value), off: Number(value * 1000n - exact) };
}

/** Documented amounts of each item, and why some stated amounts are not in the sum. */
export interface StatedAmounts {
  of: (item: AmountItem) => FiguresByScope;
  notes: AmountNote[];
}

/**
 * Reads the current entries of one claim, in order; amounts in other currencies than `code` are noted, not
 * converted.
 */
export function statedAmounts(entries: readonly ClaimEntry[], code: Currency): StatedAmounts {
  const notes: AmountNote[] = [];
  const groups = new Map<AmountItem, Map<string, Map<string, Figure>>>();
  for (const entry of entries) {
    if (entry.is !== 'amount') continue;
    const figure = figureOf(entry, entries, code, notes);
    if (figure === undefined) continue;
    const scopes = groups.get(entry.item) ?? new Map<string, Map<string, Figure>>();
    const scope = entry.line ?? WHOLE_CLAIM;
    const sayers = scopes.get(scope) ?? new Map<string, Figure>();
    const before = sayers.get(entry.saidBy);
    const join = PARTS.has(entry.item) ? plus : spanning;
    sayers.set(entry.saidBy, before === undefined ? figure : join(before, figure));
    groups.set(entry.item, scopes.set(scope, sayers));
  }
  const scoped = new Map<AmountItem, FiguresByScope>();
  for (const [item, scopes] of groups) {
    const figures = new Map<string, Figure>();
    for (const [scope, sayers] of scopes) {
      const said = [...sayers.values()];
      const figure = said.reduce(spanning);
      if (figure.low.value !== figure.high.value)
        notes.push({ is: 'disagree', seqs: sortedSeqs(figure.seqs), detail: item });
      figures.set(scope, figure);
    }
    scoped.set(item, figures);
  }
  return { of: (item) => scoped.get(item) ?? new Map(), notes };
}

/** The value of one entry, or a note that says why it is not in the sum. */
function figureOf(
  entry: AmountEntry,
  entries: readonly ClaimEntry[],
  code: Currency,
  notes: AmountNote[],
): Figure | undefined {
  const { seq, item, total, each, quantity } = entry;
  const out = (is: AmountNote['is'], detail: string = item) => {
    notes.push({ is, seqs: [seq], detail });
    return undefined;
  };
  const money = total ?? each;
  if (money === undefined) return out('quantity-unknown');
  if (money.currency !== code) return out('other-currency', money.currency);
  if (entry.evidence.length === 0) return out('no-paper');
  const lost = lostQuantity(entries, { line: entry.line, unit: entry.unit, short: WITH_SHORT.has(item) });
  const own = quantity === undefined ? undefined : thousandths(quantity);
  if (
    own !== undefined &&
    lost !== undefined &&
    own > lost.high &&
    /^(market|origin|invoice|agreed)-value$/.test(item)
  )
    notes.push({ is: 'disagree', seqs: sortedSeqs([seq, ...lost.seqs]), detail: 'quantity' });
  if (total !== undefined) {
    const value = minorUnits(total);
    const product = each?.currency !== code || own === undefined ? undefined : multiply(each, own);
    if (product !== undefined && product.value !== value) out('disagree');
    return { low: { value, off: 0 }, high: { value, off: 0 }, seqs: [seq] };
  }
  const count: Thousandths | undefined = own === undefined ? lost : { low: own, high: own, seqs: [] };
  const [low, high] = count === undefined ? [] : [multiply(money, count.low), multiply(money, count.high)];
  if (count === undefined || low === undefined || high === undefined) return out('quantity-unknown');
  if (count.overlap) notes.push({ is: 'counted-once', seqs: count.seqs, detail: 'rejected-and-damaged' });
  return { low, high, seqs: sortedSeqs([seq, ...count.seqs]) };
}

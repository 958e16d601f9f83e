import type { AmountItem, Governing, ValueMeasure } from '../../model/claim.js';
import type { ClaimEntry } from '../../model/state.js';
import { type Combined, combined, type FiguresByScope, total, WHOLE_CLAIM } from './figures.js';
import type { AmountNote, StatedAmounts } from './stated-amounts.js';
import { entriesOf, termsOf } from './terms.js';

/** How the goods are valued, and what says so. */
export interface Valuation {
  measure: ValueMeasure;
  /** `contract`: the stated terms have a measure of their own. */
  by: 'law' | 'contract';
  governs: Governing;
}

/**
 * The measure of value by what governs: under the CMR the value at the place and time of acceptance for carriage
 * (article 23(1), 25(1)); else the market value at destination at the time when the goods should have been delivered
 * (253 U.S. 97). A measure that the stated terms agree on goes first, but under the CMR: whether a contract may depart
 * from its article 23 was not read.
 */
export function valuationOf(entries: readonly ClaimEntry[]): Valuation {
  const { governs } = termsOf({ entries });
  if (governs === 'cmr') return { measure: 'origin-value', by: 'law', governs };
  const agreed = entriesOf({ entries }, 'terms').findLast(({ measure }) => measure !== undefined)?.measure;
  return agreed === undefined
    ? { measure: 'destination-value', by: 'law', governs }
    : { measure: agreed, by: 'contract', governs };
}

/** What a sound value rests on, which decides how freight is treated; `mixed` where lines differ. */
export type Basis = 'market' | 'invoice' | 'agreed' | 'mixed';

export interface SoundValue {
  scoped: FiguresByScope;
  found: Combined;
  basis: Basis;
  notes: AmountNote[];
  invoiceStandsIn?: 'all' | 'some';
}

const ITEM: Readonly<Record<ValueMeasure, AmountItem>> = {
  'destination-value': 'market-value',
  'origin-value': 'origin-value',
  'invoice-value': 'invoice-value',
  'agreed-value': 'agreed-value',
};
const BASIS: Readonly<Record<ValueMeasure, Basis>> = {
  'destination-value': 'market',
  // A value at origin does not hold the freight, as an invoice at origin does not.
  'origin-value': 'invoice',
  'invoice-value': 'invoice',
  'agreed-value': 'agreed',
};

/**
 * The sound value by a measure: what documents state of it, else the invoice where the measure is a value at
 * destination or at origin. Values by another measure stay beside it. Undefined when nothing states it.
 */
export function soundValue(
  stated: StatedAmounts,
  lines: ReadonlySet<string>,
  measure: ValueMeasure,
): SoundValue | undefined {
  const own = stated.of(ITEM[measure]);
  const standsIn = measure === 'destination-value' || measure === 'origin-value';
  const invoice: FiguresByScope = standsIn ? stated.of('invoice-value') : new Map();
  const valued = combined(own, lines);
  const billed = combined(invoice, lines);
  const beside = Object.values(ITEM).filter(
    (item) => item !== ITEM[measure] && !(standsIn && item === 'invoice-value'),
  );
  const others = beside.flatMap((item) => [...stated.of(item).values()].flatMap(({ seqs }) => [...seqs]));
  const notes = others.length === 0 ? [] : [once(others, 'not-the-measure')];
  const detail = measure === 'origin-value' ? 'origin' : 'market';
  const basis = BASIS[measure];
  if (valued?.all || (valued !== undefined && billed === undefined)) {
    if (billed !== undefined)
      notes.push(once(billed.beside ?? billed.figure.seqs, `invoice-beside-${detail}`));
    return { scoped: own, found: valued, basis, notes };
  }
  if (billed === undefined) return undefined;
  const asOrigin = measure === 'origin-value' ? [once(billed.figure.seqs, 'invoice-as-origin')] : [];
  if (valued === undefined)
    return {
      ...{ scoped: invoice, found: billed, basis: 'invoice', notes: [...notes, ...asOrigin] },
      invoiceStandsIn: 'all',
    };
  if (invoice.has(WHOLE_CLAIM)) {
    notes.push(once(valued.figure.seqs, `${detail}-of-some-lines`), ...asOrigin);
    return { scoped: invoice, found: billed, basis: 'invoice', notes, invoiceStandsIn: 'all' };
  }
  const chosen = new Map([...invoice, ...own]);
  const unused = [...invoice].filter(([line]) => own.has(line)).flatMap(([, one]) => one.seqs);
  if (unused.length > 0) notes.push(once(unused, `invoice-beside-${detail}`));
  const mixed = basis === 'market' && [...invoice.keys()].some((line) => !own.has(line));
  return {
    scoped: chosen,
    found: { figure: total(chosen.values()), all: false },
    basis: mixed ? 'mixed' : basis,
    notes,
    ...([...invoice.keys()].some((line) => !own.has(line)) ? { invoiceStandsIn: 'some' as const } : {}),
  };
}

const once = (seqs: readonly number[], detail: string): AmountNote => ({
  is: 'counted-once',
  seqs: [...new Set(seqs)].sort((a, b) => a - b),
  detail,
});

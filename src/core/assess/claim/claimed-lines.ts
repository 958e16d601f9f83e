import type { AmountItem } from '../../model/claim.js';
import type { Finding, GapResult } from '../../model/results.js';
import type { ClaimEntry } from '../../model/state.js';
import { currentEntries } from './quantities.js';

/** Items of the goods themselves, not of freight or costs. */
const GOODS: ReadonlySet<AmountItem> = new Set([
  'market-value',
  'origin-value',
  'invoice-value',
  'agreed-value',
  'arrived-value',
  'salvage',
]);

/**
 * The lines that a claim concerns: those named by all its values and quantities of goods. Undefined when no entry
 * names a line, or a value is of the whole; then the claim concerns every line.
 */
export function claimedLines(entries: readonly ClaimEntry[]): ReadonlySet<string> | undefined {
  const named = currentEntries(entries).flatMap((one): (string | undefined)[] => {
    if (one.is === 'amount') return GOODS.has(one.item) ? [one.line] : [];
    return one.is === 'quantity' && ['rejected', 'damaged', 'short'].includes(one.state) ? [one.line] : [];
  });
  const lines = named.filter((line) => line !== undefined);
  return lines.length === 0 || lines.length < named.length ? undefined : new Set(lines);
}

/** Whether a finding concerns one of the lines, or no line in particular. */
export function findingAbout({ facts }: Finding, lines: ReadonlySet<string>): boolean {
  const named = Object.values(facts).flatMap((fact) =>
    typeof fact === 'object' && fact.is === 'line' ? [fact.line] : [],
  );
  return named.length === 0 || named.some((line) => lines.has(line));
}

/** Whether an unmet part of a requirement concerns one of the lines, or no line in particular. */
export function gapAbout({ parts }: GapResult, lines: ReadonlySet<string>): boolean {
  const open = (parts ?? []).filter(({ outcome }) => ['missing', 'short', 'contradicted'].includes(outcome));
  return open.length === 0 || open.some(({ line }) => line === undefined || lines.has(line));
}

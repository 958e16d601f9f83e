import type { AmountItem } from '../../model/claim.js';
import { assertNever } from '../../model/error.js';
import type { PositionPoint } from '../../model/results.js';
import type { ClaimEntry } from '../../model/state.js';
import type { FindingRelevance } from './finding-relevance.js';
import { currentEntries } from './quantities.js';

/** Worksheet items that increase the loss; the others reduce it. */
const LOSSES: ReadonlySet<AmountItem> = new Set([
  'market-value',
  'origin-value',
  'invoice-value',
  'agreed-value',
  'freight-paid',
  'carriage-charges',
  'salvage-cost',
  'refunds',
  'mitigation-cost',
  'inspection-cost',
  'disposal-cost',
]);

/** Without a documented entry for one of these items the claimed amount is unsupported. */
const VALUES: ReadonlySet<AmountItem> = new Set([
  'market-value',
  'origin-value',
  'invoice-value',
  'agreed-value',
]);

/**
 * What a claim's entries say about the amount and the condition at delivery. An undocumented amount proves nothing
 * yet. Offers and payments are no evidence: an offer to settle is no admission.
 */
export function statedPoints(
  entries: readonly ClaimEntry[],
): (FindingRelevance & { point: PositionPoint })[] {
  const all = currentEntries(entries);
  const valued = all.some((one) => one.is === 'amount' && VALUES.has(one.item) && one.evidence.length > 0);
  return all.flatMap((entry) => {
    const bearing = relevanceOfEntry(entry, valued);
    const point: PositionPoint = { from: { is: 'claim-entry', seq: entry.seq }, evidence: entry.evidence };
    return bearing === undefined ? [] : [{ ...bearing, point }];
  });
}

function relevanceOfEntry(entry: ClaimEntry, valued: boolean): FindingRelevance | undefined {
  switch (entry.is) {
    case 'received':
      return entry.amount === undefined || valued ? undefined : { element: 'damages', side: 'weak' };
    case 'amount':
      if (entry.evidence.length === 0) return { element: 'damages', side: 'weak' };
      return { element: 'damages', side: LOSSES.has(entry.item) ? 'againstCarrier' : 'forCarrier' };
    case 'quantity':
      if (entry.state === 'shipped') return undefined;
      if (entry.evidence.length === 0) return { element: 'condition-at-delivery', side: 'weak' };
      return {
        element: 'condition-at-delivery',
        side: entry.state === 'accepted' ? 'forCarrier' : 'againstCarrier',
      };
    case 'cause':
      return { element: entry.cause, side: 'forCarrier' };
    case 'terms':
    case 'clock-set':
    case 'letter':
    case 'offer':
    case 'payment':
    case 'declined':
    case 'admitted':
    case 'papers-returned':
    case 'closed':
    case 'answered':
      return undefined;
    default:
      return assertNever(entry);
  }
}

import type { ClaimId, ClaimNoteKind, Governing } from '../../model/claim.js';
import type { DeadlineRule } from '../../model/claim-deadlines.js';
import type { ClaimEntry, ClaimEntryOf, RecordState } from '../../model/state.js';
import { dayAt } from './calendar.js';

/**
 * Current entries of one claim: corrected entries, and entries dated later than the instant of assessment, are left
 * out.
 */
export interface ClaimEntries {
  claim: ClaimId;
  entries: readonly ClaimEntry[];
  received: ClaimEntryOf<'received'>;
}

const isOf =
  <K extends ClaimNoteKind>(kind: K) =>
  (entry: ClaimEntry): entry is ClaimEntryOf<K> =>
    entry.is === kind;

/** Current entries of one kind, in the order of the record. */
export function entriesOf<K extends ClaimNoteKind>(
  of: Pick<ClaimEntries, 'entries'>,
  kind: K,
): ClaimEntryOf<K>[] {
  return of.entries.filter(isOf(kind));
}

/** Whether an entry is dated after an instant, by the calendar of its own place. */
function isAhead(entry: ClaimEntry, now: number): boolean {
  const told = entry.is === 'received' ? entry.received : 'on' in entry ? entry.on : undefined;
  return told !== undefined && told.date > dayAt(now, told.zone).date;
}

/** The claims of a record at a moment (milliseconds since 1970 UTC), in the order received. */
export function claimsAt({ claims }: Pick<RecordState, 'claims'>, now: number): ClaimEntries[] {
  const standing = claims.filter((entry) => entry.replacedBy === undefined && !isAhead(entry, now));
  return standing.filter(isOf('received')).map((received) => ({
    claim: received.claim,
    received,
    entries: standing.filter(({ claim }) => claim === received.claim),
  }));
}

/** Governing terms by the last entry about them; unknown without one, never assumed. */
export function termsOf(claim: Pick<ClaimEntries, 'entries'>): {
  governs: Governing;
  terms?: ClaimEntryOf<'terms'>;
} {
  const terms = entriesOf(claim, 'terms').at(-1);
  return terms === undefined ? { governs: 'unknown' } : { governs: terms.governs, terms };
}

/** Whether a deadline applies under the governing terms; while those are unknown, under any of its candidates. */
export function appliesUnder(rule: Pick<DeadlineRule, 'governs'>, governs: Governing): boolean {
  return rule.governs.length === 0 || governs === 'unknown' || rule.governs.some((one) => one === governs);
}

/** The contract's own term for a deadline, from the last entry. */
export function contractTerm(claim: Pick<ClaimEntries, 'entries'>, clock: string) {
  return entriesOf(claim, 'clock-set').findLast((entry) => entry.clock === clock);
}

import type { ClaimId, ClaimNoteKind, Governing } from '../../model/claim.js';
import type { DeadlineRule } from '../../model/claim-deadlines.js';
import { omitUndefined } from '../../model/omit-undefined.js';
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

/** Terms of one family hold together; those of a bill hold beside those of a state or of the United States. */
const FAMILY: Readonly<Record<Exclude<Governing, 'unknown'>, 'us' | 'state' | 'cmr' | 'ca' | 'bill'>> = {
  'us-carriage-by-law': 'us',
  'us-carriage-by-contract': 'us',
  'us-carriage-by-bill': 'us',
  'us-carriage-waived': 'state',
  'state-law': 'state',
  cmr: 'cmr',
  'ca-uniform-conditions': 'ca',
  'uniform-bill': 'bill',
};

/** What governs a claim, as its entries state it. */
export interface GoverningTerms {
  governs: Governing;
  /** What holds beside it. */
  beside?: Governing[];
  /** Entries that can't hold together. */
  contradicts?: number[];
  terms?: ClaimEntryOf<'terms'>;
}

/**
 * Governing terms by the entries about them; unknown without one, never assumed. Entries that can't hold together leave
 * them unknown until one corrects another. An entry that says `unknown` takes back those before it.
 */
export function termsOf(claim: Pick<ClaimEntries, 'entries'>): GoverningTerms {
  const all = entriesOf(claim, 'terms');
  const said = all.slice(all.findLastIndex(({ governs }) => governs === 'unknown') + 1);
  const family = ({ governs }: ClaimEntryOf<'terms'>) =>
    governs === 'unknown' ? undefined : FAMILY[governs];
  const main = said.filter((one) => family(one) !== 'bill');
  const families = new Set(said.map(family));
  const bills = families.has('bill') && (families.has('cmr') || families.has('ca'));
  if (new Set(main.map(family)).size > 1 || bills)
    return { governs: 'unknown', contradicts: said.map(({ seq }) => seq) };
  const terms = main.at(-1) ?? said.at(-1) ?? all.at(-1);
  if (terms === undefined) return { governs: 'unknown' };
  const beside = [...new Set(said.map(({ governs }) => governs))].filter((one) => one !== terms.governs);
  return {
    governs: terms.governs,
    terms,
    ...omitUndefined({ beside: beside.length === 0 ? undefined : beside }),
  };
}

/**
 * Whether a deadline applies under the governing terms: while those are unknown, under any of its candidates; while
 * they contradict each other, only if it applies whatever governs.
 */
export function appliesUnder(
  rule: Pick<DeadlineRule, 'governs'>,
  { governs, beside = [], contradicts }: GoverningTerms,
): boolean {
  if (rule.governs.length === 0) return true;
  if (contradicts !== undefined) return false;
  return governs === 'unknown' || rule.governs.some((one) => one === governs || beside.includes(one));
}

/** The contract's own term for a deadline, from the last entry. */
export function contractTerm(claim: Pick<ClaimEntries, 'entries'>, clock: string) {
  return entriesOf(claim, 'clock-set').findLast((entry) => entry.clock === clock);
}

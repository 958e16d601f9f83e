import type { SupportingDocument } from '../../core/model/results.js';
import type { ClaimEntryOf } from '../../core/model/state.js';
import { escapeMarkdown } from '../../core/words/escape.js';
import { type Facts, MarkdownText } from '../../core/words/facts.js';
import { declinedItems } from './declined-items.js';
import type { LetterClaim, LetterInput } from './input.js';
import type { LetterView } from './view.js';

/** Entries of one kind that no later entry corrects, in the order of the ledger. */
function currentEntries<K extends LetterClaim['entries'][number]['is']>(
  claim: LetterClaim | undefined,
  kind: K,
): ClaimEntryOf<K>[] {
  return (claim?.entries ?? []).filter(
    (entry): entry is ClaimEntryOf<K> => entry.is === kind && entry.replacedBy === undefined,
  );
}

/** Facts of the claim for letters; absent without a claim. */
export function claimFacts(view: LetterView<LetterInput>): Facts {
  const { input, labels } = view;
  const { claim, amount, kind } = input;
  const received = currentEntries(claim, 'received').at(-1);
  const offer = currentEntries(claim, 'offer').findLast(({ by }) => by === 'carrier');
  const declined = currentEntries(claim, 'declined').at(-1);
  const acknowledged = currentEntries(claim, 'letter').find(
    ({ way, letter }) => way === 'sent' && letter === 'acknowledgement',
  );
  const papers = claim?.result?.papers;
  const lacks = (claim?.result?.contents ?? []).filter(({ state }) => state === 'not-said');
  const reasons = reasonsOf(view, declined);
  const missing = (papers ?? []).filter(({ have }) => have.length === 0);
  const ofOffer = kind === 'offer' ? (amount ?? offer?.amount) : undefined;
  const part = kind === 'denial' ? (amount ?? declined?.part) : undefined;
  const { items, itemsOpen } = declinedItems(view, claim?.entries ?? []);
  return {
    claim: received !== undefined,
    claimant: received?.claimant.name,
    ourNumber: received?.ourNumber,
    theirNumber: received?.theirNumber,
    receivedOn: received === undefined ? undefined : view.day(received.received),
    amount: received?.amount === undefined ? undefined : view.money(received.amount),
    claimRef: received === undefined ? undefined : view.source(received.evidence, received.seq),
    grounds: (received?.grounds ?? []).map(written),
    acknowledgedOn: acknowledged === undefined ? undefined : view.day(acknowledged.on),
    acknowledgedRef:
      acknowledged === undefined ? undefined : view.source(acknowledged.evidence, acknowledged.seq),
    papersKnown: papers !== undefined,
    papersMissing: missing.map((paper) => written(nameOf(paper))),
    papersHave: (papers ?? [])
      .filter(({ have }) => have.some((id) => view.number(id) !== undefined))
      .map((paper) => new MarkdownText(`${escapeMarkdown(nameOf(paper))}${view.source(paper.have)}`)),
    lacks: lacks.map(({ id }) => written(labels(`lacks.${id}`))),
    reasons,
    items,
    itemsOpen,
    anyItem: items.length + itemsOpen.length > 0,
    anyReason: reasons.length + items.length > 0,
    cmr: isUnderCmr(input),
    nextReport: nextReport(view),
    wanted: missing.length + lacks.length + reasons.length > 0,
    offer: ofOffer === undefined ? undefined : view.money(ofOffer),
    offerRef:
      amount === undefined && ofOffer !== undefined && offer !== undefined
        ? view.source(offer.evidence, offer.seq)
        : undefined,
    firm: input.firm || (amount === undefined && offer?.firm === true),
    disallowsRest: input.disallowsRest,
    part: part === undefined ? undefined : view.money(part),
  };

  function nameOf({ id }: SupportingDocument): string {
    return labels(`paper.${id}`);
  }
}

/**
 * Whether a letter has what the CMR asks: where it is stated to govern, and, while nobody has stated what does, where a
 * place of the delivery is in Europe.
 */
function isUnderCmr({ claim, state }: LetterInput): boolean {
  const governs = claim?.result?.governs ?? 'unknown';
  return (
    governs === 'cmr' ||
    (governs === 'unknown' && state.delivery.stops.some(({ zone }) => zone.startsWith('Europe/')))
  );
}

/** The day by which the next report of the status is due after this letter, where 49 CFR 370.9(a) governs. */
function nextReport({ input, day }: LetterView<LetterInput>): string | undefined {
  const { governs, clocks = [] } = input.claim?.result ?? {};
  if (governs?.startsWith('us-carriage-by') !== true) return undefined;
  const due = clocks.flatMap(({ id, due: at }) => (id === 'us-status' && at?.is === 'day' ? [at.day] : []));
  const next = due.find(({ date }) => date > input.day.date);
  return next === undefined ? undefined : day(next);
}

/** Reasons typed for this letter; for a denial without them, those of the record. */
function reasonsOf(
  view: LetterView<LetterInput>,
  declined: ClaimEntryOf<'declined'> | undefined,
): MarkdownText[] {
  const { kind, reasons, disallowsRest } = view.input;
  if (reasons.length > 0) return reasons.map(written);
  if (declined === undefined || !(kind === 'denial' || (kind === 'offer' && disallowsRest))) return [];
  const source = view.source(declined.evidence, declined.seq);
  return declined.reasons.map(
    (reason) => new MarkdownText(`${escapeMarkdown(reason.replace(/\.$/, ''))}${source}.`),
  );
}

const written = (text: string) => new MarkdownText(escapeMarkdown(text));

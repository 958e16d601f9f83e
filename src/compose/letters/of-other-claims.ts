import { escapeMarkdown } from '../../core/words/escape.js';
import { type Facts, MarkdownText } from '../../core/words/facts.js';
import type { LetterInput } from './input.js';
import type { LetterView } from './view.js';

/** Other claims on the same goods, carriers with a similar one, and what the carrier paid. */
export function otherClaimFacts(view: LetterView<LetterInput>): Facts {
  const { claim, state } = view.input;
  const { claims = [], carriers = [] } = claim?.result?.similar ?? {};
  const similar = state.claims.flatMap((entry) =>
    entry.is === 'received' && entry.replacedBy === undefined && claims.includes(entry.claim)
      ? [written(view, `${entry.claimant.name}, ${view.day(entry.received)}`, entry.evidence, entry.seq)]
      : [],
  );
  const paid = (claim?.entries ?? []).flatMap((entry) =>
    entry.is === 'payment' && entry.by === 'carrier' && entry.replacedBy === undefined
      ? [written(view, `${view.money(entry.amount)}, ${view.day(entry.on)}`, entry.evidence, entry.seq)]
      : [],
  );
  return {
    similarClaims: similar,
    otherCarriers: carriers.map((name) => new MarkdownText(escapeMarkdown(name))),
    paid,
  };
}

const written = (
  view: LetterView<LetterInput>,
  text: string,
  ...[evidence, seq]: Parameters<LetterView['source']>
): MarkdownText => new MarkdownText(`${escapeMarkdown(text)}${view.source(evidence, seq)}`);

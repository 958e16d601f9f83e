import type { ClaimResult } from '../../core/model/results.js';
import type { Block, Section } from '../../core/words/blocks.js';
import { amountBlocks } from './claim/amounts.js';
import { deadlineBlocks } from './claim/deadlines.js';
import { claimFacts, claimHistoryBlocks, claimPapers } from './claim/facts.js';
import { positionBlocks } from './claim/position.js';
import { quantityBlocks } from './claim/quantities.js';
import type { View } from './context.js';

/** The claims as they were received, and letters about them, for the dossier; empty without a claim. */
export function claimSections(view: View): Section[] {
  const claims = view.input.assessment.claims ?? [];
  if (claims.length === 0) return [];
  return [
    {
      id: 'claim',
      title: view.labels('section.claim'),
      blocks: [
        ...view.words.blocks('sections/claim'),
        ...byClaim(view, claims, (claim) => [
          claimFacts(view, claim),
          ...claimHistoryBlocks(view, claim, 'letters'),
        ]),
      ],
    },
  ];
}

/**
 * How each claim stands, for the assessment: its papers, offers and payments, what is due when, burden of proof, amounts.
 * Nothing where there is neither a claim nor a deadline that runs from a refusal.
 */
export function positionSection(view: View): Section | undefined {
  const { claims = [], refusalClocks = [] } = view.input.assessment;
  if (claims.length + refusalClocks.length === 0) return undefined;
  return {
    id: 'position',
    title: view.labels('section.position'),
    blocks: [
      ...view.words.blocks('sections/position'),
      ...byClaim(view, claims, (claim) => [
        claimPapers(view, claim),
        ...claimHistoryBlocks(view, claim, 'settlement'),
        ...deadlineBlocks(view, claim.clocks, 'claim-clocks'),
        ...positionBlocks(view, claim),
        ...amountBlocks(view, claim),
        ...quantityBlocks(view, claim),
      ]),
      ...raised(deadlineBlocks(view, refusalClocks, 'refusal-clocks')),
    ],
  };
}

/** The blocks of each claim, under its number where there are several. */
function byClaim(
  view: View,
  claims: readonly ClaimResult[],
  blocksOf: (claim: ClaimResult) => Block[],
): Block[] {
  return claims.flatMap((claim) =>
    claims.length > 1 ? [headingOf(view, claim), ...blocksOf(claim)] : raised(blocksOf(claim)),
  );
}

const headingOf = ({ labels }: View, { received }: ClaimResult): Block => ({
  is: 'heading',
  level: 2,
  text: labels('claim.heading').replace('NUMBER', () => received.ourNumber),
});

/** With a single claim its headings are one level higher. */
const raised = (blocks: readonly Block[]): Block[] =>
  blocks.map((block) => (block.is === 'heading' ? { ...block, level: 2 } : block));

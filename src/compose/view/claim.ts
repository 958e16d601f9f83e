import type { ClaimResult } from '../../core/model/results.js';
import type { Block, Section } from '../../core/words/blocks.js';
import { amountBlocks } from './claim/amounts.js';
import { deadlineBlocks } from './claim/deadlines.js';
import { claimFacts, claimHistoryBlocks } from './claim/facts.js';
import { positionBlocks } from './claim/position.js';
import { quantityBlocks } from './claim/quantities.js';
import type { View } from './context.js';

/** The section on claims; empty without a claim, or when a copy omits it. */
export function claimSections(view: View): Section[] {
  const claims = view.input.assessment.claims ?? [];
  if (claims.length === 0) return [];
  const { labels, words, input } = view;
  const several = claims.length > 1;
  return [
    {
      id: 'claim',
      title: labels('section.claim'),
      blocks: [
        ...words.blocks('sections/claim'),
        ...claims.flatMap((claim) =>
          several ? [headingOf(view, claim), ...claimBlocks(view, claim)] : raised(claimBlocks(view, claim)),
        ),
        ...raised(deadlineBlocks(view, input.assessment.refusalClocks ?? [], 'refusal-clocks')),
      ],
    },
  ];
}

const headingOf = ({ labels }: View, { received }: ClaimResult): Block => ({
  is: 'heading',
  level: 2,
  text: labels('claim.heading').replace('NUMBER', () => received.ourNumber),
});

/** With a single claim its headings are one level higher. */
const raised = (blocks: readonly Block[]): Block[] =>
  blocks.map((block) => (block.is === 'heading' ? { ...block, level: 2 } : block));

const claimBlocks = (view: View, claim: ClaimResult): Block[] => [
  claimFacts(view, claim),
  ...claimHistoryBlocks(view, claim),
  ...deadlineBlocks(view, claim.clocks, 'claim-clocks'),
  ...positionBlocks(view, claim),
  ...amountBlocks(view, claim),
  ...quantityBlocks(view, claim),
];

import type { ExceptedCause } from '../../model/claim.js';
import type { Finding } from '../../model/results.js';
import type { Element } from '../../model/rule-set.js';
import type { FindingId } from '../findings/catalogue.js';

/** Rows of the table on the burden of proof. */
export type BurdenElement =
  | 'good-condition-at-receipt'
  | 'condition-at-delivery'
  | 'damages'
  | 'freedom-from-negligence'
  | ExceptedCause;
export type PointSide = 'forCarrier' | 'againstCarrier' | 'weak';
export interface FindingRelevance {
  element: BurdenElement;
  side: PointSide;
}

const SIDE = { helps: 'forCarrier', hurts: 'againstCarrier', open: 'weak' } as const;
const placeOf = (element: Element): BurdenElement =>
  element === 'instructions-followed' || element === 'care-in-transit' ? 'freedom-from-negligence' : element;

const bears = (element: BurdenElement, side: PointSide): FindingRelevance => ({ element, side });
/** Product loaded out of range was not in the condition that the bill instructs, by the shipper's act. */
const outAtLoading: readonly FindingRelevance[] = [
  bears('act-of-shipper', 'forCarrier'),
  bears('good-condition-at-receipt', 'forCarrier'),
];

/** Findings relevant to more elements, or to another element, than the one they are listed under. */
const OTHERWISE: Partial<Record<FindingId, readonly FindingRelevance[]>> = {
  // Good pulps at loading prove what the claimant must prove, whatever they say about care.
  'pulps-at-loading-in-band': [bears('good-condition-at-receipt', 'againstCarrier')],
  'exception-signed': [bears('good-condition-at-receipt', 'forCarrier'), bears('act-of-shipper', 'weak')],
  'pulps-at-loading-above-band': outAtLoading,
  'pulps-at-loading-below-band': outAtLoading,
  'warm-at-loading-and-delivery': outAtLoading,
  // Loaded warmer than was read, or warmed after the doors opened: possibly the shipper's act, undetermined.
  'pulps-warmer-than-air-allows': [
    bears('good-condition-at-receipt', 'weak'),
    bears('act-of-shipper', 'weak'),
  ],
};

/** The rows that a finding is relevant to, and for which side. */
export function relevanceOf(finding: Finding, all: readonly Finding[]): readonly FindingRelevance[] {
  const { id, weighs, element } = finding;
  const known: Partial<Record<string, readonly FindingRelevance[]>> = OTHERWISE;
  const bearings = known[id] ?? [bears(placeOf(element), SIDE[weighs])];
  return [...bearings, ...byTheShipper(finding, all)];
}

/** Air readings that show care can also show that the shipper caused the damage. */
function byTheShipper({ id, weighs, facts }: Finding, all: readonly Finding[]): FindingRelevance[] {
  if (id === 'air-in-chilling-range' && facts.asInstructed === true) return [bears('act-of-shipper', 'weak')];
  const loadedWarm = all.some(
    (one) => one.id === 'pulps-at-loading-above-band' && lineOfFinding(one) === lineOfFinding({ facts }),
  );
  return id === 'pulps-go-with-air' && weighs === 'helps' && loadedWarm
    ? [bears('act-of-shipper', 'forCarrier')]
    : [];
}

/** The line that a finding concerns, where it concerns one. */
export function lineOfFinding({ facts }: Pick<Finding, 'facts'>): string | undefined {
  const line = facts.line;
  return typeof line === 'object' && line.is === 'line' ? line.line : undefined;
}

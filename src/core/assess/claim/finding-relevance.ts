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

const undetermined: readonly FindingRelevance[] = [
  bears('good-condition-at-receipt', 'weak'),
  bears('act-of-shipper', 'weak'),
];

/** Findings relevant to more elements, or to another element, than the one they are listed under. */
const OTHERWISE: Partial<Record<FindingId, readonly FindingRelevance[]>> = {
  // Good pulps at loading prove what the claimant must prove, whatever they say about care.
  'pulps-at-loading-in-band': [bears('good-condition-at-receipt', 'againstCarrier')],
  'exception-signed': [bears('good-condition-at-receipt', 'forCarrier'), bears('act-of-shipper', 'weak')],
  'pulps-at-loading-above-band': outAtLoading,
  'pulps-at-loading-below-band': outAtLoading,
  // Whether it was loaded so or became so later is not told: possibly the shipper's act.
  'arrival-does-not-discriminate': undetermined,
  'arrival-fits-neither': undetermined,
};

/** The rows that a finding is relevant to, and for which side. */
export function relevanceOf(finding: Finding): readonly FindingRelevance[] {
  const { id, weighs, element } = finding;
  const known: Partial<Record<string, readonly FindingRelevance[]>> = OTHERWISE;
  // What the arrival says of the loading concerns both, for the side that it weighs on.
  if (id === 'arrival-supports-origin')
    return [bears('act-of-shipper', SIDE[weighs]), bears('good-condition-at-receipt', SIDE[weighs])];
  const bearings = known[id] ?? [bears(placeOf(element), SIDE[weighs])];
  return [...bearings, ...byTheShipper(finding)];
}

/** Cold that the bill itself asked for is relevant to the shipper's act too. */
function byTheShipper({ id, facts }: Finding): FindingRelevance[] {
  const isAsked =
    ((id === 'air-in-chilling-range' || id === 'air-below-freezing-point') && facts.asInstructed === true) ||
    (id === 'pulps-at-delivery-frozen' && facts.instructed === true);
  return isAsked ? [bears('act-of-shipper', 'weak')] : [];
}

/** The line that a finding concerns, where it concerns one. */
export function lineOfFinding({ facts }: Pick<Finding, 'facts'>): string | undefined {
  const line = facts.line;
  return typeof line === 'object' && line.is === 'line' ? line.line : undefined;
}

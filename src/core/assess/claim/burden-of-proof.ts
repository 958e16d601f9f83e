import type { ExceptedCause } from '../../model/claim.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { Finding, GapResult, PositionPoint, PositionRow } from '../../model/results.js';
import type { Element } from '../../model/rule-set.js';
import type { ClaimEntry } from '../../model/state.js';
import { claimedLines, findingAbout, gapAbout } from './claimed-lines.js';
import { type BurdenElement, lineOfFinding, type PointSide, relevanceOf } from './finding-relevance.js';
import { statedPoints } from './stated-points.js';

interface Points {
  forCarrier: PositionPoint[];
  againstCarrier: PositionPoint[];
  weak: PositionPoint[];
}

/** Findings can stand behind the first two; behind any of them evidence that a person ties to it. */
const CAUSES = [
  'act-of-shipper',
  'nature-of-goods',
  'act-of-god',
  'public-enemy',
  'public-authority',
] as const satisfies readonly ExceptedCause[];

/** Where what is lacking for an element is shown. */
const PLACE: Record<Element, BurdenElement> = {
  'good-condition-at-receipt': 'good-condition-at-receipt',
  'condition-at-delivery': 'condition-at-delivery',
  damages: 'damages',
  'instructions-followed': 'freedom-from-negligence',
  'care-in-transit': 'freedom-from-negligence',
  'act-of-shipper': 'act-of-shipper',
  'nature-of-goods': 'nature-of-goods',
};

/**
 * Who stands where on each thing that must be shown (Missouri Pacific R. Co. v. Elmore & Stahl, 377 U.S. 134 (1964)):
 * the claimant good condition at receipt, damaged arrival and the amount; the carrier then both freedom from negligence
 * and an excepted cause. Entries of one claim in any order; findings and gaps as assessed. Causes with nothing behind
 * them are not offered; when none is left, one row without a `cause` says so, and care alone does not help. Behind act
 * of God, public enemy and public authority only a `cause` entry can put evidence. Where the claim names its lines, what
 * is about other lines alone is left out.
 */
export function burdenOfProof({
  entries,
  findings: all,
  gaps: everyGap,
}: {
  entries: readonly ClaimEntry[];
  findings: readonly Finding[];
  gaps: readonly GapResult[];
}): PositionRow[] {
  const lines = claimedLines(entries);
  const findings = lines === undefined ? all : all.filter((one) => findingAbout(one, lines));
  const gaps = lines === undefined ? everyGap : everyGap.filter((one) => gapAbout(one, lines));
  const table = new Map<BurdenElement, Points>();
  const at = (place: BurdenElement): Points => {
    const known = table.get(place) ?? { forCarrier: [], againstCarrier: [], weak: [] };
    table.set(place, known);
    return known;
  };
  const put = (place: BurdenElement, side: PointSide, point: PositionPoint) => at(place)[side].push(point);

  for (const finding of findings)
    for (const { element, side } of relevanceOf(finding, findings))
      put(element, side, pointOfFinding(finding));
  for (const { element, side, point } of statedPoints(entries)) put(element, side, point);
  for (const gap of gaps) for (const { place, side } of weakenedElements(gap)) put(place, side, pointOf(gap));

  const shownByClaimant = (element: 'good-condition-at-receipt' | 'condition-at-delivery' | 'damages') => ({
    element,
    by: 'claimant' as const,
    ...at(element),
    stands: balance(at(element)) ?? 'open',
  });
  return [
    shownByClaimant('good-condition-at-receipt'),
    shownByClaimant('condition-at-delivery'),
    shownByClaimant('damages'),
    freedom(at('freedom-from-negligence'), findings),
    ...causes(at),
  ];
}

function balance({ forCarrier, againstCarrier }: Points): PositionRow['stands'] | undefined {
  if (forCarrier.length > 0 && againstCarrier.length > 0) return 'disputed';
  if (forCarrier.length > 0) return 'for-carrier';
  return againstCarrier.length > 0 ? 'against-carrier' : undefined;
}

const hasFinding = (points: readonly PositionPoint[]) => points.some(({ from }) => from.is === 'finding');

/** Whoever must show a thing and has nothing has not shown it; with something undecided it is open. */
const burdened = (points: Points): PositionRow['stands'] =>
  balance(points) ?? (hasFinding(points.weak) ? 'open' : 'against-carrier');

/** Both that instructions were followed and that care was taken on the way must be shown, not one of them. */
function freedom(points: Points, findings: readonly Finding[]): PositionRow {
  const shown = (element: Element) =>
    findings.some((one) => one.element === element && one.weighs === 'helps');
  const stands = burdened(points);
  return {
    element: 'freedom-from-negligence',
    by: 'carrier',
    ...points,
    stands:
      stands === 'for-carrier' && !(shown('instructions-followed') && shown('care-in-transit'))
        ? 'open'
        : stands,
  };
}

/** What is lacking alone offers no cause; what speaks against one is shown only beside what speaks for it. */
function causes(at: (place: BurdenElement) => Points): PositionRow[] {
  const offered = CAUSES.filter((cause) => at(cause).forCarrier.length > 0 || hasFinding(at(cause).weak));
  if (offered.length > 0)
    return offered.map((cause) => ({
      element: 'excepted-cause',
      cause,
      by: 'carrier',
      ...at(cause),
      stands: burdened(at(cause)),
    }));
  const lacking = CAUSES.flatMap((cause) => at(cause).weak);
  const against = CAUSES.flatMap((cause) => at(cause).againstCarrier);
  return [
    {
      element: 'excepted-cause',
      by: 'carrier',
      forCarrier: [],
      againstCarrier: against,
      weak: [...new Map(lacking.map((point) => [JSON.stringify(point), point])).values()],
      stands: 'against-carrier',
    },
  ];
}

/** What a requirement that is not met leaves weak, once for each thing that it would help to show. */
function weakenedElements(gap: GapResult): { place: BurdenElement; side: PointSide }[] {
  const { outcome } = gap;
  if (outcome !== 'missing' && outcome !== 'short' && outcome !== 'contradicted') return [];
  return [...new Set(gap.proves.map((element) => PLACE[element]))].map((place) => ({
    place,
    side:
      outcome === 'contradicted' && place === 'freedom-from-negligence'
        ? ('againstCarrier' as const)
        : ('weak' as const),
  }));
}

function pointOfFinding(finding: Finding): PositionPoint {
  const line = lineOfFinding(finding);
  return {
    from: { is: 'finding', id: finding.id, ...omitUndefined({ line }) },
    evidence: finding.evidence,
  };
}

const pointOf = (gap: GapResult): PositionPoint => ({
  from: { is: 'gap', id: gap.rule },
  evidence: [...new Set([...gap.counted, ...gap.against])],
});

/** Whether the record offers no excepted cause at all, so that care, however well shown, does not help by itself. */
export const hasNoExceptedCause = (rows: readonly PositionRow[]): boolean =>
  !rows.some((row) => row.element === 'excepted-cause' && row.cause !== undefined);

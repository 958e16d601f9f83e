import type { ExceptedCause } from '../../model/claim.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { Finding, GapResult, PositionPoint, PositionRow } from '../../model/results.js';
import type { Element } from '../../model/rule-set.js';
import type { ClaimEntry } from '../../model/state.js';
import { claimedLines, findingAbout, gapAbout } from './claimed-lines.js';
import { type BurdenElement, lineOfFinding, type PointSide, relevanceOf } from './finding-relevance.js';
import { statedPoints } from './stated-points.js';
import { termsOf } from './terms.js';

interface Points {
  forCarrier: PositionPoint[];
  againstCarrier: PositionPoint[];
  weak: PositionPoint[];
}

/** Findings can support the first two causes; evidence that a person ties to a cause can support any of them. */
const CAUSES = [
  'act-of-shipper',
  'nature-of-goods',
  'act-of-god',
  'public-enemy',
  'public-authority',
] as const satisfies readonly ExceptedCause[];

/** The row on which evidence missing for an element is shown. */
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
 * The position of each party on each thing to be proved (Missouri Pacific R. Co. v. Elmore & Stahl, 377 U.S. 134
 * (1964)): the claimant proves good condition at receipt, damaged arrival and the amount; the carrier then proves
 * both freedom from negligence and an excepted cause. Entries of one claim in any order; findings and gaps as
 * assessed. Causes without support are left out; when none is left, one row without a `cause` says so, because care
 * alone does not excuse. Act of God, public enemy and public authority are supported by a `cause` entry only. Where
 * the claim names its lines, what concerns other lines only is left out. Where the CMR governs, its articles 17 and 18
 * divide the burdens.
 */
export function burdenOfProof({
  entries,
  findings: all,
  gaps: everyGap,
  lines = claimedLines(entries),
  otherStops = new Set(),
}: {
  entries: readonly ClaimEntry[];
  findings: readonly Finding[];
  gaps: readonly GapResult[];
  /** The lines that the claim concerns, and the stops where only others are delivered. */
  lines?: ReadonlySet<string> | undefined;
  otherStops?: ReadonlySet<string>;
}): PositionRow[] {
  const findings = lines === undefined ? all : all.filter((one) => findingAbout(one, lines, otherStops));
  const gaps = lines === undefined ? everyGap : everyGap.filter((one) => gapAbout(one, lines, otherStops));
  const table = new Map<BurdenElement, Points>();
  const at = (place: BurdenElement): Points => {
    const known = table.get(place) ?? { forCarrier: [], againstCarrier: [], weak: [] };
    table.set(place, known);
    return known;
  };
  const put = (place: BurdenElement, side: PointSide, point: PositionPoint) => at(place)[side].push(point);

  for (const finding of findings)
    for (const { element, side } of relevanceOf(finding)) put(element, side, pointOfFinding(finding));
  for (const { element, side, point } of statedPoints(entries)) put(element, side, point);
  for (const gap of gaps) for (const { place, side } of weakenedElements(gap)) put(place, side, pointOf(gap));

  const shownByClaimant = (element: 'good-condition-at-receipt' | 'condition-at-delivery' | 'damages') => ({
    element,
    by: 'claimant' as const,
    ...at(element),
    stands: balance(at(element)) ?? 'open',
  });
  const rows: PositionRow[] = [
    shownByClaimant('good-condition-at-receipt'),
    shownByClaimant('condition-at-delivery'),
    shownByClaimant('damages'),
    freedom(at('freedom-from-negligence'), findings),
    ...causes(at),
  ];
  return termsOf({ entries }).governs === 'cmr' ? underCmr(rows) : rows;
}

/**
 * The same rows by CMR, articles 17 and 18. Causes of 17(2) and special risks of 17(4) relieve the carrier, who proves the
 * former and for the latter only that the loss could be attributed to them (18(2)); but decay and the like of goods by
 * nature, in a vehicle that is cooled, only with proof that all steps were taken in choice, maintenance and use of the
 * equipment and instructions were followed (18(4)), which is the row of care.
 */
function underCmr(rows: readonly PositionRow[]): PositionRow[] {
  const equipment = rows.find(({ element }) => element === 'freedom-from-negligence')?.stands;
  return rows.map((row) => ({
    ...row,
    under: 'cmr',
    ...(row.cause === 'nature-of-goods' && row.stands === 'for-carrier' && equipment !== 'for-carrier'
      ? { stands: 'open' as const }
      : {}),
  }));
}

function balance({ forCarrier, againstCarrier }: Points): PositionRow['stands'] | undefined {
  if (forCarrier.length > 0 && againstCarrier.length > 0) return 'disputed';
  if (forCarrier.length > 0) return 'for-carrier';
  return againstCarrier.length > 0 ? 'against-carrier' : undefined;
}

const hasFinding = (points: readonly PositionPoint[]) => points.some(({ from }) => from.is === 'finding');

/** A party with the burden and no evidence has not met it; with something undecided the row is open. */
const burdened = (points: Points): PositionRow['stands'] =>
  balance(points) ?? (hasFinding(points.weak) ? 'open' : 'against-carrier');

/** Freedom from negligence needs both: instructions followed and care in transit. */
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

/** Missing evidence alone supports no cause; adverse evidence is shown only beside supporting evidence. */
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

/** Rows that an unmet requirement weakens, once for each element that it would help to prove. */
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

/** Whether the record supports no excepted cause, so that care in transit does not excuse by itself. */
export const hasNoExceptedCause = (rows: readonly PositionRow[]): boolean =>
  !rows.some((row) => row.element === 'excepted-cause' && row.cause !== undefined);

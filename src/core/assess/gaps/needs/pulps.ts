import type { Line } from '../../../model/delivery.js';
import type { Shortfall } from '../../../model/results.js';
import type { SimpleNeed } from '../../../model/rule-set.js';
import type { ItemOf } from '../../../model/state.js';
import { celsius, kelvin } from '../../../model/temperature.js';
import { bandOf, ROUNDING } from '../../bands.js';
import { judgePulp, lineOfEvidence } from '../../pulps.js';
import type { RuleContext } from '../context.js';
import { type CountGroup, groupsFor, verdictOf } from '../counting.js';
import { shortfall } from '../shortfalls.js';
import { merge, type NeedVerdict } from '../verdict.js';

type PulpNeed = Extract<SimpleNeed, { reading: 'pulp' }>;
type PulpAgreement = Extract<SimpleNeed, { agreement: 'pulp' }>;
type Pulps = CountGroup<ItemOf<'pulp'>>;

/** Pulp readings: how many, in which parts of the load, and within the line's instruction where required. */
export function pulpVerdict(context: RuleContext, need: PulpNeed): NeedVerdict {
  const ask = {
    candidates: context.evidence.of('pulp'),
    rejectionReason: (item: ItemOf<'pulp'>) =>
      need.from !== undefined && item.from !== need.from ? ('wrong-source' as const) : undefined,
    thing: need.from === undefined ? 'pulp' : `pulp-of-${need.from}`,
  };
  const groups = groupsFor(context, need, ask);
  const verdict = verdictOf(groups, need, ask, (group) => spreadShortfalls(need, group));
  return need.withinInstruction === undefined
    ? verdict
    : within(context, verdict, groups, need.withinInstruction);
}

function spreadShortfalls(need: PulpNeed, group: Pulps): Shortfall[] {
  if (need.spread === undefined || group.counted.length === 0) return [];
  const seen = new Set(group.counted.map((item) => item.place?.position));
  const lacking = need.spread.position.filter((one) => !seen.has(one));
  return lacking.length === 0
    ? []
    : [shortfall('none-at-position', { positions: lacking.join(',') }, { line: group.line })];
}

/** Readings outside the line's own range contradict the rule; a line without instruction can't be judged. */
function within(
  context: RuleContext,
  verdict: NeedVerdict,
  groups: readonly Pulps[],
  allowed: NonNullable<PulpNeed['withinInstruction']>,
): NeedVerdict {
  const outside = new Map<Line, ItemOf<'pulp'>[]>();
  const silent = new Set<Line>();
  for (const item of new Set(groups.flatMap((group) => group.counted))) {
    const line = lineOfEvidence(item, context.state.delivery.lines);
    if (line === undefined) continue;
    const band = bandOf(line, { ...context.ruleSet, tolerance: allowed.tolerance });
    if (band === undefined) silent.add(line);
    else if (judgePulp(celsius(item.temperature), band).verdict !== 'in-band')
      outside.set(line, [...(outside.get(line) ?? []), item]);
  }
  const lacking = [
    ...verdict.lacking,
    ...[...outside].map(([line, items]) =>
      shortfall('outside-instruction', { count: items.length }, { line }),
    ),
    ...[...silent].map((line) => shortfall('no-instruction-to-compare', {}, { line })),
  ];
  const against = [...outside.values()].flat().map((item) => item.evidence);
  if (against.length > 0) return { ...verdict, outcome: 'contradicted', against, lacking };
  const outcome = silent.size > 0 && verdict.outcome === 'met' ? 'short' : verdict.outcome;
  return { ...verdict, outcome, lacking };
}

/**
 * Whether two parties read the same temperature of each line: the means of their readings at one kind of stop
 * differ by no more than the tolerance. Both parties' readings are needed for each line of the rule.
 */
export function pulpAgreementVerdict(context: RuleContext, need: PulpAgreement): NeedVerdict {
  const among = context.evidence.of('pulp');
  const [first, second] = need.between.map((from) =>
    groupsFor(
      context,
      { atLeast: 1, per: 'line', at: need.at },
      { candidates: among.filter((item) => item.from === from), thing: 'pulp' },
    ),
  );
  const parts = (first ?? []).flatMap((one) => {
    const other = second?.find((group) => group.line === one.line);
    return other === undefined ? [] : [compare(need, one, other)];
  });
  const all = merge(parts);
  const outcomes = parts.map((part) => part.outcome);
  if (outcomes.includes('contradicted')) return { ...all, outcome: 'contradicted' };
  if (parts.length > 0 && outcomes.every((outcome) => outcome === 'met')) return { ...all, outcome: 'met' };
  return { ...all, outcome: all.counted.length > 0 ? 'short' : 'missing' };
}

const mean = (items: readonly ItemOf<'pulp'>[]) =>
  items.reduce((sum, item) => sum + celsius(item.temperature), 0) / items.length;

function compare(need: PulpAgreement, first: Pulps, second: Pulps): NeedVerdict {
  const [one, other] = need.between;
  const both = [...first.counted, ...second.counted].map((item) => item.evidence);
  const base = { counted: both, rejected: [...first.rejected, ...second.rejected], against: [], notes: [] };
  const silent = [
    ...(first.counted.length === 0 ? [one] : []),
    ...(second.counted.length === 0 ? [other] : []),
  ];
  if (silent.length > 0)
    return {
      ...base,
      outcome: both.length > 0 ? 'short' : 'missing',
      lacking: silent.map((party) => shortfall('hand-silent', { party }, { line: first.line })),
    };
  const apart = Math.abs(mean(first.counted) - mean(second.counted));
  if (apart <= kelvin(need.tolerance) + ROUNDING) return { ...base, outcome: 'met', lacking: [] };
  return {
    ...base,
    outcome: 'contradicted',
    against: both,
    lacking: [
      shortfall(
        'hands-differ',
        { first: one, second: other, apart: { is: 'difference', kelvin: apart } },
        { line: first.line },
      ),
    ],
  };
}

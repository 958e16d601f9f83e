import type { Line } from '../../../model/delivery.js';
import { type Position, position as positions } from '../../../model/evidence.js';
import type { Shortfall } from '../../../model/results.js';
import type { SimpleNeed } from '../../../model/rule-set.js';
import type { ItemOf } from '../../../model/state.js';
import { celsius, kelvin } from '../../../model/temperature.js';
import { bandOf, ROUNDING } from '../../bands.js';
import { pulpMeasures } from '../../measurement/thermometers.js';
import { judgeAgainst } from '../../measurement/uncertainty.js';
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
    thing: need.from === undefined ? need.as : `${need.as}-of-${need.from}`,
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

/**
 * Readings clearly outside the line's own range contradict the rule; those outside it by less than their thermometers
 * are good to leave it unmet. A line without instruction can't be judged.
 */
function within(
  context: RuleContext,
  verdict: NeedVerdict,
  groups: readonly Pulps[],
  allowed: NonNullable<PulpNeed['withinInstruction']>,
): NeedVerdict {
  const measure = pulpMeasures(context.state);
  const outside = new Map<Line, ItemOf<'pulp'>[]>();
  const near = new Map<Line, ItemOf<'pulp'>[]>();
  const silent = new Set<Line>();
  for (const item of new Set(groups.flatMap((group) => group.counted))) {
    const line = lineOfEvidence(item, context.state.delivery.lines);
    if (line === undefined) continue;
    const band = bandOf(line, { ...context.ruleSet, tolerance: allowed.tolerance });
    if (band === undefined) {
      silent.add(line);
      continue;
    }
    const { celsius: corrected, uncertainty } = measure(item);
    const answer = judgeAgainst(corrected, uncertainty.guardKelvin, band);
    const among = answer === 'above' || answer === 'below' ? outside : near;
    if (among === outside || judgePulp(corrected, band).verdict !== 'in-band')
      among.set(line, [...(among.get(line) ?? []), item]);
  }
  const lacking = [
    ...verdict.lacking,
    ...[...outside].map(([line, items]) =>
      shortfall('outside-instruction', { count: items.length }, { line }),
    ),
    ...[...near].map(([line, items]) =>
      shortfall('near-instruction-limit', { count: items.length }, { line }),
    ),
    ...[...silent].map((line) => shortfall('no-instruction-to-compare', {}, { line })),
  ];
  const against = [...outside.values()].flat().map((item) => item.evidence);
  if (against.length > 0) return { ...verdict, outcome: 'contradicted', against, lacking };
  const isShort = silent.size + near.size > 0 && verdict.outcome === 'met';
  const outcome = isShort ? 'short' : verdict.outcome;
  return { ...verdict, outcome, lacking };
}

/**
 * Whether two parties read the same temperature of each line at one kind of stop: at each part of the load that both
 * read, else as ranges, they are no farther apart than the tolerance, which stands for both thermometers. Both parties'
 * readings are needed for each line of the rule.
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

/**
 * How far two parties' readings are apart, K: the most at one part of the load that both read; where they have none in
 * common, the distance between their ranges, because other cartons may have other temperatures.
 */
function apartOf(first: Pulps, second: Pulps): number {
  const at = (group: Pulps, position: Position) =>
    group.counted.filter((item) => item.place?.position === position).map(bestEstimate);
  const changes = positions.options.flatMap((position) => {
    const [some, others] = [at(first, position), at(second, position)];
    return some.length === 0 || others.length === 0 ? [] : [Math.abs(mean(some) - mean(others))];
  });
  if (changes.length > 0) return Math.max(...changes);
  const [a, b] = [first.counted.map(bestEstimate), second.counted.map(bestEstimate)];
  return Math.max(0, Math.min(...a) - Math.max(...b), Math.min(...b) - Math.max(...a));
}

const bestEstimate = (item: ItemOf<'pulp'>): number => celsius(item.temperature);
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

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
  const apart = apartOf(first, second);
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

import type { Line } from '../../../model/delivery.js';
import type { SimpleNeed } from '../../../model/rule-set.js';
import type { EvidenceItem, ItemOf } from '../../../model/state.js';
import { celsius } from '../../../model/temperature.js';
import { bandOf } from '../../bands.js';
import { judge, lineOf } from '../../pulps.js';
import type { RuleContext } from '../context.js';
import { type Group, groupsFor, verdictOf } from '../counting.js';
import type { NeedVerdict } from '../verdict.js';

type PulpNeed = Extract<SimpleNeed, { reading: 'pulp' }>;

/** Pulp readings: how many, spread over which parts of the load, and within the line's instruction where asked. */
export function pulpVerdict(context: RuleContext, need: PulpNeed): NeedVerdict {
  const ask = {
    is: (item: EvidenceItem): item is ItemOf<'pulp'> => item.kind === 'pulp',
    miss: (item: ItemOf<'pulp'>) =>
      need.from !== undefined && item.from !== need.from ? ('wrong-source' as const) : undefined,
    one: 'pulp reading',
    many: 'pulp readings',
  };
  const groups = groupsFor(context, need, ask);
  const verdict = verdictOf(groups, need, ask, (group) => spreadLacks(need, group));
  return need.withinInstruction === undefined
    ? verdict
    : within(context, verdict, groups, need.withinInstruction);
}

function spreadLacks(need: PulpNeed, group: Group<ItemOf<'pulp'>>): string[] {
  if (need.spread === undefined) return [];
  const seen = new Set(group.counted.map((item) => item.place?.position));
  const lacking = need.spread.position.filter((one) => !seen.has(one));
  return lacking.length === 0 ? [] : [`none at ${lacking.join(', ')}`];
}

/** Readings outside the line's own band contradict; a line without instruction can't be judged. */
function within(
  context: RuleContext,
  verdict: NeedVerdict,
  groups: readonly Group<ItemOf<'pulp'>>[],
  allowed: NonNullable<PulpNeed['withinInstruction']>,
): NeedVerdict {
  const { lines } = context.state.delivery;
  const outside = new Map<string, ItemOf<'pulp'>[]>();
  const silent = new Set<string>();
  const judgeOne = (item: ItemOf<'pulp'>, line: Line) => {
    const band = bandOf(line, { ...context.ruleSet, tolerance: allowed.tolerance });
    if (band === undefined) silent.add(line.name ?? line.id);
    else if (judge(celsius(item.temperature), band).verdict !== 'in-band')
      outside.set(line.id, [...(outside.get(line.id) ?? []), item]);
  };
  const counted = new Set(groups.flatMap((group) => group.counted));
  for (const item of counted) {
    const line = lineOf(item, lines);
    if (line !== undefined) judgeOne(item, line);
  }
  const against = [...outside.values()].flat();
  const lacking = [
    ...verdict.lacking,
    ...[...outside].map(([id, items]) => {
      const line = lines.find((one) => one.id === id);
      return `${line?.name ?? id}: ${items.length} of the readings outside the instruction`;
    }),
    ...[...silent].map((name) => `${name}: no temperature on the bill to hold the readings against`),
  ];
  if (against.length > 0)
    return { ...verdict, outcome: 'contradicted', against: against.map((item) => item.evidence), lacking };
  const outcome = silent.size > 0 && verdict.outcome === 'met' ? 'short' : verdict.outcome;
  return { ...verdict, outcome, lacking };
}

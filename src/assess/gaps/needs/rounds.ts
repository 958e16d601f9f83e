import type { SimpleNeed } from '../../../model/rule-set.js';
import type { EvidenceItem, ItemOf } from '../../../model/state.js';
import { knownMilliseconds } from '../../../model/time.js';
import type { RuleContext } from '../context.js';
import { groupsFor, verdictOf } from '../counting.js';
import type { NeedVerdict } from '../verdict.js';
import { endsOf } from '../window.js';

type RoundNeed = Extract<SimpleNeed, { reading: 'round' }>;
const MS_PER_HOUR = 3_600_000;

/**
 * Looks at the running unit: how many, never farther apart than asked (from the window's start to its end, or to
 * now), and fuel at least as asked. A window that is itself shorter than the longest time between looks needs none.
 */
export function roundVerdict(context: RuleContext, need: RoundNeed): NeedVerdict {
  const { fuelAtLeast, everyHours } = need;
  const ask = {
    is: (item: EvidenceItem): item is ItemOf<'round'> => item.kind === 'round',
    miss: (item: ItemOf<'round'>) =>
      fuelAtLeast !== undefined && item.fuel === undefined ? ('bad-value' as const) : undefined,
    one: 'look at the unit',
    many: 'looks at the unit',
  };
  const groups = groupsFor(context, need, ask);
  const counted = groups.flatMap((group) => group.counted);
  const apart = everyHours === undefined ? undefined : longestApart(context, need, counted);
  if (apart !== undefined && everyHours !== undefined && apart.window <= everyHours)
    return { ...verdictOf(groups, { ...need, atLeast: 0 }, ask), outcome: 'met' };
  const tooLong =
    apart === undefined || everyHours === undefined || apart.hours <= everyHours
      ? []
      : [`up to ${apart.hours.toFixed(1)} hours between looks, ${everyHours} allowed`];
  const verdict = verdictOf(groups, need, ask, () => tooLong);
  const low = counted.filter((item) => fuelAtLeast !== undefined && (item.fuel ?? 1) < fuelAtLeast);
  if (low.length === 0) return verdict;
  return {
    ...verdict,
    outcome: 'contradicted',
    against: low.map((item) => item.evidence),
    lacking: [...verdict.lacking, `fuel was lower than asked at ${low.length} of the looks`],
  };
}

/** Longest time without a look, and the window's length, in hours. Undefined when the window's start is not known. */
export function longestApart(
  context: RuleContext,
  need: Pick<RoundNeed, 'at' | 'after' | 'before'>,
  rounds: readonly ItemOf<'round'>[],
): { hours: number; window: number } | undefined {
  const ends = endsOf(context, need, undefined, undefined);
  const start = ends.after?.at;
  if (start === undefined) return undefined;
  const end = Math.max(start, ends.before?.at ?? context.now);
  const times = rounds
    .map((item) => knownMilliseconds(item.time))
    .filter((at) => at !== undefined)
    .sort((a, b) => a - b);
  let hours = 0;
  let last = start;
  for (const at of [...times, end]) {
    hours = Math.max(hours, (at - last) / MS_PER_HOUR);
    last = at;
  }
  return { hours, window: (end - start) / MS_PER_HOUR };
}

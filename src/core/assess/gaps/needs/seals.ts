import type { Shortfall } from '../../../model/results.js';
import type { SimpleNeed } from '../../../model/rule-set.js';
import type { ItemOf } from '../../../model/state.js';
import { appliedSeals, sealKey, sealsBefore } from '../../seals.js';
import type { RuleContext } from '../context.js';
import { groupsFor, verdictOf } from '../counting.js';
import { shortfall } from '../shortfalls.js';
import type { NeedVerdict } from '../verdict.js';

type SealNeed = Extract<SimpleNeed, { reading: 'seal' }>;
type Seal = ItemOf<'seal'>;

/**
 * Seals in the required state, and with the number applied at loading where that is required. A seal found broken
 * contradicts a rule that requires an intact one.
 */
export function sealVerdict(context: RuleContext, need: SealNeed): NeedVerdict {
  const seals = context.evidence.of('seal');
  const ask = {
    candidates: seals,
    rejectionReason: (item: Seal) =>
      need.state !== undefined && item.state !== need.state ? ('bad-value' as const) : undefined,
    thing: need.state === undefined ? 'seal' : `seal-${need.state}`,
  };
  const groups = groupsFor(context, need, ask);
  const verdict = verdictOf(groups, need, ask);
  const inPlace = groupsFor(context, need, { candidates: seals, thing: 'seal' }).flatMap(
    (group) => group.counted,
  );
  const broken = need.state === 'intact' ? inPlace.filter((item) => item.state === 'broken') : [];
  const onDoors = appliedSeals(context.state);
  const [applied] = onDoors;
  const isKnown = (item: Seal) =>
    sealsBefore(onDoors, item).some((one) => sealKey(one.number) === sealKey(item.number));
  const counted = groups.flatMap((group) => group.counted);
  const other = need.sameAsApplied && applied !== undefined ? counted.filter((item) => !isKnown(item)) : [];
  const lacking: Shortfall[] = [
    ...broken.map((item) => shortfall('seal-broken', { number: item.number })),
    ...other.map((item) =>
      shortfall('seal-differs', {
        applied: sealsBefore(onDoors, item)[0]?.number ?? '',
        found: item.number,
      }),
    ),
  ];
  if (lacking.length > 0)
    return {
      ...verdict,
      outcome: 'contradicted',
      against: [...new Set([...broken, ...other].map((item) => item.evidence))],
      lacking: [...verdict.lacking.filter(() => counted.length > 0), ...lacking],
    };
  if (need.sameAsApplied && applied === undefined && counted.length > 0)
    return {
      ...verdict,
      outcome: 'short',
      lacking: [...verdict.lacking, shortfall('no-seal-to-compare', {})],
    };
  return verdict;
}

import type { SimpleNeed } from '../../../model/rule-set.js';
import type { EvidenceItem, ItemOf } from '../../../model/state.js';
import { appliedSeals, sealKey } from '../../seals.js';
import type { RuleContext } from '../context.js';
import { groupsFor, verdictOf } from '../counting.js';
import type { NeedVerdict } from '../verdict.js';

type SealNeed = Extract<SimpleNeed, { reading: 'seal' }>;

/** Seals: in the state asked, and with the number that was applied at loading where that is asked. */
export function sealVerdict(context: RuleContext, need: SealNeed): NeedVerdict {
  const base = {
    is: (item: EvidenceItem): item is ItemOf<'seal'> => item.kind === 'seal',
    one: 'seal',
    many: 'seals',
  };
  const broken = need.state === 'intact' ? 'broken' : undefined;
  const ask = {
    ...base,
    miss: (item: ItemOf<'seal'>) =>
      need.state !== undefined && item.state !== need.state ? ('bad-value' as const) : undefined,
  };
  const groups = groupsFor(context, need, ask);
  const verdict = verdictOf(groups, need, ask);
  const against = groupsFor(context, need, base)
    .flatMap((group) => group.counted)
    .filter((item) => broken !== undefined && item.state === broken);
  const lacking = against.length > 0 ? ['the seal was found broken'] : [];
  const applied = appliedSeals(context.state).map((item) => sealKey(item.number));
  const counted = groups.flatMap((group) => group.counted);
  if (need.sameAsApplied && applied.length > 0) {
    const other = counted.filter((item) => !applied.includes(sealKey(item.number)));
    if (other.length > 0) lacking.push('the number is not the one that was applied');
    against.push(...other);
  }
  if (against.length > 0)
    return {
      ...verdict,
      outcome: 'contradicted',
      against: [...new Set(against.map((item) => item.evidence))],
      lacking: [...verdict.lacking, ...lacking],
    };
  if (need.sameAsApplied && applied.length === 0 && counted.length > 0)
    return {
      ...verdict,
      outcome: 'short',
      lacking: [...verdict.lacking, 'no number of an applied seal to compare with'],
    };
  return verdict;
}

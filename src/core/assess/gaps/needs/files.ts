import type { RejectedEvidence } from '../../../model/results.js';
import type { SimpleNeed } from '../../../model/rule-set.js';
import type { ItemOf } from '../../../model/state.js';
import type { RuleContext } from '../context.js';
import { groupsFor, verdictOf } from '../counting.js';
import type { NeedVerdict } from '../verdict.js';

type PhotoNeed = Extract<SimpleNeed, { photo: unknown }>;
type DocumentNeed = Extract<SimpleNeed, { document: unknown }>;
type Filed = ItemOf<'photo' | 'document'>;

const listOf = <T extends string>(value: T | T[]): T[] => (Array.isArray(value) ? value : [value]);

/** Photos by subject. A proposed subject counts unless the need requires a confirmed one; the verdict says so. */
export function photoVerdict(context: RuleContext, need: PhotoNeed): NeedVerdict {
  const names = listOf(need.photo);
  const photos = context.evidence
    .showing(names)
    .filter((item): item is ItemOf<'photo'> => item.kind === 'photo');
  const ask = { candidates: photos, rejectionReason: qualityOf(need), thing: names.join(',') };
  return verdictOf(groupsFor(context, need, ask), need, ask);
}

/** Documents by subject, as a file or photographed. */
export function documentVerdict(context: RuleContext, need: DocumentNeed): NeedVerdict {
  const names = listOf(need.document);
  const ask = {
    candidates: context.evidence.showing(names),
    rejectionReason: qualityOf(need),
    thing: names.join(','),
  };
  return verdictOf(groupsFor(context, need, ask), need, ask);
}

/** Why a file of the right subject does not count. */
function qualityOf(need: PhotoNeed | DocumentNeed): (item: Filed) => RejectedEvidence['why'] | undefined {
  return (item) => {
    const flagged = need.without?.find((name) => item.flags.some((flag) => flag.is === name));
    if (flagged !== undefined) return flagged;
    if (need.dated === true && item.time.is !== 'known') return 'no-time';
    return need.confirmed === true && item.subject?.sure !== 'confirmed' ? 'only-proposed' : undefined;
  };
}

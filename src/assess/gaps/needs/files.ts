import type { SubjectName } from '../../../model/evidence.js';
import type { SimpleNeed } from '../../../model/rule-set.js';
import type { EvidenceItem, ItemOf } from '../../../model/state.js';
import type { RuleContext } from '../context.js';
import { groupsFor, verdictOf } from '../counting.js';
import type { NeedVerdict } from '../verdict.js';
import { say } from '../window.js';

type PhotoNeed = Extract<SimpleNeed, { photo: unknown }>;
type DocumentNeed = Extract<SimpleNeed, { document: unknown }>;

const listOf = <T>(value: T | readonly T[]): readonly T[] =>
  Array.isArray(value) ? (value as readonly T[]) : [value as T];

const shows = (item: { subject?: { is: SubjectName } | undefined }, names: readonly SubjectName[]) =>
  item.subject !== undefined && names.includes(item.subject.is);

/** Photos by what they show. A subject that is only proposed counts; the verdict says so. */
export function photoVerdict(context: RuleContext, need: PhotoNeed): NeedVerdict {
  const names = listOf(need.photo);
  const words = names.map(say).join(' or ');
  const ask = {
    is: (item: EvidenceItem): item is ItemOf<'photo'> => item.kind === 'photo' && shows(item, names),
    one: `photo of: ${words}`,
    many: `photos of: ${words}`,
  };
  return verdictOf(groupsFor(context, need, ask), need, ask);
}

/** Papers by what they are, as a document, or photographed. */
export function documentVerdict(context: RuleContext, need: DocumentNeed): NeedVerdict {
  const names = listOf(need.document);
  const words = names.map(say).join(' or ');
  const ask = {
    is: (item: EvidenceItem): item is ItemOf<'photo' | 'document'> =>
      (item.kind === 'document' || item.kind === 'photo') && shows(item, names),
    one: words,
    many: `papers: ${words}`,
  };
  return verdictOf(groupsFor(context, need, ask), need, ask);
}

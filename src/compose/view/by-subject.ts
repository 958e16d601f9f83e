import type { SubjectName } from '../../core/model/evidence.js';
import type { EvidenceItem } from '../../core/model/state.js';
import type { View } from './context.js';

const subjectOf = (item: EvidenceItem): SubjectName | undefined =>
  item.kind === 'photo' || item.kind === 'document' ? item.subject?.is : undefined;

/** Photos and documents of these subjects, in the order of their exhibit numbers. */
export const withSubject = (view: View, subjects: readonly SubjectName[]): EvidenceItem[] =>
  byExhibitNumber(
    view,
    [...view.of('photo'), ...view.of('document')].filter((item) =>
      subjects.some((subject) => subject === subjectOf(item)),
    ),
  );

export const byExhibitNumber = (view: View, items: readonly EvidenceItem[]): EvidenceItem[] =>
  [...items].sort((a, b) => (view.number(a.evidence) ?? 0) - (view.number(b.evidence) ?? 0));

import type { Evidence, EvidenceKind, SubjectName } from '../../model/evidence.js';
import type { EvidenceItem, ItemOf } from '../../model/state.js';
import { knownMilliseconds } from '../../model/time.js';

type Filed = ItemOf<'photo' | 'document'>;

/** Evidence of a record indexed by kind and by subject, so that no rule has to walk through all of it. */
export interface EvidenceIndex {
  of<K extends Evidence['kind']>(kind: K): readonly ItemOf<K>[];
  showing(subjects: readonly SubjectName[]): readonly Filed[];
  /** Known time of an item, milliseconds since 1970 UTC, parsed once. */
  timeOf(item: EvidenceItem): number | undefined;
}

export function indexOf(evidence: readonly EvidenceItem[]): EvidenceIndex {
  const kinds = new Map<EvidenceKind, EvidenceItem[]>();
  const subjects = new Map<SubjectName, Filed[]>();
  const times = new Map<EvidenceItem, number | undefined>();
  for (const item of evidence) {
    append(kinds, item.kind, item);
    times.set(item, knownMilliseconds(item.time));
    if ((item.kind === 'photo' || item.kind === 'document') && item.subject !== undefined)
      append(subjects, item.subject.is, item);
  }
  return {
    of: <K extends Evidence['kind']>(kind: K) =>
      (kinds.get(kind) ?? []).filter((item): item is ItemOf<K> => item.kind === kind),
    timeOf: (item) => times.get(item),
    showing: (names) => names.flatMap((name) => subjects.get(name) ?? []),
  };
}

function append<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}

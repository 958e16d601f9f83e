import type { Entry } from '../model/entry.js';
import { assertNever } from '../model/error.js';
import type { EvidenceId, EvidenceKind } from '../model/evidence.js';

/** What evidence there is: its kind by its id. */
export type KindOf = (id: EvidenceId) => EvidenceKind | undefined;

/** Whether evidence of this kind is a file, and so has a subject. */
export function isFiled(kind: EvidenceKind): kind is 'photo' | 'unit-log' | 'readings' | 'document' {
  return kind === 'photo' || kind === 'unit-log' || kind === 'readings' || kind === 'document';
}

/** The evidence that an entry brings in. */
export function broughtIn(entry: Entry): { id: EvidenceId; kind: EvidenceKind } | undefined {
  switch (entry.type) {
    case 'evidence-received':
    case 'reading-recorded':
      return { id: entry.body.evidence, kind: entry.body.kind };
    default:
      return undefined;
  }
}

/** What is wrong with an entry in the light of those before it: first the facts, ids once, no id that is not there. */
export function referenceProblem(entry: Entry, kindOf: KindOf): string | undefined {
  if (entry.seq === 0 && entry.type !== 'delivery-facts') return 'the first entry must be the delivery facts';
  const known = (id: EvidenceId | undefined) =>
    id === undefined || kindOf(id) !== undefined ? undefined : `there is no evidence ${id}`;
  const unused = (id: EvidenceId) =>
    kindOf(id) === undefined ? undefined : `there is evidence ${id} already`;
  switch (entry.type) {
    case 'evidence-received':
      return unused(entry.body.evidence) ?? known(entry.body.within?.evidence);
    case 'reading-recorded':
      return (
        unused(entry.body.evidence) ??
        (entry.body.source.is === 'row' ? known(entry.body.source.evidence) : undefined)
      );
    case 'evidence-described': {
      const kind = kindOf(entry.body.evidence);
      if (kind !== undefined && entry.body.subject !== undefined && !isFiled(kind))
        return `${entry.body.evidence} is not a file but a recorded ${kind}, which has no subject`;
      return known(entry.body.evidence);
    }
    case 'evidence-withheld':
      return known(entry.body.evidence);
    case 'clock-compared':
      return (
        known(entry.body.photo) ??
        (entry.body.clock.is === 'unit-log' ? known(entry.body.clock.evidence) : undefined)
      );
    case 'delivery-facts':
    case 'fingerprint-published':
    case 'time-stamp-received':
    case 'dossier-built':
      return undefined;
    default:
      return assertNever(entry);
  }
}

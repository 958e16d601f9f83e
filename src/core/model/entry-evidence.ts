import type { Entry } from './entry.js';
import { assertNever } from './error.js';
import type { EvidenceId } from './evidence.js';

/** The evidence that an entry adds or is about; none for a correction, which is about an entry. */
export function entryEvidence(entry: Entry): EvidenceId[] {
  switch (entry.type) {
    case 'evidence-received':
    case 'reading-recorded':
    case 'evidence-described':
    case 'evidence-withheld':
    case 'evidence-admitted':
      return [entry.body.evidence];
    case 'clock-compared': {
      const { photo, clock } = entry.body;
      return [photo, 'evidence' in clock ? clock.evidence : undefined].filter((id) => id !== undefined);
    }
    case 'claim-noted':
      return entry.body.evidence;
    case 'entry-corrected':
    case 'entry-struck':
    case 'delivery-facts':
    case 'fingerprint-published':
    case 'time-stamp-received':
    case 'dossier-built':
    case 'record-merged':
      return [];
    default:
      return assertNever(entry);
  }
}

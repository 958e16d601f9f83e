import type { Entry } from '../model/entry.js';
import type { EvidenceId } from '../model/evidence.js';
import { countedEntries } from './counted-entries.js';

/**
 * The entries that count and rest on another one: rows read from a struck table, outcomes, exceptions,
 * inspections and pallets that stand on a document or photograph, files that came in an archive or
 * e-mail, comparisons of a clock with it, what was said of a claim because of it, and all that is said of a claim
 * whose receipt is struck. What only describes evidence goes with it and is not named.
 */
export function dependentsOf(entry: Entry, entries: readonly Entry[]): Entry[] {
  const counted = countedEntries(entries).entries.map((one) => one.entry);
  if (entry.type === 'evidence-received' || entry.type === 'reading-recorded')
    return counted.filter((one) => restsOn(one, entry.body.evidence));
  if (entry.type === 'claim-noted' && entry.body.is === 'received') {
    const { claim } = entry.body;
    return counted.filter(
      (one) => one.type === 'claim-noted' && one.seq !== entry.seq && one.body.claim === claim,
    );
  }
  return [];
}

function restsOn(entry: Entry, evidence: EvidenceId): boolean {
  switch (entry.type) {
    case 'evidence-received':
      return entry.body.within?.evidence === evidence;
    case 'reading-recorded':
      if (entry.body.source.is === 'row' && entry.body.source.evidence === evidence) return true;
      return 'documents' in entry.body && entry.body.documents.includes(evidence);
    case 'clock-compared':
      return (
        entry.body.photo === evidence ||
        (entry.body.clock.is === 'unit-log' && entry.body.clock.evidence === evidence)
      );
    case 'claim-noted':
      return entry.body.evidence.includes(evidence);
    default:
      return false;
  }
}

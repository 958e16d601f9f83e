import { asJsonKeeps, canonicalBytes } from '../core/ledger/canonical.js';
import { countedEntries } from '../core/ledger/counted-entries.js';
import type { EvidenceId, Reading } from '../core/model/evidence.js';
import type { DeliveryRecord } from '../record/store.js';

/**
 * Readings from rows of files, by their whole content as entered and as put right: a corrected copy of a file adds only
 * what is new.
 */
export function recordedReadings(record: DeliveryRecord): Map<string, EvidenceId> {
  const held = new Map<string, EvidenceId>();
  const counted = countedEntries(record.entries).entries.map(({ entry }) => entry);
  for (const entry of [...record.entries, ...counted]) {
    if (entry.type !== 'reading-recorded' || entry.body.source.is !== 'row') continue;
    held.set(readingKey(entry.body), entry.body.evidence);
  }
  return held;
}

/** The content of a reading, whatever its id and source. */
export function readingKey(
  reading: Omit<Reading, 'evidence' | 'source'> & Partial<Pick<Reading, 'evidence' | 'source'>>,
): string {
  const { evidence: _evidence, source: _source, ...said } = reading;
  return Buffer.from(canonicalBytes(asJsonKeeps(said))).toString('utf8');
}

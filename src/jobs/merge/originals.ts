import { extname } from 'node:path';
import type { MergePlan } from '../../core/ledger/merge/merge-plan.js';
import type { Sha256 } from '../../core/model/evidence.js';
import type { DeliveryRecord } from '../../record/store.js';

/**
 * Keeps the ledger of the other record and copies the originals of what is taken, each checked against its hash.
 * @throws DossierError 'record-damaged' when the other record lacks one, or has it changed
 */
export async function keepOriginals(
  { taken }: MergePlan,
  ledger: Uint8Array,
  record: DeliveryRecord,
  other: DeliveryRecord,
): Promise<void> {
  const wanted = new Set<Sha256>();
  for (const { entry } of taken) {
    if (entry.type === 'evidence-received') wanted.add(entry.body.file.sha256);
    if (entry.type === 'record-merged') wanted.add(entry.body.ledger.sha256);
  }
  for (const sha256 of wanted) {
    const bytes = await other.readOriginal(sha256);
    await record.addOriginalBytes(bytes, extname((await other.originalPath(sha256)) ?? ''));
  }
  await record.addOriginalBytes(ledger, '.jsonl');
}

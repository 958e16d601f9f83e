import { foldEntries } from '../core/ledger/fold.js';
import { treeHash } from '../core/ledger/tree.js';
import type { DeliveryRecord } from './delivery-record.js';
import { deliveryName } from './recovery.js';

/** What is read of a record: of all of it, or of its beginning. */
export type RecordView = Pick<
  DeliveryRecord,
  'folder' | 'notices' | 'entries' | 'head' | 'state' | 'readOriginal' | 'originalPath'
>;

/** The record as it stood with its first `size` entries. */
export function recordAt(record: DeliveryRecord, size: number): RecordView {
  if (size === record.entries.length) return record;
  const entries = record.entries.slice(0, size);
  const head = { delivery: deliveryName(entries) ?? '', size, root: treeHash(record.leaves.slice(0, size)) };
  const state = foldEntries(entries, head.size, head.root);
  return {
    folder: record.folder,
    notices: record.notices,
    entries,
    head,
    state: () => state,
    readOriginal: (sha256) => record.readOriginal(sha256),
    originalPath: (sha256) => record.originalPath(sha256),
  };
}

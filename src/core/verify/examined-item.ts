import type { MergedRecord } from '../ledger/merge/merged-records.js';
import type { Sha256 } from '../model/evidence.js';
import type { Manifest } from '../model/manifest.js';
import type { CheckedItem } from '../model/verification.js';

/** One thing that was checked, and what it holds of the record. */
export interface ExaminedItem {
  subject: CheckedItem;
  delivery?: string;
  leaves?: readonly Sha256[];
  /** Records that were merged into it. */
  merged?: readonly MergedRecord[];
  /** Originals that are here, whole. */
  originals?: ReadonlySet<Sha256>;
  manifest?: Manifest;
  tagManifestSha256?: Sha256;
}

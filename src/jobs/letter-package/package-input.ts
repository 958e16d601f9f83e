import type { ClaimId, LetterKind } from '../../core/model/claim.js';
import type { LongWork } from '../../core/ports/work.js';
import type { OpenDelivery } from '../delivery.js';
import type { SignedBy } from '../signed-by.js';
import type { PackedFile } from './files.js';
import type { TypedLetter } from './letter-request.js';
import type { SenderNotes } from './sender-notes.js';

/** What is put together, and how. */
export interface PackOptions extends OpenDelivery, LongWork, TypedLetter {
  /** Folder to write, new or empty. */
  out: string;
  /** Whose copy of the dossier goes with it, by its name in copies.yaml; by the kind of letter when left out. */
  for?: string;
  /** Whether the dossier goes with it; by the kind of letter when left out. */
  dossier?: boolean;
  /** Draft a certificate of records for a qualified person to complete. */
  certificate?: boolean;
  templates?: string;
  maxSize?: string;
}

/** Who signs matters where a dossier goes with it. */
export type LetterPackageInput = PackOptions & SignedBy;

export interface LetterPackageReport extends SenderNotes {
  folder: string;
  letter: LetterKind;
  claim?: ClaimId;
  /** Left out when it must be filled in. */
  to?: string;
  files: PackedFile[];
  /** Places in the letter that a person fills in before it is signed. */
  toFillIn: string[];
  certificateToFillIn?: string[];
  /** Entry of the record that notes it. Nothing was sent. */
  entry: number;
  notices: string[];
}

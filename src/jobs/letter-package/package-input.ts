import type { ClaimId, LetterKind } from '../../core/model/claim.js';
import type { LongWork } from '../../core/ports/work.js';
import type { OpenDelivery } from '../delivery.js';
import type { SignedBy } from '../signing/signed-by.js';
import type { PackedFile } from './files.js';
import type { TypedLetter } from './letter-request.js';
import type { SenderNotes } from './sender-notes.js';

/** Options of a letter package. */
export interface PackOptions extends OpenDelivery, LongWork, TypedLetter {
  /** Folder to write, new or empty. */
  out: string;
  /** The redacted copy to enclose, by its name in copies.yaml; by default the one for the kind of letter. */
  for?: string;
  /** Whether to enclose the dossier; by default as the kind of letter asks. */
  dossier?: boolean;
  /** Whether to enclose the assessment too: to the insurer or counsel alone. */
  assessment?: boolean;
  /** Draft a certificate of records for a qualified person to complete. */
  certificate?: boolean;
  templates?: string;
  maxSize?: string;
}

/** The signer matters where a dossier is enclosed. */
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
  /** Entry of the record that notes the package. Nothing was sent. */
  entry: number;
  notices: string[];
}

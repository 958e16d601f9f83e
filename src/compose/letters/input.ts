import type { Day } from '../../core/model/claim.js';
import type { Language, Paper } from '../../core/model/delivery.js';
import type { Sha256 } from '../../core/model/evidence.js';
import type { Exhibit } from '../../core/model/manifest.js';
import type { Money } from '../../core/model/money.js';
import type { Assessment, ClaimResult } from '../../core/model/results.js';
import type { ClaimEntry, RecordState } from '../../core/model/state.js';
import type { Instant } from '../../core/model/time.js';
import type { CarrierTemplates } from '../templates.js';
import type { TemplatedLetterKind } from './kinds.js';

/** What is said of the claim that a letter answers: entries that still count, and what was computed of them. */
export interface LetterClaim {
  entries: readonly ClaimEntry[];
  result?: ClaimResult;
}

/** A file that goes with a letter. */
export interface EnclosedFile {
  name: string;
  what: 'dossier' | 'bag';
  bytes: number;
  sha256: Sha256;
}

/** Everything letters and certificates are made of. */
export interface CorrespondenceInput {
  /** What the reader's copy may show, and what was computed of it that holds for the whole record too. */
  state: RecordState;
  assessment: Assessment;
  /** With the numbers that they have in the dossier. */
  exhibits: readonly Exhibit[];
  fingerprint: { delivery: string; size: number; root: string };
  language: Language;
  paper: Paper;
  madeAt: Instant;
  enclosed: readonly EnclosedFile[];
  templates: CarrierTemplates;
}

/** Everything one letter is made of. */
export interface LetterInput extends CorrespondenceInput {
  kind: TemplatedLetterKind;
  claim?: LetterClaim;
  /** The day that stands on it. */
  day: Day;
  to?: { name: string; address?: string };
  /** Of an offer, or the part that is declined; an entry of the claim says it when left out. */
  amount?: Money;
  /** What a person gives as reasons, or asks for. */
  reasons: readonly string[];
  /** Whether an offer is firm, and whether it disallows the rest of the claim. */
  firm: boolean;
  disallowsRest: boolean;
  /** Whether a notice to the shipper speaks of how the load was placed. */
  loading: boolean;
}

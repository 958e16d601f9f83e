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

/** The claim that a letter answers: current entries, and their results. */
export interface LetterClaim {
  entries: readonly ClaimEntry[];
  result?: ClaimResult;
}

/** A file enclosed with a letter. */
export interface EnclosedFile {
  name: string;
  what: 'dossier' | 'assessment' | 'bag';
  bytes: number;
  sha256: Sha256;
}

/** The input of letters and certificates. */
export interface CorrespondenceInput {
  /** The record as the reader's copy shows it, and results that hold for the whole record too. */
  state: RecordState;
  assessment: Assessment;
  /** With their numbers in the dossier. */
  exhibits: readonly Exhibit[];
  fingerprint: { delivery: string; size: number; root: string };
  language: Language;
  paper: Paper;
  madeAt: Instant;
  enclosed: readonly EnclosedFile[];
  templates: CarrierTemplates;
}

/** The input of one letter. */
export interface LetterInput extends CorrespondenceInput {
  kind: TemplatedLetterKind;
  claim?: LetterClaim;
  /** The date of the letter. */
  day: Day;
  to?: { name: string; address?: string };
  /** Amount of an offer, or the declined part; by default from an entry of the claim. */
  amount?: Money;
  /** Reasons or requests that a person gives. */
  reasons: readonly string[];
  /** Items of the claim, each with the reason why it is declined. */
  items: readonly { item: string; reason: string }[];
  /** Whether an offer is firm, and whether it disallows the rest of the claim. */
  firm: boolean;
  disallowsRest: boolean;
  /** Whether a notice to the shipper mentions how the load was placed. */
  loading: boolean;
}

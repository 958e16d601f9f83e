import type { LetterKind } from '../../core/model/claim.js';
import type { PartyRole } from '../../core/model/delivery.js';

/** Kinds of letters with a template. */
export type TemplatedLetterKind = Exclude<LetterKind, 'other'>;

/** The profile of one kind of letter. */
export interface LetterProfile {
  /** Default recipient; `nobody`: to be filled in. */
  to: 'claimant' | Extract<PartyRole, 'shipper' | 'insurer'> | 'nobody';
  /** The redacted copy, by its name in copies.yaml, that its reader gets and its facts are taken from. */
  copy: 'receiver' | 'insurer';
  /** Whether the dossier is enclosed by default. */
  enclosed: boolean;
  /** Who signs: an officer of the carrier, or nobody because the words are copied by hand onto the bill. */
  signed: boolean;
}

const toClaimant: LetterProfile = { to: 'claimant', copy: 'receiver', enclosed: true, signed: true };

export const LETTER_PROFILES: Readonly<Record<TemplatedLetterKind, LetterProfile>> = {
  acknowledgement: toClaimant,
  'request-for-papers': toClaimant,
  'status-report': toClaimant,
  denial: toClaimant,
  offer: toClaimant,
  'notice-to-shipper': { to: 'shipper', copy: 'receiver', enclosed: true, signed: true },
  'notice-to-insurer': { to: 'insurer', copy: 'insurer', enclosed: true, signed: true },
  'inspection-request': { to: 'nobody', copy: 'receiver', enclosed: false, signed: true },
  reservation: { to: 'shipper', copy: 'receiver', enclosed: false, signed: false },
  'rejection-notice': { to: 'shipper', copy: 'receiver', enclosed: false, signed: true },
  'inspection-appeal': { to: 'nobody', copy: 'receiver', enclosed: false, signed: true },
  'similar-claims': { to: 'claimant', copy: 'receiver', enclosed: false, signed: true },
  recourse: { to: 'nobody', copy: 'receiver', enclosed: true, signed: true },
  'refused-load': { to: 'nobody', copy: 'receiver', enclosed: false, signed: true },
};

export const TEMPLATED_LETTER_KINDS = Object.keys(LETTER_PROFILES) as TemplatedLetterKind[];

import type { LetterKind } from '../../core/model/claim.js';
import type { PartyRole } from '../../core/model/delivery.js';

/** Letters that there is a template for. */
export type TemplatedLetterKind = Exclude<LetterKind, 'other'>;

/** What is particular to one kind of letter. */
export interface LetterProfile {
  /** Whom it goes to when nobody else is named; `nobody`: it must be filled in. */
  to: 'claimant' | Extract<PartyRole, 'shipper' | 'insurer'> | 'nobody';
  /** The copy of the dossier, by its name in copies.yaml, that its reader gets and that its facts are taken from. */
  copy: 'receiver' | 'insurer';
  /** Whether the dossier goes with it when nothing is said. */
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
};

export const TEMPLATED_LETTER_KINDS = Object.keys(LETTER_PROFILES) as TemplatedLetterKind[];

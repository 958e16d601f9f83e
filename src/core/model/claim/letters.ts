import { z } from 'zod';
import { sha256 } from '../evidence.js';
import { claimId, day, noteFields } from './ids.js';

/** How a letter came or went. */
export const letterForm = z.enum(['paper', 'e-mail', 'portal', 'in-person']);

/** Letters of a claim: those that the tool can write, and others. */
export const letterKind = z.enum([
  'acknowledgement',
  'request-for-papers',
  'status-report',
  'denial',
  'offer',
  'notice-to-shipper',
  'notice-to-insurer',
  'inspection-request',
  'reservation',
  'rejection-notice',
  'refused-load',
  'inspection-appeal',
  'similar-claims',
  'recourse',
  'other',
]);
/** A letter or notice that can be written. */
export type LetterKind = z.infer<typeof letterKind>;

export const letterRecord = z.strictObject({
  is: z.literal('letter'),
  ...noteFields,
  way: z.enum(['received', 'sent']),
  letter: letterKind,
  /** The day on which it came, or went. */
  on: day,
  /** Of one that came: the day on which it was sent. */
  sent: day.optional(),
  with: z.string().min(1).max(200),
  form: letterForm.optional(),
});

/** Letters that can come before there is a claim: notices, requests and reservations of the carrier's own. */
export const LETTERS_BEFORE_CLAIM: ReadonlySet<LetterKind> = new Set([
  'notice-to-shipper',
  'notice-to-insurer',
  'inspection-request',
  'reservation',
  'rejection-notice',
  'refused-load',
  'inspection-appeal',
  'other',
]);

/** What was put together to be sent: nothing is sent by the tool. */
export const claimAnswered = z.strictObject({
  is: z.literal('answered'),
  ...noteFields,
  /** Left out when there is no claim yet; only letters of BEFORE_A_CLAIM do without. */
  claim: claimId.optional(),
  letter: letterKind,
  to: z.string().min(1).max(200),
  /** Files of the answer as they were written. */
  files: z
    .array(
      z.strictObject({
        name: z.string().min(1).max(400),
        what: z.enum(['letter', 'letter-text', 'dossier', 'assessment', 'bag', 'enclosures', 'certificate']),
        bytes: z.int().nonnegative(),
        sha256,
      }),
    )
    .max(40),
});

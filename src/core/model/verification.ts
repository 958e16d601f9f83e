import { z } from 'zod';

const checkResult = z.enum(['passed', 'notice', 'failed', 'not-checked']);
/** How a check came out. `notice`: nothing is broken, and the detail says what a reader should know. */
export type CheckResult = z.infer<typeof checkResult>;

export const check = z.object({
  /** Stable, dotted: `signature.digest`, `attachments.bytes`, `record.root` … */
  id: z.string(),
  /** In words, for a person. */
  what: z.string(),
  result: checkResult,
  /** What was found, naming the part (attachment, entry, exhibit). */
  detail: z.string(),
});
/** One check of a verification. Verification never throws: every check is listed with its result. */
export type Check = z.infer<typeof check>;

export const verdict = z.enum(['intact', 'intact-signer-not-vouched-for', 'broken']);
/** The answer of a check as a whole. */
export type Verdict = z.infer<typeof verdict>;

export const signer = z.object({
  /** Subject as the certificate writes it. */
  name: z.string(),
  certificateSha256: z.string(),
  /** The signer's own claim of the time, not proof of it. */
  claimedTime: z.string().exactOptional(),
  /** The time that a time-stamp server confirms: the signature existed by then. */
  stampedTime: z.string().exactOptional(),
});
export type Signer = z.infer<typeof signer>;

export const verification = z.object({
  verdict,
  checks: z.array(check),
  signer: signer.exactOptional(),
  fingerprint: z
    .object({ delivery: z.string(), size: z.int().nonnegative(), root: z.string() })
    .exactOptional(),
});
/** What a check of one dossier found. */
export type Verification = z.infer<typeof verification>;

export const checkedItem = verification.extend({
  /** As it was given. */
  path: z.string(),
  is: z.enum(['dossier', 'bag', 'record', 'unknown']),
});
/** What was found about one of the things that were given. */
export type CheckedItem = z.infer<typeof checkedItem>;

export const verificationReport = z.object({
  schema: z.literal('load-dossier-verification-1'),
  /** The worst of all dossiers; `broken` when anything is. */
  verdict,
  subjects: z.array(checkedItem),
  together: z.array(check),
});
/** What a check of several things found: each alone, and whether they belong together. */
export type VerificationReport = z.infer<typeof verificationReport>;

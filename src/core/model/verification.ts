import { z } from 'zod';
import { volume } from './manifest.js';

const checkResult = z.enum(['passed', 'notice', 'failed', 'not-checked']);
/** How a check came out. `notice`: nothing is broken, and the detail says what a reader should know. */
export type CheckResult = z.infer<typeof checkResult>;

export const check = z.object({
  id: z.string().meta({ description: 'Stable id, such as `signature.digest`' }),
  what: z.string().meta({ description: 'The question, in words' }),
  result: checkResult.meta({ description: 'See below' }),
  detail: z.string().meta({ description: 'What was found' }),
});
/** One check of a verification. Verification never throws: every check is listed with its result. */
export type Check = z.infer<typeof check>;

export const verdict = z.enum(['intact', 'intact-signer-not-vouched-for', 'broken']);
/** The answer of a check as a whole. */
export type Verdict = z.infer<typeof verdict>;

export const signer = z.object({
  name: z.string().meta({ description: 'Subject of the certificate' }),
  certificateSha256: z.string().meta({ description: 'SHA-256 of the certificate' }),
  claimedTime: z
    .string()
    .exactOptional()
    .meta({ description: "The signer's own claim of the time, no proof of it" }),
  stampedTime: z
    .string()
    .exactOptional()
    .meta({ description: 'Time confirmed by a time-stamp server: the signature existed by then' }),
});
export type Signer = z.infer<typeof signer>;

export const verification = z.object({
  verdict: verdict.meta({ description: 'See below' }),
  checks: z.array(check).meta({ description: 'Every check' }),
  signer: signer.exactOptional().meta({ description: 'The signer, where there is a signature' }),
  volume: volume.exactOptional().meta({
    description:
      'Of a signed PDF whose manifest could be read: what it says it is, the dossier or the assessment',
  }),
  fingerprint: z
    .object({ delivery: z.string(), size: z.int().nonnegative(), root: z.string() })
    .exactOptional()
    .meta({ description: 'Fingerprint of the record inside' }),
});
/** What a check of one dossier found. */
export type Verification = z.infer<typeof verification>;

export const checkedItem = verification.extend({
  path: z.string().meta({ description: 'Path as given' }),
  is: z.enum(['dossier', 'bag', 'record', 'unknown']).meta({ description: 'What was found there' }),
});
/** What was found about one of the things that were given. */
export type CheckedItem = z.infer<typeof checkedItem>;

export const verificationReport = z.object({
  schema: z.literal('load-dossier-verification-1').meta({ description: 'Name of this form' }),
  /** The worst of all dossiers; `broken` when anything is. */
  verdict: verdict.meta({ description: 'The worst of the dossiers; `broken` when anything is' }),
  subjects: z.array(checkedItem).meta({ description: 'One for each path' }),
  together: z.array(check).meta({ description: 'Checks over all paths together' }),
});
/** What a check of several things found: each alone, and whether they belong together. */
export type VerificationReport = z.infer<typeof verificationReport>;

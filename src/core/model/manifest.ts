import { z } from 'zod';
import { evidenceId, fileRef, sha256 } from './evidence.js';
import { instant } from './time.js';

/** The two signed PDFs that are made of one record: what was recorded, and what the carrier makes of it. */
export const volume = z.enum(['dossier', 'assessment']);
/** Which of the two signed PDFs of one record it is. */
export type Volume = z.infer<typeof volume>;

/** Evidence as it appears, numbered, in a dossier. */
export const exhibit = z.strictObject({
  exhibit: z.int().positive().meta({ description: 'Number in this dossier, from 1' }),
  evidence: evidenceId.meta({ description: 'Evidence id' }),
  seq: z.int().nonnegative().meta({ description: 'Ledger entry that added it' }),
  kind: z.string().meta({ description: 'Kind of evidence' }),
  file: fileRef.optional().meta({ description: 'The original, for evidence that is a file' }),
  attachedAs: z
    .string()
    .optional()
    .meta({ description: 'Attachment with the original; absent when it is not attached' }),
});
export type Exhibit = z.infer<typeof exhibit>;

export const attachment = z.strictObject({
  name: z
    .string()
    .regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,120}$/)
    .meta({ description: 'Name in the PDF, plain ASCII' }),
  bytes: z.int().positive().meta({ description: 'Size' }),
  sha256: sha256.meta({ description: 'SHA-256' }),
  type: z.string().meta({ description: 'Media type' }),
  what: z
    .enum(['ledger', 'delivery-facts', 'rule-set', 'original', 'computed-data'])
    .meta({ description: 'What it is' }),
});
export type Attachment = z.infer<typeof attachment>;

/** Where the original of an exhibit is when it is not attached. */
export const omittedOriginal = z.strictObject({
  name: z.string().meta({ description: 'Name; `(left out)` where the copy does not name the evidence' }),
  bytes: z.int().nonnegative().meta({ description: 'Size' }),
  sha256: sha256.meta({ description: 'SHA-256' }),
  why: z
    .enum(['empty-file', 'size-budget', 'withheld', 'position', 'blacked-out', 'not-counted', 'in-dossier'])
    .meta({ description: 'Why it is not attached, see below' }),
});
export type OmittedOriginal = z.infer<typeof omittedOriginal>;

/** A picture as it is printed, and the original that it was made from. */
export const exhibitImage = z.strictObject({
  exhibit: z.int().positive().meta({ description: 'Exhibit number' }),
  originalSha256: sha256.meta({ description: 'SHA-256 of the original' }),
  /** Hash of the picture's bytes as they stand in the PDF. */
  plateSha256: sha256.meta({ description: "SHA-256 of the printed picture's bytes in the PDF" }),
});
export type ExhibitImage = z.infer<typeof exhibitImage>;

/** The bag of originals that goes with the dossier, told apart by the hash of its tag manifest (RFC 8493 §2.2.1). */
const originalsBag = z.strictObject({
  name: z.string().meta({ description: 'File name of the zipped bag' }),
  tagManifestSha256: sha256.meta({ description: 'SHA-256 of its tag manifest (RFC 8493 §2.2.1)' }),
  payloadBytes: z.int().nonnegative().meta({ description: 'Octets of the payload, as in Payload-Oxum' }),
  payloadFiles: z.int().nonnegative().meta({ description: 'Files of the payload, as in Payload-Oxum' }),
});
export type OriginalsBag = z.infer<typeof originalsBag>;

/** The list that the signature covers: every exhibit, every attachment, every ledger leaf, the fingerprint. */
export const manifest = z.strictObject({
  manifest: z.literal('load-dossier-manifest-1').meta({ description: 'Name of this form' }),
  volume: volume.optional().meta({
    description:
      'Which of the two PDFs of a record this is: the dossier, or the assessment of the same record; absent in dossiers that were built before there were two',
  }),
  delivery: z.string().meta({ description: 'Name of the delivery' }),
  builtAt: instant.meta({ description: 'Time of building, UTC' }),
  tool: z
    .strictObject({ name: z.string(), version: z.string() })
    .meta({ description: 'Name and version of the program' }),
  record: z
    .strictObject({
      size: z.int().positive().meta({ description: 'Number of entries' }),
      root: sha256.meta({ description: 'Tree hash over the entries (RFC 9162 §2.1.1)' }),
      leaves: z.array(sha256).min(1).meta({
        description: "Leaf hash of every entry in order: SHA-256 of a zero byte and the entry's bytes",
      }),
      leftOut: z.array(z.int().nonnegative()).optional().meta({
        description:
          'Numbers of the entries whose words are not in this copy, ascending; absent when all are',
      }),
    })
    .meta({ description: 'The record' }),
  ruleSet: z
    .strictObject({ name: z.string(), version: z.string(), sha256 })
    .meta({ description: 'The rule set applied' }),
  timeStamp: z.enum(['inside', 'none']).optional().meta({
    description:
      'Whether the signature carries a time stamp; where it is said, the value of an ECDSA signature has the lower of its two possible s. Absent in dossiers of earlier versions',
  }),
  exhibits: z.array(exhibit).meta({ description: 'Every exhibit' }),
  attachments: z.array(attachment).meta({ description: 'Every attachment' }),
  leftOut: z.array(omittedOriginal).meta({ description: 'Originals that are not attached' }),
  plates: z.array(exhibitImage).optional().meta({
    description:
      'Exhibit images. A JPEG that fits its place is there as it is coded in its original: tables and scans, with its colour profile and an Exif block that says which way is up',
  }),
  bag: originalsBag.optional().meta({ description: 'The bag of originals that goes with the dossier' }),
});
export type Manifest = z.infer<typeof manifest>;

/** Name under which the manifest itself is attached. */
export const MANIFEST_NAME = 'manifest.json';

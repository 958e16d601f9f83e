import { z } from 'zod';
import { evidenceId, fileRef, sha256 } from './evidence.js';
import { instant } from './time.js';

/** Evidence as it appears, numbered, in a dossier. */
export const exhibit = z.strictObject({
  /** Number in this dossier, from 1. */
  exhibit: z.int().positive(),
  evidence: evidenceId,
  /** Ledger entry that brought it in. */
  seq: z.int().nonnegative(),
  kind: z.string(),
  /** The original, for evidence that is a file. */
  file: fileRef.optional(),
  /** Name of the attachment that holds the original's bytes; left out when it is not inside. */
  attachedAs: z.string().optional(),
});
export type Exhibit = z.infer<typeof exhibit>;

export const attachment = z.strictObject({
  /** Flat ASCII name inside the PDF. */
  name: z.string().regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,120}$/),
  bytes: z.int().positive(),
  sha256,
  type: z.string(),
  what: z.enum(['ledger', 'delivery-facts', 'rule-set', 'original', 'computed-data']),
});
export type Attachment = z.infer<typeof attachment>;

/** Where the original of an exhibit is when it is not attached. */
export const omittedOriginal = z.strictObject({
  name: z.string(),
  bytes: z.int().nonnegative(),
  sha256,
  why: z.enum(['empty-file', 'size-budget', 'withheld', 'position', 'blacked-out', 'not-counted']),
});
export type OmittedOriginal = z.infer<typeof omittedOriginal>;

/** A picture as it is printed, and the original that it was made from. */
export const exhibitImage = z.strictObject({
  exhibit: z.int().positive(),
  originalSha256: sha256,
  /** Hash of the picture's bytes as they stand in the PDF. */
  plateSha256: sha256,
});
export type ExhibitImage = z.infer<typeof exhibitImage>;

/** The bag of originals that goes with the dossier, told apart by the hash of its tag manifest (RFC 8493 §2.2.1). */
const originalsBag = z.strictObject({
  /** File name of the zipped bag. */
  name: z.string(),
  tagManifestSha256: sha256,
  /** Octets and number of files of the payload, as Payload-Oxum says it. */
  payloadBytes: z.int().nonnegative(),
  payloadFiles: z.int().nonnegative(),
});
export type OriginalsBag = z.infer<typeof originalsBag>;

/** The list that the signature covers: every exhibit, every attachment, every ledger leaf, the fingerprint. */
export const manifest = z.strictObject({
  manifest: z.literal('load-dossier-manifest-1'),
  delivery: z.string(),
  builtAt: instant,
  tool: z.strictObject({ name: z.string(), version: z.string() }),
  record: z.strictObject({
    size: z.int().positive(),
    root: sha256,
    /** Leaf hashes in ledger order: SHA-256(0x00 ‖ entry bytes), RFC 9162 §2.1.1. */
    leaves: z.array(sha256).min(1),
    /** Numbers of entries whose words are not in this copy; their leaf hashes are. Ascending. */
    leftOut: z.array(z.int().nonnegative()).optional(),
  }),
  ruleSet: z.strictObject({ name: z.string(), version: z.string(), sha256 }),
  exhibits: z.array(exhibit),
  attachments: z.array(attachment),
  leftOut: z.array(omittedOriginal),
  plates: z.array(exhibitImage).optional(),
  bag: originalsBag.optional(),
});
export type Manifest = z.infer<typeof manifest>;

/** Name under which the manifest itself is attached. */
export const MANIFEST_NAME = 'manifest.json';

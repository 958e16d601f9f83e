import { asJsonKeeps, canonicalBytes } from '../core/ledger/canonical.js';
import { leafHash, sha256Of, treeHash } from '../core/ledger/tree.js';
import {
  type Attachment,
  type Exhibit,
  type ExhibitImage,
  MANIFEST_NAME,
  type Manifest,
  manifest,
  type OmittedOriginal,
  type OriginalsBag,
  type Volume,
} from '../core/model/manifest.js';
import type { Instant } from '../core/model/time.js';

/** A file as it will be attached. */
export interface AttachmentInput {
  /** Flat ASCII name inside the PDF. */
  name: string;
  bytes: Uint8Array;
  type: string;
  what: Attachment['what'];
}

export interface ManifestParts {
  volume: Volume;
  delivery: string;
  builtAt: Instant;
  tool: { name: string; version: string };
  /** Bytes of each ledger entry in order, without the line feed. */
  entries: readonly Uint8Array[];
  /** The rule set that was applied, with the bytes of its file. */
  ruleSet: { name: string; version: string; bytes: Uint8Array };
  exhibits: readonly Exhibit[];
  attachments: readonly AttachmentInput[];
  leftOut: readonly OmittedOriginal[];
  /** Numbers of entries whose words are not in this copy: see `redactLedger`. */
  entriesLeftOut?: readonly number[];
  plates?: readonly ExhibitImage[];
  /** Whether the signature will carry a time stamp. */
  timeStamp?: Manifest['timeStamp'];
  bag?: OriginalsBag;
}

/**
 * The list that the signature covers, in canonical form (RFC 8785). Hashes, sizes, leaves and root are
 * computed here from the bytes themselves.
 * A part that verification would refuse (a name twice, an exhibit whose file is nowhere) is a bug of the caller
 * and throws an Error.
 */
export function buildManifest(parts: ManifestParts): { manifest: Manifest; bytes: Uint8Array } {
  const leaves = parts.entries.map(leafHash);
  const attachments = parts.attachments.map(({ name, bytes, type, what }) => ({
    name,
    bytes: bytes.length,
    sha256: sha256Of(bytes),
    type,
    what,
  }));
  requireNames(attachments.map(({ name }) => name));
  requireOriginals(parts, attachments);
  const { name, version, bytes } = parts.ruleSet;
  const made = manifest.parse(
    asJsonKeeps({
      manifest: 'load-dossier-manifest-1',
      volume: parts.volume,
      delivery: parts.delivery,
      builtAt: parts.builtAt,
      tool: parts.tool,
      record: {
        size: leaves.length,
        root: treeHash(leaves),
        leaves,
        leftOut: parts.entriesLeftOut?.length === 0 ? undefined : parts.entriesLeftOut,
      },
      ruleSet: { name, version, sha256: sha256Of(bytes) },
      timeStamp: parts.timeStamp,
      exhibits: parts.exhibits,
      attachments,
      leftOut: parts.leftOut,
      plates: parts.plates,
      bag: parts.bag,
    }),
  );
  return { manifest: made, bytes: canonicalBytes(made) };
}

function requireNames(names: readonly string[]): void {
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined) throw new Error(`two attachments have the name ${twice}`);
  if (names.includes(MANIFEST_NAME))
    throw new Error(`only the manifest itself may be named ${MANIFEST_NAME}`);
}

function requireOriginals(parts: ManifestParts, attachments: readonly Attachment[]): void {
  for (const { exhibit, file, attachedAs } of parts.exhibits) {
    if (file === undefined) continue;
    const found =
      attachedAs === undefined
        ? parts.leftOut.some(({ sha256 }) => sha256 === file.sha256)
        : attachments.some(({ name, sha256 }) => name === attachedAs && sha256 === file.sha256);
    if (!found) throw new Error(`the file of exhibit ${exhibit} is neither attached nor left out`);
  }
}

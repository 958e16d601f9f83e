import { X509Certificate } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { parseFingerprint } from '../core/ledger/checkpoint.js';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { Verification, VerificationReport } from '../core/model/verification.js';
import type { Clock } from '../core/ports/clock.js';
import type { KnownFingerprint, VerifyOptions } from '../core/verify/options.js';
import { verifyAll } from '../core/verify/verify-all.js';
import { verifyDossier as verifyBytes } from '../core/verify/verify-dossier.js';
import { type GivenBytes, itemOf } from '../platform/node/container/given-item.js';
import { itemAt } from '../platform/node/container/open-item.js';
import { unreadable } from '../record/disk/disk-error.js';

const LARGEST_CERTIFICATE = 1024 * 1024;

/** A dossier, or the zip of a bag, that is no file here. */
export interface GivenItem {
  /** What the report calls it. */
  name: string;
  /** Its bytes, or a stream of them, which is read whole into memory: at most 1 GiB. */
  bytes: GivenBytes;
}

/** What is checked, and whom the reader trusts. */
export interface VerifyInput {
  /** Dossiers, bags (zip or folder) and record folders. */
  paths: readonly string[];
  /** Dossiers and zips of bags whose bytes are given; they are checked together with those at the paths. */
  given?: readonly GivenItem[];
  /** Certificates (PEM or DER), as files or bytes, of trusted signers, time-stamp servers or authorities. */
  trust: readonly (string | Uint8Array)[];
  /** Fingerprint lines received earlier. */
  fingerprints?: readonly string[];
  /** The claimed signing time must not lie after what it says. */
  now?: Clock;
  /** Compare printed pictures with the originals inside. */
  pictures?: boolean;
}

/**
 * Verifies dossiers, bags and records, each alone and all together. Whatever the bytes, the answer is a report.
 * Throws DossierError only when a path can't be read at all, or a certificate or fingerprint line is invalid.
 */
export async function verify(input: VerifyInput): Promise<VerificationReport> {
  const { paths, given = [] } = input;
  const trusted = (await Promise.all(input.trust.map(readCertificates))).flat();
  const fingerprints = (input.fingerprints ?? []).map(readFingerprint);
  for (const path of paths) await requireThere(path);
  const items = [...paths.map(itemAt), ...given.map(({ name, bytes }) => itemOf(name, bytes))];
  try {
    return await verifyAll(items, {
      trusted,
      fingerprints,
      ...(await picturesOf(input)),
      ...omitUndefined({ at: input.now?.() }),
    });
  } catch (cause) {
    // System errors carry a code; everything else is a bug.
    if (!(cause instanceof Error && 'code' in cause && typeof cause.code === 'string')) throw cause;
    throw new DossierError('unreadable-file', `this cannot be read (${cause.code})`, {
      where: { file: 'path' in cause ? String(cause.path) : paths.join(', ') },
      cause,
    });
  }
}

/** Checks one dossier file. Whatever its bytes, the answer is a verification. */
export async function verifyFile(
  file: string,
  trust: readonly (string | Uint8Array)[],
): Promise<Verification> {
  const { subjects } = await verify({ paths: [file], trust });
  const [subject] = subjects;
  if (subject === undefined) throw new Error('no answer for a file');
  const { path: _, is: __, ...verification } = subject;
  return verification;
}

/** How the bytes of a dossier are checked. */
export interface DossierOptions extends Omit<VerifyOptions, 'pictures'> {
  /** Compare printed pictures with the originals inside: slower, in a process of its own. */
  pictures?: boolean;
}

/** Checks the bytes of a dossier. Never throws, whatever they are: bytes that are no dossier are `broken`. */
export async function verifyDossier(bytes: Uint8Array, options: DossierOptions = {}): Promise<Verification> {
  const { pictures: _, ...more } = options;
  return verifyBytes(bytes, { ...more, ...(await picturesOf(options)) });
}

async function picturesOf({ pictures }: { pictures?: boolean }): Promise<Pick<VerifyOptions, 'pictures'>> {
  if (pictures !== true) return {};
  const { SeparateComparer } = await import('../platform/node/pictures/comparer.js');
  return { pictures: () => new SeparateComparer() };
}

function readFingerprint(line: string): KnownFingerprint {
  const read = parseFingerprint(line);
  if (read !== undefined) return read;
  throw new DossierError('bad-usage', 'this is not a fingerprint line', {
    where: { field: '--fingerprint' },
    fix: 'Give the whole line in quotes: delivery, size and 64 digits, such as "2026-0714-A 12 3f…".',
  });
}

/** Every certificate of a PEM file, or the one of a DER file. */
async function readCertificates(from: string | Uint8Array): Promise<Uint8Array[]> {
  const bytes = typeof from === 'string' ? await readSmall(from) : Buffer.from(from);
  try {
    const blocks = bytes
      .toString('latin1')
      .match(/-----BEGIN CERTIFICATE-----[\s\S]*?-----END CERTIFICATE-----/g) ?? [bytes];
    return blocks.map((block) => new X509Certificate(block).raw);
  } catch (cause) {
    throw new DossierError('bad-usage', 'this is not a certificate', {
      where: typeof from === 'string' ? { file: from } : {},
      fix: 'Give the signer’s certificate as PEM or DER, such as identity.crt.pem.',
      cause,
    });
  }
}

async function readSmall(file: string): Promise<Buffer> {
  try {
    const { size } = await stat(file);
    if (size > LARGEST_CERTIFICATE)
      throw new DossierError('file-too-large', 'this is too large for a certificate', { where: { file } });
    return await readFile(file);
  } catch (cause) {
    if (cause instanceof DossierError) throw cause;
    throw unreadable(file, cause);
  }
}

async function requireThere(file: string): Promise<void> {
  try {
    await stat(file);
  } catch (cause) {
    throw unreadable(file, cause);
  }
}

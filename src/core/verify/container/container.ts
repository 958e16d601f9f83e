import { createHasher } from '#platform/hash';
import { concatBytes, toHex, utf8Bytes } from '../../model/bytes.js';
import type { Sha256 } from '../../model/evidence.js';
import { sha256 } from '../../model/evidence.js';
import { Malformed, refuse } from '../malformed.js';

/** A file in a folder or zip. */
export interface ContainedFile {
  bytes: number;
  /** @throws Malformed when it cannot be read */
  open: () => Promise<AsyncIterable<Uint8Array>>;
}

/** A folder or a zip file, looked through once: paths with `/`, relative to its top. */
export interface Container {
  files: Map<string, ContainedFile>;
  /** Folders that were not looked into, each with `/` at its end. */
  leftAside?: readonly string[];
  /** Gives back what was opened for it. */
  close: () => void;
}

export const LIMITS = {
  files: 100_000,
  /** Bytes of all files together, unpacked. */
  bytes: 64 * 1024 * 1024 * 1024,
  depth: 16,
  /** Bytes of a path. */
  path: 1000,
  /** What a packed file may grow to, in times its packed size, once it is larger than a megabyte. */
  ratio: 200,
} as const;

/** Names that some system gives another meaning: devices of Windows, with or without an ending. */
const DEVICE = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\..*)?$/i;

/**
 * Why a path could lead out of its folder or mean two things on two systems; undefined when it is plain
 * (RFC 8493 §5.1 and §5.2.1, CWE-22).
 */
export function unsafePath(path: string): string | undefined {
  if (path === '' || utf8Bytes(path).length > LIMITS.path) return 'an empty or endless name';
  if (/[\\\0]|\p{Cc}/u.test(path)) return 'a backslash or control character in a name';
  if (path.startsWith('/') || /^[A-Za-z]:/.test(path)) return 'an absolute path';
  if (path.startsWith('~')) return 'a path that stands for a home folder';
  const parts = path.split('/');
  if (parts.length > LIMITS.depth) return 'folders nested too deep';
  if (parts.some((part) => part === '..' || part === '.' || part === '')) return 'a path with . or .. in it';
  if (parts.some((part) => DEVICE.test(part) || /[. ]$/.test(part)))
    return 'a name that is a device on some systems';
  return undefined;
}

/** Refuses a path that is unsafe, or that is another one in other letters (case, composed or decomposed). */
export function requireSafePath(path: string, seen: Set<string>): void {
  const why = unsafePath(path);
  if (why !== undefined) refuse(`${why}: ${JSON.stringify(path.slice(0, 100))}`);
  const plain = path.normalize('NFC').toLowerCase();
  if (seen.has(plain)) refuse(`two files of one name: ${JSON.stringify(path.slice(0, 100))}`);
  seen.add(plain);
  if (seen.size > LIMITS.files) refuse(`more than ${LIMITS.files} files`);
}

/** Size and SHA-256 of a file, read once. @throws Malformed when it cannot be read to its end */
export async function hashOf(file: ContainedFile): Promise<{ bytes: number; sha256: Sha256 }> {
  const hash = createHasher('sha256');
  let bytes = 0;
  await reading(async () => {
    for await (const chunk of await file.open()) {
      hash.update(chunk);
      bytes += chunk.length;
    }
  });
  return { bytes, sha256: sha256.parse(toHex(hash.digest())) };
}

/** All bytes of a file. @throws Malformed when it has more than `most` or cannot be read */
export async function readWhole(file: ContainedFile, most: number, what: string): Promise<Uint8Array> {
  if (file.bytes > most) refuse(`${what} is larger than it may be`);
  const chunks: Uint8Array[] = [];
  let size = 0;
  await reading(async () => {
    for await (const chunk of await file.open()) {
      size += chunk.length;
      if (size > most) refuse(`${what} is larger than it may be`);
      chunks.push(chunk);
    }
  });
  return concatBytes(chunks);
}

async function reading(action: () => Promise<void>): Promise<void> {
  try {
    await action();
  } catch (error) {
    if (error instanceof Malformed) throw error;
    refuse(`cannot be read: ${error instanceof Error ? error.message : 'no reason given'}`);
  }
}

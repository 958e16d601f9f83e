import type { Readable } from 'node:stream';
import { crc32 } from 'node:zlib';
import type { Entry, ZipFile } from 'yauzl';
import { DossierError, type Problem } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { nameProblem, overlapDetector, specialFileReason } from './archive/entry-checks.js';
import { ignoredReason } from './file-scan.js';

/** One file in an archive that may be extracted. */
export interface ArchiveEntry {
  /** Path in the archive, with `/`. */
  name: string;
  bytes: number;
  /** The unpacked bytes; rejects with DossierError when they differ from the archive's list. */
  read(): AsyncIterable<Uint8Array>;
}

export interface Archive {
  /** In the order of the archive's own list. */
  entries: ArchiveEntry[];
  skipped: { name: string; why: string }[];
  problems: Problem[];
  close(): void;
}

export interface ArchiveLimits {
  entries: number;
  /** Unpacked bytes of one entry, and of all together. */
  entryBytes: number;
  totalBytes: number;
  /** Unpacked bytes for each packed byte above which an entry counts as a bomb. */
  ratio: number;
}

/** Limits well above what phones and chats export; deflate itself reaches 1,032 to 1 on empty bytes only. */
export const ARCHIVE_LIMITS: ArchiveLimits = {
  entries: 5_000,
  entryBytes: 1024 ** 3,
  totalBytes: 4 * 1024 ** 3,
  ratio: 200,
};
/** Skipped entries that are listed one by one: there may be thousands. */
const MOST_LISTED = 50;
/** A table of zeros packs well without being a bomb: small entries may have any ratio. */
const RATIO_FREE_BYTES = 1024 ** 2;

/**
 * Opens a zip file and lists what may be extracted. Every entry is judged by the central directory before a byte is
 * unpacked: names that lead out (CWE-22), links, bombs (CWE-409), overlapping entries, repeated names and encrypted
 * entries are rejected and listed. Never throws for a bad archive: it is a problem.
 */
export async function openArchive(
  path: string,
  shown: string,
  limits: ArchiveLimits = ARCHIVE_LIMITS,
): Promise<Archive> {
  const found: Archive = { entries: [], skipped: [], problems: [], close: () => undefined };
  let refusals = 0;
  const problem = (code: Problem['code'], message: string, fix?: string): void => {
    found.problems.push({
      code,
      message,
      where: { file: shown },
      ...omitUndefined({ fix }),
    });
  };
  const refuse = (message: string, fix?: string): void => {
    refusals += 1;
    if (refusals <= MOST_LISTED) problem('unsupported-file', message, fix);
  };
  const { getFileNameLowLevel, openPromise } = await import('yauzl');
  try {
    // Names are decoded here, so that one bad name does not hide the entries after it.
    const zip = await openPromise(path, { lazyEntries: true, autoClose: false, decodeStrings: false });
    found.close = () => zip.close();
    const spans = overlapDetector();
    const seen = new Set<string>();
    let total = 0;
    let count = 0;
    for await (const entry of zip.eachEntry()) {
      count += 1;
      if (count > limits.entries) {
        problem('file-too-large', `more than ${limits.entries} entries; the rest is left in the archive`);
        break;
      }
      const name = getFileNameLowLevel(
        entry.generalPurposeBitFlag,
        entry.fileNameRaw,
        entry.extraFields,
        true,
      );
      if (name.endsWith('/') && entry.uncompressedSize === 0) continue;
      const refused =
        nameProblem(name) ??
        specialFileReason(entry) ??
        spans(entry) ??
        (seen.has(name) ? 'its name stands in the archive twice; the first is taken' : undefined) ??
        tooMuch(entry, total, limits);
      if (refused !== undefined) {
        refuse(`"${name}" is not taken out: ${refused}`);
        continue;
      }
      seen.add(name);
      const why = ignoredReason(name);
      if (why !== undefined) {
        found.skipped.push({ name: `${shown}/${name}`, why });
        continue;
      }
      if (!entry.canDecodeFileData()) {
        const how = entry.isEncrypted() ? 'encrypted' : `packed by method ${entry.compressionMethod}`;
        refuse(`"${name}" is ${how}; it stays in the archive`, 'unpack it yourself and collect the file');
        continue;
      }
      total += entry.uncompressedSize;
      found.entries.push({
        name,
        bytes: entry.uncompressedSize,
        read: () => unpack(zip, entry, shown, name),
      });
    }
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : 'unknown';
    problem(
      'unreadable-file',
      `the archive cannot be read to its end (${why}); it is kept as it is`,
      'export it once more, or unpack it yourself and collect the files',
    );
  }
  if (refusals > MOST_LISTED)
    problem('unsupported-file', `${refusals - MOST_LISTED} more are not taken out either`);
  return found;
}

function tooMuch(entry: Entry, total: number, limits: ArchiveLimits): string | undefined {
  const { compressedSize, uncompressedSize } = entry;
  if (uncompressedSize > limits.entryBytes) return `it unpacks to ${uncompressedSize} bytes`;
  if (total + uncompressedSize > limits.totalBytes)
    return `the archive would unpack to more than ${limits.totalBytes} bytes`;
  if (uncompressedSize > RATIO_FREE_BYTES && uncompressedSize > compressedSize * limits.ratio)
    return `${compressedSize} bytes that unpack to ${uncompressedSize} are a bomb, not evidence`;
  return undefined;
}

async function* unpack(zip: ZipFile, entry: Entry, shown: string, name: string): AsyncIterable<Uint8Array> {
  const damaged = (why: string, cause?: unknown) =>
    new DossierError('unreadable-file', `"${name}" in the archive is damaged: ${why}`, {
      where: { file: shown },
      fix: 'export the archive once more',
      cause,
    });
  let sum = 0;
  let stream: Readable;
  try {
    stream = await zip.openReadStreamPromise(entry);
  } catch (cause) {
    throw damaged(cause instanceof Error ? cause.message : 'it cannot be opened', cause);
  }
  try {
    for await (const chunk of stream) {
      const bytes = chunk as Buffer;
      sum = crc32(bytes, sum);
      yield bytes;
    }
  } catch (cause) {
    if (cause instanceof DossierError) throw cause;
    throw damaged(cause instanceof Error ? cause.message : 'it cannot be unpacked', cause);
  }
  if (sum !== entry.crc32) throw damaged('its checksum does not match');
}

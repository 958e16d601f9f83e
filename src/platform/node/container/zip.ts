import { createReadStream } from 'node:fs';
import yauzl from 'yauzl';
import {
  type ContainedFile,
  type Container,
  LIMITS,
  requireSafePath,
} from '../../../core/verify/container/container.js';
import { refuse } from '../../../core/verify/malformed.js';

const STORED = 0;
/** Large reads keep hashing near the disk's speed. */
const CHUNK = 1024 * 1024;
const ENCRYPTED = 0x1;
const LINK = 0o120000;
const KIND = 0o170000;

/** Where a zip file is: the path of a file, or its bytes. */
type Source = string | Uint8Array;

/**
 * A zip file by its central directory. Nothing is written to the disk; sizes, ratio and names are judged before any
 * of it is unpacked (CWE-409, CWE-22; Fifield, "A better zip bomb", WOOT 2019).
 * @throws Malformed
 */
export async function openZip(source: Source): Promise<Container> {
  const zip = await openSource(source);
  try {
    return await list(source, zip);
  } catch (error) {
    zip.close();
    throw error;
  }
}

function openSource(source: Source): Promise<yauzl.ZipFile> {
  const options = { lazyEntries: true, autoClose: false, strictFileNames: true, validateEntrySizes: true };
  return new Promise((done, fail) => {
    const opened = (error: Error | null, zip: yauzl.ZipFile) => {
      if (error !== null) fail(asMalformed(error));
      else done(zip);
    };
    if (typeof source === 'string') yauzl.open(source, options, opened);
    else yauzl.fromBuffer(Buffer.from(source.buffer, source.byteOffset, source.length), options, opened);
  });
}

function list(source: Source, zip: yauzl.ZipFile): Promise<Container> {
  return new Promise((done, fail) => {
    const files = new Map<string, ContainedFile>();
    const seen = new Set<string>();
    const places: [from: number, to: number][] = [];
    let total = 0;
    zip.on('error', (error: Error) => fail(asMalformed(error)));
    zip.on('end', () => {
      try {
        requireApart(places);
        done({ files, close: () => zip.close() });
      } catch (error) {
        fail(error);
      }
    });
    zip.on('entry', (entry: yauzl.Entry) => {
      try {
        if (!entry.fileName.endsWith('/')) {
          requireSafePath(entry.fileName, seen);
          requirePlain(entry);
          total += entry.uncompressedSize;
          if (total > LIMITS.bytes) refuse(`more than ${LIMITS.bytes} bytes unpacked`);
          places.push([
            entry.relativeOffsetOfLocalHeader,
            entry.relativeOffsetOfLocalHeader + entry.compressedSize,
          ]);
          files.set(entry.fileName, {
            bytes: entry.uncompressedSize,
            open: () => openEntry(source, zip, entry),
          });
        }
        zip.readEntry();
      } catch (error) {
        fail(error);
      }
    });
    zip.readEntry();
  });
}

function requirePlain(entry: yauzl.Entry): void {
  const name = JSON.stringify(entry.fileName.slice(0, 100));
  if ((entry.generalPurposeBitFlag & ENCRYPTED) !== 0) refuse(`an encrypted file: ${name}`);
  if (((entry.externalFileAttributes >>> 16) & KIND) === LINK) refuse(`a link: ${name}`);
  const { uncompressedSize, compressedSize } = entry;
  if (uncompressedSize > 1024 * 1024 && uncompressedSize > compressedSize * LIMITS.ratio)
    refuse(`a file that would grow more than ${LIMITS.ratio} times: ${name}`);
}

/** Files of an honest zip lie one after the other; those of a bomb share their bytes. */
function requireApart(places: [from: number, to: number][]): void {
  places.sort(([a], [b]) => a - b);
  for (const [i, [from]] of places.entries()) {
    const before = places[i - 1];
    if (before !== undefined && from < before[1]) refuse('files in the zip that share their bytes');
  }
}

/** Stored bytes are read from the file itself in large chunks, which is much quicker; packed ones are unpacked. */
async function openEntry(
  source: Source,
  zip: yauzl.ZipFile,
  entry: yauzl.Entry,
): Promise<AsyncIterable<Uint8Array>> {
  if (typeof source !== 'string' || entry.compressionMethod !== STORED || entry.compressedSize === 0)
    return unpacking(zip, entry);
  const start = await dataStart(zip, entry);
  return createReadStream(source, { start, end: start + entry.compressedSize - 1, highWaterMark: CHUNK });
}

function dataStart(zip: yauzl.ZipFile, entry: yauzl.Entry): Promise<number> {
  return new Promise((done, fail) => {
    zip.readLocalFileHeader(entry, { minimal: true }, (error, header) => {
      if (error !== null) fail(asMalformed(error));
      else done(header.fileDataStart);
    });
  });
}

function unpacking(zip: yauzl.ZipFile, entry: yauzl.Entry): Promise<AsyncIterable<Uint8Array>> {
  return new Promise((done, fail) => {
    zip.openReadStream(entry, (error, stream) => {
      if (error !== null) fail(asMalformed(error));
      else done(stream);
    });
  });
}

function asMalformed(error: Error): Error {
  try {
    return refuse(error.message);
  } catch (malformed) {
    return malformed instanceof Error ? malformed : error;
  }
}

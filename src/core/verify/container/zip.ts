import { createReadStream } from 'node:fs';
import type { Readable } from 'node:stream';
import yauzl from 'yauzl';
import { refuse } from '../malformed.js';
import { type ContainedFile, type Container, LIMITS, requireSafePath } from './container.js';

const STORED = 0;
/** Large reads keep hashing near the disk's speed. */
const CHUNK = 1024 * 1024;
const ENCRYPTED = 0x1;
const LINK = 0o120000;
const KIND = 0o170000;

/**
 * A zip file by its central directory. Nothing is written to the disk; sizes, ratio and names are judged before any
 * of it is unpacked (CWE-409, CWE-22; Fifield, "A better zip bomb", WOOT 2019).
 * @throws Malformed
 */
export async function openZip(file: string): Promise<Container> {
  const zip = await openFile(file);
  try {
    return await list(file, zip);
  } catch (error) {
    zip.close();
    throw error;
  }
}

function openFile(file: string): Promise<yauzl.ZipFile> {
  return new Promise((done, fail) => {
    yauzl.open(
      file,
      { lazyEntries: true, autoClose: false, strictFileNames: true, validateEntrySizes: true },
      (error, zip) => {
        if (error !== null) fail(asMalformed(error));
        else done(zip);
      },
    );
  });
}

function list(file: string, zip: yauzl.ZipFile): Promise<Container> {
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
            open: () => openEntry(file, zip, entry),
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
async function openEntry(file: string, zip: yauzl.ZipFile, entry: yauzl.Entry): Promise<Readable> {
  if (entry.compressionMethod !== STORED || entry.compressedSize === 0) return unpacking(zip, entry);
  const start = await dataStart(zip, entry);
  return createReadStream(file, { start, end: start + entry.compressedSize - 1, highWaterMark: CHUNK });
}

function dataStart(zip: yauzl.ZipFile, entry: yauzl.Entry): Promise<number> {
  return new Promise((done, fail) => {
    zip.readLocalFileHeader(entry, { minimal: true }, (error, header) => {
      if (error !== null) fail(asMalformed(error));
      else done(header.fileDataStart);
    });
  });
}

function unpacking(zip: yauzl.ZipFile, entry: yauzl.Entry): Promise<Readable> {
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

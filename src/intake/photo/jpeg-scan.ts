import { closeSync, fstatSync, openSync } from 'node:fs';
import { readInto } from '../table/bytes.js';

export interface JpegHead {
  /** Stored size in pixels. */
  width: number;
  height: number;
  /** The Exif block, from its byte order mark on. */
  exif: Uint8Array | undefined;
}

/**
 * Result of scanning the markers of a JPEG file (ITU-T T.81 annex B): all in place; the file ends before its
 * picture does; damaged or unusual, so that only decoding can tell.
 */
export type JpegStructure =
  | ({ is: 'whole' } & JpegHead)
  | ({ is: 'cut-off' } & JpegHead)
  | { is: 'doubtful' };

const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
const APP1 = 0xe1;
const TEM = 0x01;
/** DHT, JPG and DAC are among the codes of start-of-frame markers and are none. */
const NO_FRAME = new Set([0xc4, 0xc8, 0xcc]);

/**
 * Longest stretch of coded data without the byte 0xFF. A drawn photo of 12 megapixels has one among some 300 bytes, and
 * never 2,700 between two; sectors of a card that were lost or filled with something else have none, or one that is
 * followed by what no coder writes.
 */
const LONGEST_STRETCH = 8192;
/** A sector of zeros is what remains of data that never reached the card. */
const NOTHING = Buffer.alloc(256);

const DOUBTFUL: JpegStructure = { is: 'doubtful' };

/** Bytes read at once; a phone's photo has a tenth of it. */
const MOST_BYTES = 64 * 1024 ** 2;

/** Reused for one file after the other: allocating it for each costs more than reading. */
let room = Buffer.alloc(0);

/**
 * Scans the structure of a JPEG on the disk. One that is too large or unreadable is `doubtful`: it has to be
 * decoded. Reads synchronously: the file was just written, and the thread pool would take as long again.
 */
export function scanJpegFile(path: string): JpegStructure {
  try {
    const bytes = bytesOf(path);
    return bytes === undefined ? { is: 'doubtful' } : scan(bytes);
  } catch {
    return { is: 'doubtful' };
  }
}

/** Valid until the next file is read. */
function bytesOf(path: string): Buffer | undefined {
  const file = openSync(path, 'r');
  try {
    const { size } = fstatSync(file);
    if (size > MOST_BYTES) return undefined;
    // Some spare room, so that a slightly larger photo fits as well.
    if (room.length < size) room = Buffer.allocUnsafe(Math.ceil(size * 1.25));
    return room.subarray(0, readInto(room, file, size));
  } finally {
    closeSync(file);
  }
}

/**
 * Follows the markers from the first to the end of image, through every scan. `doubtful` when one is out of place
 * or coded data holds what no coder writes. Data after the end of image is not scanned. Single wrong bits in the
 * coded data are not detected. The result shares no memory with `bytes`.
 */
export function scan(bytes: Buffer): JpegStructure {
  let frame: { width: number; height: number } | undefined;
  let exif: Uint8Array | undefined;
  let scans = 0;
  if (bytes.length < 4 || bytes.readUInt16BE(0) !== (0xff00 | SOI)) return DOUBTFUL;
  for (let at = 2; at + 2 <= bytes.length; ) {
    if (bytes[at] !== 0xff) {
      const next = scans === 0 ? markerAfter(bytes, at) : undefined;
      if (next === undefined) return DOUBTFUL;
      at = next;
    }
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === EOI)
      return frame === undefined || scans === 0 ? DOUBTFUL : { is: 'whole', ...frame, exif };
    if (marker === TEM || marker < 0xc0 || (marker >= 0xd0 && marker <= SOI)) return DOUBTFUL;
    if (at + 4 > bytes.length) break;
    const begin = at + 4;
    const end = at + 2 + bytes.readUInt16BE(at + 2);
    if (end < begin) return DOUBTFUL;
    if (end > bytes.length) break;
    if (marker >= 0xc0 && marker <= 0xcf && !NO_FRAME.has(marker)) {
      if (frame !== undefined || end < begin + 6) return DOUBTFUL;
      frame = { height: bytes.readUInt16BE(begin + 1), width: bytes.readUInt16BE(begin + 3) };
      if (frame.width === 0 || frame.height === 0) return DOUBTFUL;
    }
    if (marker === APP1 && bytes.toString('latin1', begin, begin + 6) === 'Exif\0\0')
      exif ??= new Uint8Array(bytes.subarray(begin + 6, end));
    at = end;
    if (marker === SOS) {
      if (frame === undefined) return DOUBTFUL;
      scans += 1;
      const next = endOfScan(bytes, end);
      if (next === 'doubtful') return DOUBTFUL;
      at = next;
    }
  }
  return frame === undefined ? DOUBTFUL : { is: 'cut-off', ...frame, exif };
}

/** Bytes between two markers of the head that belong to none, as some programs leave them; decoders pass them over. */
const MOST_STRAY = 64 * 1024;

/** Start of the next marker behind stray bytes in the head of a picture. */
function markerAfter(bytes: Buffer, at: number): number | undefined {
  for (
    let next = bytes.indexOf(0xff, at);
    next >= 0 && next - at <= MOST_STRAY;
    next = bytes.indexOf(0xff, next + 1)
  ) {
    const marker = bytes[next + 1] ?? 0;
    if (marker >= 0xc0 && marker !== 0xff && (marker < 0xd0 || marker > SOI)) return next;
  }
  return undefined;
}

/** Start of the marker after a scan (T.81 §B.1.1.5), or the end of the file. */
function endOfScan(bytes: Buffer, begin: number): number | 'doubtful' {
  let last = begin;
  let restart = 0;
  for (;;) {
    const found = bytes.indexOf(0xff, last);
    const at = found < 0 ? bytes.length : found;
    if (at - last > LONGEST_STRETCH) return 'doubtful';
    if (at + 1 >= bytes.length) return bytes.length;
    const next = bytes[at + 1] ?? 0;
    // Fill bytes may precede a marker, but an erased sector is all ones too.
    if (next === 0xff) return 'doubtful';
    if (next >= 0xd0 && next <= 0xd7) {
      // Restart markers are numbered in turn.
      if ((next & 7) !== restart) return 'doubtful';
      restart = (restart + 1) & 7;
    } else if (next !== 0) {
      const nothing = at === begin || bytes.subarray(begin, at).includes(NOTHING);
      return nothing ? 'doubtful' : at;
    }
    last = at + 2;
  }
}

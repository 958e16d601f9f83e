import { open } from 'node:fs/promises';
import exifr from '#exifr';

/** What a picture says about itself, as written: no date revived, no value translated. */
export interface RawExif {
  dateTimeOriginal?: string;
  offsetTimeOriginal?: string;
  subSecTimeOriginal?: string;
  createDate?: string;
  offsetTimeDigitized?: string;
  subSecTimeDigitized?: string;
  modifyDate?: string;
  offsetTime?: string;
  gpsDate?: string;
  /** Hours, minutes, seconds, UTC. */
  gpsTime?: readonly [number, number, number];
  latitude?: number;
  longitude?: number;
  make?: string;
  model?: string;
  serial?: string;
  software?: string;
  orientation?: number;
}

const OPTIONS = {
  tiff: true,
  exif: true,
  gps: true,
  reviveValues: false,
  translateValues: false,
} as const;

/** What a picture says about itself, and the small copy of it that cameras put beside that. */
export interface ReadExif {
  exif: RawExif;
  /** A JPEG, as it is written; most cameras keep one of 160 × 120 pixels or more (from memory). */
  preview?: Uint8Array;
}

/**
 * Reads EXIF raw: from the block that the picture's decoder found, or, where it found none (TIFF, files that it refuses),
 * from the file itself. Never throws: a picture without readable EXIF gives an empty record.
 */
export async function readExif(path: string, block: Uint8Array | undefined): Promise<RawExif> {
  if (block !== undefined) return (await readExifBlock(block)).exif;
  const bytes = await endsOf(path).catch(() => undefined);
  return bytes === undefined || isEndless(bytes) ? {} : ((await parseRaw(bytes, false))?.exif ?? {});
}

/** The same from the Exif block alone, with or without the marker before it. */
export async function readExifBlock(block: Uint8Array | undefined): Promise<ReadExif> {
  if (block === undefined) return { exif: {} };
  // sharp hands the block over with the marker that JPEG puts in front of the TIFF header.
  const marked = Buffer.from(block.subarray(0, 6)).toString('latin1') === 'Exif\0\0';
  // A copy: the library follows offsets past the end of what it is given, into whatever lies in memory behind it.
  return (await parseRaw(new Uint8Array(marked ? block.subarray(6) : block), true)) ?? { exif: {} };
}

/** Of larger files only the two ends are read, where directories of tags are written. */
const WHOLE = 16 * 1024 * 1024;
/** Beyond this the end is not read either. */
const MOST_BYTES = 1024 ** 3;

/** A file in memory of its own, with zeros between its ends when it is large: room that is not touched costs none. */
async function endsOf(path: string): Promise<Uint8Array> {
  const file = await open(path, 'r');
  try {
    const { size } = await file.stat();
    const bytes = new Uint8Array(size <= MOST_BYTES ? size : WHOLE);
    const first = Math.min(bytes.length, bytes.length <= WHOLE ? WHOLE : WHOLE / 2);
    await file.read(bytes, 0, first, 0);
    const last = Math.min(bytes.length - first, WHOLE / 2);
    if (last > 0) await file.read(bytes, bytes.length - last, last, bytes.length - last);
    return bytes;
  } finally {
    await file.close();
  }
}

/** More boxes than a picture has. */
const MOST_BOXES = 10_000;
const META = 0x6d657461;

/**
 * Whether a file that begins as HEIF has boxes (ISO/IEC 14496-12, §4.2) that do not lead to `meta` and past it: one
 * without a length, or very many. The library would follow them without end.
 */
function isEndless(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 16 || view.getUint16(0) !== 0) return false;
  let inMeta = false;
  let at = view.getUint32(0);
  for (let boxes = 0; boxes < MOST_BOXES; boxes++) {
    if (at > bytes.length - 16) return false;
    const short = view.getUint32(at);
    const length = short === 1 ? Number(view.getBigUint64(at + 8)) : short;
    if (!inMeta && view.getUint32(at + 4) === META) {
      inMeta = true;
      at += short === 1 ? 20 : 12;
    } else if (length < 8) return !inMeta || length !== 0;
    else at += length;
  }
  return true;
}

async function parseRaw(bytes: Uint8Array, withPreview: boolean): Promise<ReadExif | undefined> {
  try {
    const reader = new exifr.Exifr({ ...OPTIONS, ifd1: withPreview });
    await reader.read(bytes);
    const read = understood(await reader.parse());
    const preview = read === undefined || !withPreview ? undefined : await reader.extractThumbnail();
    return read === undefined || preview === undefined ? read : { ...read, preview };
  } catch {
    return undefined;
  }
}

function understood(tags: unknown): ReadExif | undefined {
  if (typeof tags !== 'object' || tags === null) return undefined;
  const exif = pickFields(tags as Record<string, unknown>);
  return Object.keys(exif).length === 0 ? undefined : { exif };
}

function pickFields(tags: Record<string, unknown>): RawExif {
  const text = (name: string): string | undefined => {
    const value = tags[name];
    // Cameras pad with NULs and blanks; a blank means that nothing is known (Exif 2.32 §4.6.5).
    const own = typeof value === 'string' ? value.replaceAll('\0', '').trim() : '';
    return own === '' || own.length > 200 ? undefined : own;
  };
  const number = (name: string): number | undefined => {
    const value = tags[name];
    return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
  };
  const gpsTime = tags.GPSTimeStamp;
  // Degrees without their hemisphere could lie in four places, so they are nowhere.
  const latitude = /^[NS]$/i.test(text('GPSLatitudeRef') ?? '') ? number('latitude') : undefined;
  const longitude = /^[EW]$/i.test(text('GPSLongitudeRef') ?? '') ? number('longitude') : undefined;
  const orientation = number('Orientation');
  return defined({
    dateTimeOriginal: text('DateTimeOriginal'),
    offsetTimeOriginal: text('OffsetTimeOriginal'),
    subSecTimeOriginal: text('SubSecTimeOriginal'),
    createDate: text('CreateDate'),
    offsetTimeDigitized: text('OffsetTimeDigitized'),
    subSecTimeDigitized: text('SubSecTimeDigitized'),
    modifyDate: text('ModifyDate'),
    offsetTime: text('OffsetTime'),
    gpsDate: text('GPSDateStamp'),
    gpsTime: isTriple(gpsTime) ? gpsTime : undefined,
    ...(validPosition(latitude, longitude) ? { latitude, longitude } : {}),
    make: text('Make'),
    model: text('Model'),
    serial: text('SerialNumber'),
    software: text('Software'),
    orientation:
      orientation !== undefined && Number.isInteger(orientation) && orientation >= 1 && orientation <= 8
        ? orientation
        : undefined,
  });
}

/** 0°, 0° is what a receiver without a fix writes, and no farm lies there. */
function validPosition(latitude: number | undefined, longitude: number | undefined): boolean {
  if (latitude === undefined || longitude === undefined) return false;
  return Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180 && (latitude !== 0 || longitude !== 0);
}

function isTriple(value: unknown): value is readonly [number, number, number] {
  return (
    Array.isArray(value) &&
    value.length === 3 &&
    value.every((v) => typeof v === 'number' && Number.isFinite(v))
  );
}

function defined<T extends object>(fields: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  const own: { [K in keyof T]?: Exclude<T[K], undefined> } = {};
  for (const key of Object.keys(fields) as (keyof T)[]) {
    const value = fields[key];
    if (value !== undefined) own[key] = value as Exclude<T[typeof key], undefined>;
  }
  return own;
}

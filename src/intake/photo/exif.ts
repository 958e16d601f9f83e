import { z } from 'zod';
import exifr from '#exifr';
import { Workers } from '../../platform/node/worker/workers.js';

/** Tags of a picture, as written: no date parsed, no value translated. */
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

/**
 * Only these are read, each once: a hostile directory has thousands of tags that each name the whole block.
 * @public Read by the bench, too.
 */
export const TAGS = [
  ...['DateTimeOriginal', 'OffsetTimeOriginal', 'SubSecTimeOriginal'],
  ...['CreateDate', 'OffsetTimeDigitized', 'SubSecTimeDigitized', 'ModifyDate', 'OffsetTime'],
  ...['GPSDateStamp', 'GPSTimeStamp', 'GPSLatitudeRef', 'GPSLatitude', 'GPSLongitudeRef', 'GPSLongitude'],
  ...['Make', 'Model', 'SerialNumber', 'Software', 'Orientation', 'ThumbnailOffset', 'ThumbnailLength'],
];

const OPTIONS = { pick: TAGS, reviveValues: false, translateValues: false };

/** Tags of a picture, and the preview that cameras store beside them. */
export interface ReadExif {
  exif: RawExif;
  /** A JPEG as stored; most cameras write 160 × 120 pixels or more (from memory). */
  preview?: Uint8Array;
}

/**
 * Time after which a file is given up: the library never ends on a HEIF box of zero or negative length. One at a
 * time: the largest pictures are read whole.
 */
const tagsOfFile = new Workers<{ path: string; options: typeof OPTIONS }, unknown>({
  script: new URL('./exif-file.worker.js', import.meta.url),
  runs: 'thread',
  seconds: 3,
  megabytes: 512,
  answer: z.unknown(),
  reused: true,
});

/**
 * Reads raw EXIF: from the block that the decoder found, or, without one (TIFF, files that it rejects), from the
 * file itself. Never throws: a picture without readable EXIF gives an empty record.
 */
export async function readExif(path: string, block: Uint8Array | undefined): Promise<RawExif> {
  if (block !== undefined) return (await readExifBlock(block)).exif;
  try {
    return understood(await tagsOfFile.ask({ path, options: OPTIONS }))?.exif ?? {};
  } catch {
    return {};
  }
}

/** Reads the Exif block, with or without the marker before it. */
export async function readExifBlock(block: Uint8Array | undefined): Promise<ReadExif> {
  if (block === undefined) return { exif: {} };
  // sharp returns the block with the marker that JPEG puts before the TIFF header.
  const marked = Buffer.from(block.subarray(0, 6)).toString('latin1') === 'Exif\0\0';
  // A copy: the library follows offsets past the end of its input, into whatever is in memory behind it.
  return (await parseRaw(new Uint8Array(marked ? block.subarray(6) : block))) ?? { exif: {} };
}

async function parseRaw(block: Uint8Array): Promise<ReadExif | undefined> {
  try {
    const parser = new exifr.Exifr(OPTIONS);
    await parser.read(block);
    const read = understood(await parser.parse());
    const preview = read === undefined ? undefined : await previewOf(parser);
    return read === undefined || preview === undefined ? read : { ...read, preview };
  } catch {
    return undefined;
  }
}

/** Damaged or cut off, it is as good as none; the tags before it count all the same. */
async function previewOf(parser: InstanceType<typeof exifr.Exifr>): Promise<Uint8Array | undefined> {
  try {
    return await parser.extractThumbnail();
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
    // A text ends at its NUL, whatever its count spans (TIFF 6.0 §2); a blank means unknown (Exif 2.32 §4.6.5).
    const own = typeof value === 'string' ? (value.split('\0', 1)[0] ?? '').trim() : '';
    return own === '' || own.length > 200 ? undefined : own;
  };
  const number = (name: string): number | undefined => {
    const value = tags[name];
    return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
  };
  const gpsTime = tags.GPSTimeStamp;
  // Degrees without a hemisphere could be four places, so they are none.
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

import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import sharp, { type FailOnOptions } from 'sharp';
import { assertNever } from '../../core/model/error.js';
import type { Flag } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { decodeHeic } from '../../platform/node/heic/heic.js';
import { visibleChannels } from '../../platform/node/pictures/visible-channels.js';
import { type RawExif, readExif, readExifBlock } from './exif.js';
import { type GreyPicture, toGrey } from './grey.js';
import { type JpegHead, scanJpegFile } from './jpeg-scan.js';
import { pngExif } from './png-exif.js';
import { clearPreview } from './preview.js';
import { quality } from './quality.js';
import { sceneHash } from './scene-hash.js';
import { tiffTags } from './tiff-tags.js';

/** A small file can unpack to gigabytes (CWE-409): pictures with more pixels are not decoded. */
const MOST_PIXELS = 120_000_000;
/** Shorter side below which a display or a tag can't be read. Common practice, no source. */
const TINY = 320;

/** Stored size in pixels. */
export interface Size {
  width: number;
  height: number;
}

export interface Picture {
  /** From the file's head; undefined when nothing could be read. */
  size: Size | undefined;
  exif: RawExif;
  flags: Flag[];
  sceneHash?: string;
}

/**
 * Examines a picture: size, Exif, completeness, brightness, sharpness, scene. Never throws: an undecodable picture
 * is flagged `picture-unreadable`.
 */
export async function examinePicture(path: string, type: string): Promise<Picture> {
  if (type !== 'image/jpeg') return decodeAndExamine(path, type, 'truncated');
  const structure = scanJpegFile(path);
  switch (structure.is) {
    case 'whole':
      return (await examineByPreview(structure)) ?? decodeAndExamine(path, type, 'truncated');
    case 'cut-off': {
      const { width, height, exif: block } = structure;
      const { exif } = await readExifBlock(block);
      const flags = [
        ...tiny(structure),
        unreadable(new Error('the file ends before the picture does'), path),
      ];
      return { size: { width, height }, exif, flags };
    }
    case 'doubtful':
      // Where data is missing the decoder continues with other values, and only warns.
      return decodeAndExamine(path, type, 'warning');
    default:
      return assertNever(structure);
  }
}

/**
 * A photo whose preview is clearly bright and sharp is not decoded: that takes ten times as long as all the rest.
 * Undefined for every other photo.
 */
async function examineByPreview({ width, height, exif: block }: JpegHead): Promise<Picture | undefined> {
  const size = { width, height };
  if (width * height > MOST_PIXELS) return undefined;
  const { exif, preview } = await readExifBlock(block);
  const grey = preview === undefined ? undefined : await clearPreview(preview, size, exif);
  return grey === undefined ? undefined : seen(size, exif, tiny(size), grey);
}

/** Decodes a whole picture. */
async function decodeAndExamine(path: string, type: string, failOn: FailOnOptions): Promise<Picture> {
  let size: Size;
  let exif: RawExif;
  try {
    // Only the head is read here, so that the size can be judged before anything is unpacked.
    const metadata = await sharp(path, { limitInputPixels: false, failOn: 'none' }).metadata();
    size = { width: metadata.width, height: metadata.height };
    exif = (await readExifBlock(metadata.exif ?? exifBeside(path, type))).exif;
  } catch (cause) {
    const block = exifBeside(path, type);
    return { size: undefined, exif: await readExif(path, block), flags: [unreadable(cause, path)] };
  }
  const { width, height } = size;
  if (width * height > MOST_PIXELS)
    return {
      size,
      exif,
      flags: [
        {
          is: 'picture-unreadable',
          detail: `${width} × ${height} pixels are more than ${MOST_PIXELS / 1e6} million, and are not decoded`,
        },
      ],
    };
  const flags = tiny(size);
  try {
    const grey = await greyOf(path, type, failOn);
    return seen(size, exif, [...flags, ...quality(grey)], grey);
  } catch (cause) {
    return { size, exif, flags: [...flags, unreadable(cause, path)] };
  }
}

/** The tags that the decoder does not return: those of a TIFF, and of a PNG behind its pixels. */
function exifBeside(path: string, type: string): Uint8Array | undefined {
  if (type === 'image/tiff') return tiffTags(path);
  return type === 'image/png' ? pngExif(path) : undefined;
}

function seen(size: Size, exif: RawExif, flags: readonly Flag[], grey: GreyPicture): Picture {
  const hash = sceneHash(grey);
  return { size, exif, flags: [...flags], ...omitUndefined({ sceneHash: hash }) };
}

function tiny({ width, height }: Size): Flag[] {
  return Math.min(width, height) < TINY
    ? [{ is: 'tiny', detail: `${width} × ${height} pixels; displays and tags may not be readable` }]
    : [];
}

async function greyOf(path: string, type: string, failOn: FailOnOptions): Promise<GreyPicture> {
  if (type === 'image/heic' || type === 'image/heif') {
    const { width, height, data } = await decodeHeic(await readFile(path));
    return toGrey(sharp(data, { raw: { width, height, channels: 4 } }));
  }
  const options = { limitInputPixels: MOST_PIXELS, failOn };
  const visible = type === 'image/tiff' ? await visibleChannels(path, options) : undefined;
  return toGrey(visible ?? sharp(path, options).autoOrient());
}

/** The decoder's message without the file's path on this machine, because the record outlives it. */
function unreadable(cause: unknown, path: string): Flag {
  const said = cause instanceof Error ? (cause.message.split('\n')[0] ?? '') : String(cause);
  const parts = said.split(': ').filter((part) => !part.includes(basename(path)));
  const first = parts.join(': ');
  return {
    is: 'picture-unreadable',
    detail: `the picture cannot be decoded to the end: ${first.slice(0, 200)}`,
  };
}

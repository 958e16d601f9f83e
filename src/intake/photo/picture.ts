import sharp from 'sharp';
import type { Flag } from '../../model/evidence.js';
import { type GreyPicture, toGrey } from './grey.js';
import { greyOfHeic } from './heic.js';
import { type JpegLikeness, likenessOfJpeg } from './jpeg/likeness.js';
import { quality } from './quality.js';
import { sceneHash } from './scene-hash.js';

/** A small file can unpack to gigabytes (CWE-409): pictures with more pixels are not decoded. */
export const MOST_PIXELS = 120_000_000;
/** Shorter side below which a display or a tag can't be read. Common practice, no source. */
const TINY = 320;

export interface PictureHead {
  /** Pixels, as it is stored. */
  width: number;
  height: number;
  /** The Exif block, with or without the marker before it. */
  exif?: Uint8Array | undefined;
}

export interface Picture {
  /** From the file's head; undefined when nothing could be read. */
  metadata: PictureHead | undefined;
  /** The file was read whole, and its Exif block is the one in `metadata` or it has none. */
  exifKnown?: true;
  flags: Flag[];
  sceneHash?: string;
}

/**
 * Looks at a picture: metadata, whether it decodes to the end, brightness, sharpness, scene. Never throws: what
 * cannot be decoded is flagged `picture-unreadable`.
 */
export async function lookAt(path: string, type: string): Promise<Picture> {
  const likeness = type === 'image/jpeg' ? await likenessOfJpeg(path, MOST_PIXELS) : undefined;
  if (likeness !== undefined) return fromLikeness(likeness);
  let metadata: PictureHead;
  try {
    // Only the head is read here, so the size can be judged before anything is unpacked.
    metadata = await sharp(path, { limitInputPixels: false, failOn: 'none' }).metadata();
  } catch (cause) {
    return { metadata: undefined, flags: [unreadable(cause)] };
  }
  const { width, height } = metadata;
  if (width * height > MOST_PIXELS)
    return {
      metadata,
      flags: [
        {
          is: 'picture-unreadable',
          detail: `${width} × ${height} pixels are more than ${MOST_PIXELS / 1e6} million, and are not decoded`,
        },
      ],
    };
  const flags = tiny(metadata);
  try {
    return judged(metadata, flags, await greyOf(path, type));
  } catch (cause) {
    return { metadata, flags: [...flags, unreadable(cause)] };
  }
}

/** A plain JPEG that is large, within bounds and whole. */
function fromLikeness({ width, height, exif, picture }: JpegLikeness): Picture {
  const metadata = { width, height, exif };
  return { ...judged(metadata, tiny(metadata), picture), exifKnown: true };
}

function judged(metadata: PictureHead, flags: readonly Flag[], grey: GreyPicture): Picture {
  const hash = sceneHash(grey);
  return {
    metadata,
    flags: [...flags, ...quality(grey)],
    ...(hash === undefined ? {} : { sceneHash: hash }),
  };
}

function tiny({ width, height }: PictureHead): Flag[] {
  return Math.min(width, height) < TINY
    ? [{ is: 'tiny', detail: `${width} × ${height} pixels; displays and tags may not be readable` }]
    : [];
}

function greyOf(path: string, type: string): Promise<GreyPicture> {
  if (type === 'image/heic' || type === 'image/heif') return greyOfHeic(path);
  return toGrey(sharp(path, { limitInputPixels: MOST_PIXELS, failOn: 'truncated' }).autoOrient());
}

function unreadable(cause: unknown): Flag {
  const first = cause instanceof Error ? (cause.message.split('\n')[0] ?? '') : String(cause);
  return {
    is: 'picture-unreadable',
    detail: `the picture cannot be decoded to the end: ${first.slice(0, 200)}`,
  };
}

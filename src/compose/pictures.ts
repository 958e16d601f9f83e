import { readFile } from 'node:fs/promises';
import pMap from 'p-map';
import sharp, { type Sharp } from 'sharp';
import type { Region, Sha256 } from '../core/model/evidence.js';
import { carriedJpeg } from '../core/pictures/carried-jpeg.js';
import { decodeHeic } from '../platform/node/heic/heic.js';
import { visibleChannels } from '../platform/node/pictures/visible-channels.js';

/** One more than two cores scale at a time, so that none waits while this thread is busy; more only costs memory. */
const AT_ONCE = 3;
/** Guards against small files that unfold into enormous pictures. */
const MOST_PIXELS = 200_000_000;

const HEIC = /^image\/hei[cf]/;

export interface PictureFile {
  sha256: Sha256;
  type: string;
  /** Drawn black. */
  blackOut?: readonly Region[];
}
/** How large and how finely a picture is made. */
export interface PictureQuality {
  /** Longer side in pixels. */
  longest: number;
  /** Of JPEG, 1 to 100. */
  quality: number;
}
export type ReadOriginal = (sha256: Sha256) => Promise<string | Uint8Array>;
export type PreparedPicture =
  /**
   * JPEG, sRGB, upright, no metadata; or the coded picture of a JPEG that fits, with its orientation and colour profile.
   * Sides are of the upright picture. `damaged` when only part of the file could be read.
   */
  | { is: 'picture'; bytes: Uint8Array; width: number; height: number; damaged: boolean }
  | { is: 'unreadable'; why: string };

/** 200 pixels per inch at 8 inches, enough for print. */
export const FULL_QUALITY: PictureQuality = { longest: 1600, quality: 82 };

/**
 * What makes a JPEG smaller by rounding its numbers well, without trying out orders of the same numbers: that took a
 * fifth to a third of the time for a twentieth of the bytes (docs/decisions/0019).
 * @public Read by the bench, too.
 */
export const CODING = { trellisQuantisation: true, overshootDeringing: true, quantisationTable: 3 } as const;

export interface PreparingOptions {
  quality?: PictureQuality;
  /** Pictures that were made at this quality already. */
  made?: ReadonlyMap<Sha256, PreparedPicture>;
  /** Once aborted, no other picture is begun; those that were not are missing in the result. */
  signal?: AbortSignal;
  /** Called once, when the last tenth of the pictures is begun. */
  onLastTenth?: () => void;
}

/** Prepares pictures for print. A picture that can't be read never stops the others. */
export async function preparePictures(
  files: readonly PictureFile[],
  readOriginal: ReadOriginal,
  { quality = FULL_QUALITY, made = new Map(), signal, onLastTenth }: PreparingOptions = {},
): Promise<Map<Sha256, PreparedPicture>> {
  const different = [...new Map(files.map((file) => [file.sha256, file])).values()];
  // One at a time can be decoded of those that take longest: they come first.
  const wanted = [
    ...different.filter(({ type }) => HEIC.test(type)),
    ...different.filter(({ type }) => !HEIC.test(type)),
  ];
  const prepared = new Map<Sha256, PreparedPicture>();
  const before = sharp.concurrency();
  sharp.concurrency(1);
  try {
    const lastTenth = Math.floor(wanted.length * 0.9);
    const prepare = async (file: PictureFile, i: number) => {
      if (signal?.aborted) return;
      if (i === lastTenth) onLastTenth?.();
      const known = made.get(file.sha256);
      prepared.set(file.sha256, known ?? (await prepareOne(file, readOriginal, quality)));
    };
    await pMap(wanted, prepare, { concurrency: AT_ONCE });
  } finally {
    sharp.concurrency(before);
  }
  return prepared;
}

async function prepareOne(
  file: PictureFile,
  readOriginal: ReadOriginal,
  quality: PictureQuality,
): Promise<PreparedPicture> {
  const how = { ...quality, blackOut: file.blackOut ?? [] };
  try {
    const original = await readOriginal(file.sha256);
    if (HEIC.test(file.type)) return await prepareHeic(original, how);
    const visible =
      file.type === 'image/tiff' && typeof original === 'string'
        ? await visibleChannels(original, { failOn: 'none', limitInputPixels: MOST_PIXELS })
        : undefined;
    if (visible !== undefined) return await reencode(() => visible.clone(), how);
    return (
      (await carryOver(original, how)) ??
      (await reencode(
        (failOn) => sharp(original, { failOn, limitInputPixels: MOST_PIXELS }).autoOrient(),
        how,
      ))
    );
  } catch (cause) {
    return { is: 'unreadable', why: reason(cause) };
  }
}

interface How extends PictureQuality {
  blackOut: readonly Region[];
}

/**
 * Bytes that a picture may take to be carried over, for each pixel of the square of the longer side: a photo of much
 * detail takes 0.17 when it is made anew at full quality, and cameras code a little finer.
 */
const CARRIED_BYTES = 0.2;

const mostBytesCarried = (longest: number) => CARRIED_BYTES * longest ** 2;

/** About the most that pictures take in a quality, by the size of their files: HEIC takes half of what JPEG does. */
export function mostBytesOf(
  files: readonly { type: string; bytes: number }[],
  { longest }: PictureQuality,
): number {
  return files
    .map(({ type, bytes }) => Math.min(HEIC.test(type) ? 2 * bytes : bytes, mostBytesCarried(longest)))
    .reduce((sum, bytes) => sum + bytes, 0);
}

/**
 * A whole JPEG that fits its place, carried over as it is coded, so that nothing is lost by coding it twice and anyone
 * can compare it exactly with its original. Undefined when it is to be made anew.
 */
async function carryOver(
  original: string | Uint8Array,
  { longest, blackOut }: How,
): Promise<PreparedPicture | undefined> {
  const mostBytes = mostBytesCarried(longest);
  const file = typeof original === 'string' ? await readFile(original) : original;
  // Room for a preview and other data beside the picture.
  if (blackOut.length > 0 || file.length > 2 * mostBytes) return undefined;
  const carried = carriedJpeg(file);
  if (carried === undefined || carried.bytes.length > mostBytes) return undefined;
  const { bytes, width, height } = carried;
  if (Math.max(width, height) > longest || !(await isWhole(bytes))) return undefined;
  return { is: 'picture', bytes, width, height, damaged: false };
}

/** Decodes all of it: a typesetter and most readers show a damaged picture as if it were whole. */
async function isWhole(jpeg: Uint8Array): Promise<boolean> {
  try {
    await sharp(jpeg, { failOn: 'warning', limitInputPixels: MOST_PIXELS }).resize(64).raw().toBuffer();
    return true;
  } catch {
    return false;
  }
}

async function reencode(open: (failOn: 'warning' | 'none') => Sharp, how: How): Promise<PreparedPicture> {
  const { longest, quality, blackOut } = how;
  const encode = async (failOn: 'warning' | 'none') => {
    const sized = open(failOn)
      .resize({ width: longest, height: longest, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb');
    return (blackOut.length === 0 ? sized : await blackened(sized, blackOut))
      .jpeg({ quality, ...CODING })
      .toBuffer({ resolveWithObject: true });
  };
  const made = async (failOn: 'warning' | 'none'): Promise<PreparedPicture> => {
    const { data, info } = await encode(failOn);
    return { is: 'picture', bytes: data, width: info.width, height: info.height, damaged: failOn === 'none' };
  };
  try {
    return await made('warning');
  } catch {
    // What is left of a damaged picture may still be evidence; it is shown and said to be damaged.
    return await made('none');
  }
}

/** What is blackened is gone: the boxes are drawn into the pixels before they are encoded. */
async function blackened(sized: Sharp, regions: readonly Region[]): Promise<Sharp> {
  const { data, info } = await sized.raw().toBuffer({ resolveWithObject: true });
  const { width, height, channels } = info;
  const inside = (value: number, most: number) => Math.min(Math.max(value, 0), most);
  for (const region of regions) {
    const [left, right] = [
      inside(Math.floor(region.x * width), width),
      inside(Math.ceil((region.x + region.width) * width), width),
    ];
    const bottom = inside(Math.ceil((region.y + region.height) * height), height);
    for (let y = inside(Math.floor(region.y * height), height); y < bottom; y += 1)
      data.fill(0, (y * width + left) * channels, (y * width + right) * channels);
  }
  return sharp(data, { raw: { width, height, channels } });
}

async function prepareHeic(original: string | Uint8Array, how: How): Promise<PreparedPicture> {
  const bytes = typeof original === 'string' ? await readFile(original) : original;
  const { width, height, data } = await decodeHeic(bytes);
  // The decoder has applied the picture's own rotation; EXIF still asks for it, and must not get it twice.
  return reencode((failOn) => sharp(data, { raw: { width, height, channels: 4 }, failOn }), how);
}

function reason(cause: unknown): string {
  const message = cause instanceof Error ? cause.message : String(cause);
  return (message.split('\n')[0] ?? '').slice(0, 160);
}

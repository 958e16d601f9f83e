import sharp, { type Metadata } from 'sharp';
import type { Flag } from '../../model/evidence.js';

/** A small file can unpack to gigabytes (CWE-409): pictures with more pixels are not decoded. */
export const MOST_PIXELS = 120_000_000;
const SAMPLE_SIDE = 512;

/** Mean brightness of 255 below which hardly anything can be made out. Own measurements, no source. */
const DARK = 25;
/** Variance of the Laplacian at 512 px, below which edges are missing. Own measurements, no source. */
const BLURRED = 12;
/** Shorter side below which a display or a tag can't be read. Common practice, no source. */
const TINY = 320;

export interface Picture {
  /** What sharp read from the file's head; undefined when it could read nothing. */
  metadata: Metadata | undefined;
  flags: Flag[];
}

/**
 * Looks at a picture: metadata, whether it decodes to the end, brightness, sharpness. Never throws: what
 * cannot be decoded is flagged `picture-unreadable`. HEIC is not decoded, only its metadata is read.
 */
export async function lookAt(path: string, type: string): Promise<Picture> {
  let metadata: Metadata;
  try {
    metadata = await sharp(path, { limitInputPixels: MOST_PIXELS, failOn: 'none' }).metadata();
  } catch (cause) {
    return { metadata: undefined, flags: [unreadable(cause)] };
  }
  const flags: Flag[] = [];
  const { width, height } = metadata;
  if (Math.min(width, height) < TINY)
    flags.push({ is: 'tiny', detail: `${width} × ${height} pixels; displays and tags may not be readable` });
  if (width * height > MOST_PIXELS)
    return { metadata, flags: [...flags, unreadable(new Error(`${width} × ${height} pixels is too large`))] };
  if (type === 'image/heic' || type === 'image/heif') return { metadata, flags };
  try {
    const { data, info } = await sharp(path, { limitInputPixels: MOST_PIXELS, failOn: 'truncated' })
      .greyscale()
      .resize({ width: SAMPLE_SIDE, height: SAMPLE_SIDE, fit: 'inside', withoutEnlargement: true })
      .raw()
      .toBuffer({ resolveWithObject: true });
    flags.push(...quality(data, info.width, info.height, info.channels));
  } catch (cause) {
    flags.push(unreadable(cause));
  }
  return { metadata, flags };
}

function unreadable(cause: unknown): Flag {
  const first = cause instanceof Error ? (cause.message.split('\n')[0] ?? '') : '';
  return {
    is: 'picture-unreadable',
    detail: `the picture cannot be decoded to the end: ${first.slice(0, 200)}`,
  };
}

/** Brightness and sharpness of a grey picture. */
function quality(grey: Uint8Array, width: number, height: number, channels: number): Flag[] {
  const flags: Flag[] = [];
  let sum = 0;
  for (let i = 0; i < width * height; i++) sum += grey[i * channels] ?? 0;
  const mean = sum / (width * height);
  if (mean < DARK) flags.push({ is: 'dark', detail: `mean brightness ${mean.toFixed(0)} of 255` });
  const sharpness = laplacianVariance(grey, width, height, channels);
  // In the dark noise is all there is to measure.
  if (mean >= DARK && sharpness < BLURRED)
    flags.push({
      is: 'blurred',
      detail: `variance of the Laplacian ${sharpness.toFixed(1)}; sharp pictures have more than ${BLURRED}`,
    });
  return flags;
}

/** Variance of the 4-neighbour Laplacian: 0 for an even surface, large where there are edges. */
export function laplacianVariance(grey: Uint8Array, width: number, height: number, channels = 1): number {
  let n = 0;
  let sum = 0;
  let squares = 0;
  const at = (x: number, y: number): number => grey[(y * width + x) * channels] ?? 0;
  for (let y = 1; y < height - 1; y++)
    for (let x = 1; x < width - 1; x++) {
      const l = at(x - 1, y) + at(x + 1, y) + at(x, y - 1) + at(x, y + 1) - 4 * at(x, y);
      n += 1;
      sum += l;
      squares += l * l;
    }
  return n === 0 ? 0 : squares / n - (sum / n) ** 2;
}

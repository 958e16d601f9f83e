import type { Sharp } from 'sharp';

/** Longer side of the small grey picture that brightness, sharpness and scene are judged by. */
const SAMPLE_SIDE = 512;

/** One byte a pixel, row by row, 0 black to 255 white. */
export interface GreyPicture {
  grey: Uint8Array;
  width: number;
  height: number;
}

/**
 * The whole picture decoded, upright, on white, eight bits deep, at most 512 pixels long.
 * Throws what sharp throws for a picture that cannot be decoded.
 */
export async function toGrey(picture: Sharp): Promise<GreyPicture> {
  const { data, info } = await picture
    .resize({ width: SAMPLE_SIDE, height: SAMPLE_SIDE, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .toColourspace('b-w')
    .raw({ depth: 'uchar' })
    .toBuffer({ resolveWithObject: true });
  const { width, height, channels } = info;
  if (channels === 1) return { grey: data, width, height };
  const grey = new Uint8Array(width * height);
  for (let i = 0; i < grey.length; i++) grey[i] = data[i * channels] ?? 0;
  return { grey, width, height };
}

import type { Sharp } from 'sharp';

/** Longer side of the grey picture that brightness, sharpness and scene are computed from. */
const SAMPLE_SIDE = 512;

/** One byte a pixel, row by row, 0 black to 255 white. */
export interface GreyPicture {
  grey: Uint8Array;
  width: number;
  height: number;
}

/**
 * The decoded picture in grey, upright, on white, eight bits deep, at most 512 pixels long; red, green and blue are
 * weighted as in ITU-R BT.601, as a JPEG stores brightness. Throws what sharp throws for a picture that cannot be
 * decoded.
 */
export async function toGrey(picture: Sharp): Promise<GreyPicture> {
  const { data, info } = await picture
    .resize({ width: SAMPLE_SIDE, height: SAMPLE_SIDE, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .raw({ depth: 'uchar' })
    .toBuffer({ resolveWithObject: true });
  const { width, height, channels } = info;
  return { grey: channels === 1 ? data : weighed(data, width * height, channels), width, height };
}

function weighed(data: Uint8Array, pixels: number, channels: number): Uint8Array {
  const grey = new Uint8Array(pixels);
  // Grey with transparency comes in two channels, colour in three.
  const [green, blue] = channels < 3 ? [0, 0] : [1, 2];
  for (let i = 0, at = 0; i < pixels; i++, at += channels)
    grey[i] =
      0.299 * (data[at] ?? 0) + 0.587 * (data[at + green] ?? 0) + 0.114 * (data[at + blue] ?? 0) + 0.5;
  return grey;
}

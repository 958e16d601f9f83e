// Compares a printed picture with its original, in a process of its own: pictures of strangers are decoded here and
// nowhere else while verifying.
import sharp from 'sharp';
import { answering } from '../../../platform/node/worker/answering.js';

/** Longer side at which they are compared, and the side of the blocks, in pixels. */
const LONGEST = 512;
const BLOCK = 8;
const MOST_PIXELS = 100_000_000;

/**
 * Grey values of a picture, upright, on white, at a size.
 * @param {Uint8Array} bytes @param {number} width @param {number} height
 */
function grey(bytes, width, height) {
  return sharp(bytes, { failOn: 'warning', limitInputPixels: MOST_PIXELS })
    .autoOrient()
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .resize({ width, height, fit: 'fill' })
    .greyscale()
    .raw()
    .toBuffer();
}

/** Width and height as they are shown. @param {Uint8Array} bytes */
async function shown(bytes) {
  const { autoOrient } = await sharp(bytes, { limitInputPixels: MOST_PIXELS }).metadata();
  return autoOrient;
}

/**
 * How far they are apart: the difference of their shapes, and that of the mean grey of the block that differs most, 0
 * to 255. The mean of a block hardly changes when a picture is scaled and packed anew.
 * @param {{ original: Uint8Array, plate: Uint8Array }} pair
 */
async function compare({ original, plate }) {
  const [a, b] = [await shown(original), await shown(plate)];
  const shape = Math.abs(Math.log((a.width * b.height) / (a.height * b.width)));
  const scale = LONGEST / Math.max(b.width, b.height);
  const width = Math.max(BLOCK, Math.round(b.width * scale));
  const height = Math.max(BLOCK, Math.round(b.height * scale));
  const [first, second] = [await grey(original, width, height), await grey(plate, width, height)];
  let worst = 0;
  for (let y = 0; y + BLOCK <= height; y += BLOCK)
    for (let x = 0; x + BLOCK <= width; x += BLOCK) {
      let sum = 0;
      for (let row = y; row < y + BLOCK; row += 1)
        for (let at = row * width + x; at < row * width + x + BLOCK; at += 1)
          sum += (first[at] ?? 0) - (second[at] ?? 0);
      worst = Math.max(worst, Math.abs(sum) / (BLOCK * BLOCK));
    }
  return { shape, worst };
}

sharp.concurrency(1);
answering(compare);

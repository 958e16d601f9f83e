import type { Flag } from '../../core/model/evidence.js';
import type { GreyPicture } from './grey.js';

/** Mean brightness of 255 below which hardly anything is visible. Own judgement, no source. */
const DARK = 25;
/**
 * Variance of the Laplacian at about 500 px, below which edges are missing. Own judgement, no source; the drawn
 * photos of fixtures/demo have 59 and more, and 8 and less when blurred by 1 % of their width.
 */
const BLURRED = 12;

/**
 * Variance of the Laplacian of a preview, 160 pixels long and more, above which the picture is not blurred: the
 * drawn photos of fixtures/demo have 680 and more in a preview, and 112 and less when blurred by 1 % of their
 * width.
 */
const CLEARLY_SHARP = 500;

/** Whether a preview shows that its picture is neither dark nor blurred. */
export function isClear(preview: GreyPicture): boolean {
  return meanBrightness(preview) >= 2 * DARK && laplacianVariance(preview) >= CLEARLY_SHARP;
}

/** Flags a picture that is too dark or too blurred to show much. */
export function quality(picture: GreyPicture): Flag[] {
  const mean = meanBrightness(picture);
  if (mean < DARK) return [{ is: 'dark', detail: `mean brightness ${mean.toFixed(0)} of 255` }];
  // In the dark there is only noise to measure, so sharpness is judged in bright pictures.
  const sharpness = laplacianVariance(picture);
  return sharpness < BLURRED
    ? [
        {
          is: 'blurred',
          detail: `variance of the Laplacian ${sharpness.toFixed(1)}; sharp pictures have more than ${BLURRED}`,
        },
      ]
    : [];
}

function meanBrightness({ grey }: GreyPicture): number {
  let sum = 0;
  // By index: iterating over bytes takes ten times as long.
  for (let i = 0; i < grey.length; i++) sum += grey[i] ?? 0;
  return grey.length === 0 ? 0 : sum / grey.length;
}

/** Variance of the 4-neighbour Laplacian: 0 for an even surface, large where there are edges. */
export function laplacianVariance({ grey, width, height }: GreyPicture): number {
  let sum = 0;
  let squares = 0;
  for (let y = 1; y < height - 1; y++) {
    const end = y * width + width - 1;
    let left = grey[y * width] ?? 0;
    let here = grey[y * width + 1] ?? 0;
    for (let at = y * width + 1; at < end; at++) {
      const right = grey[at + 1] ?? 0;
      const l = left + right + (grey[at - width] ?? 0) + (grey[at + width] ?? 0) - 4 * here;
      sum += l;
      squares += l * l;
      left = here;
      here = right;
    }
  }
  const n = Math.max(0, width - 2) * Math.max(0, height - 2);
  return n === 0 ? 0 : squares / n - (sum / n) ** 2;
}

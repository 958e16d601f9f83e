import type { Flag } from '../../model/evidence.js';
import type { GreyPicture } from './grey.js';

/** Mean brightness of 255 below which hardly anything can be made out. Own judgement, no source. */
const DARK = 25;
/**
 * Variance of the Laplacian at 512 px, below which edges are missing. Own judgement, no source; the drawn
 * photos of fixtures/demo have 59 and more, and 8 and less when blurred by 1 % of their width.
 */
const BLURRED = 12;

/** Flags a picture that is too dark or too blurred to show much. */
export function quality(picture: GreyPicture): Flag[] {
  const mean = meanBrightness(picture);
  if (mean < DARK) return [{ is: 'dark', detail: `mean brightness ${mean.toFixed(0)} of 255` }];
  // In the dark noise is all there is to measure, so sharpness is judged in the light alone.
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
  for (const value of grey) sum += value;
  return grey.length === 0 ? 0 : sum / grey.length;
}

/** Variance of the 4-neighbour Laplacian: 0 for an even surface, large where there are edges. */
export function laplacianVariance({ grey, width, height }: GreyPicture): number {
  let n = 0;
  let sum = 0;
  let squares = 0;
  const at = (x: number, y: number): number => grey[y * width + x] ?? 0;
  for (let y = 1; y < height - 1; y++)
    for (let x = 1; x < width - 1; x++) {
      const l = at(x - 1, y) + at(x + 1, y) + at(x, y - 1) + at(x, y + 1) - 4 * at(x, y);
      n += 1;
      sum += l;
      squares += l * l;
    }
  return n === 0 ? 0 : squares / n - (sum / n) ** 2;
}

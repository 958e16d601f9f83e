import sharp from 'sharp';
import { editingTraces } from './editing.js';
import type { RawExif } from './exif.js';
import { type GreyPicture, toGrey } from './grey.js';
import { isClear } from './quality.js';

/** Smallest shorter side in pixels: cameras write 160 × 120 and more (from memory). */
const LEAST_SIDE = 90;
/** Largest preview, bytes. */
const MOST_PIXELS = 4_000_000;

/**
 * The preview in a photo's Exif block, grey and upright, where it suffices to judge the photo: it has the photo's
 * shape, there is no trace of editing, which may leave an old preview behind, and it is clearly bright and sharp.
 * Undefined in case of doubt; then the photo has to be decoded.
 */
export async function clearPreview(
  preview: Uint8Array,
  photo: { width: number; height: number },
  exif: RawExif,
): Promise<GreyPicture | undefined> {
  if (editingTraces(exif).length > 0) return undefined;
  const picture = await decoded(preview);
  if (picture === undefined) return undefined;
  const { width, height } = picture;
  // To one pixel of the preview. A preview with bars at its sides has another shape than the photo.
  const offShape = Math.abs(width * photo.height - height * photo.width);
  if (Math.min(width, height) < LEAST_SIDE || offShape > Math.max(photo.width, photo.height))
    return undefined;
  return isClear(picture) ? upright(picture, exif.orientation ?? 1) : undefined;
}

async function decoded(preview: Uint8Array): Promise<GreyPicture | undefined> {
  try {
    return await toGrey(sharp(preview, { limitInputPixels: MOST_PIXELS, failOn: 'warning' }));
  } catch {
    return undefined;
  }
}

/** Turned by an Exif orientation, 1 to 8 (Exif 2.32 §4.6.4, tag 0x0112). */
function upright(picture: GreyPicture, orientation: number): GreyPicture {
  if (orientation === 1) return picture;
  const { grey, width, height } = picture;
  const lying = orientation > 4;
  const [columns, rows] = lying ? [height, width] : [width, height];
  // From the left and the top of the stored picture, or from the other end.
  const fromRight = [2, 3, 7, 8].includes(orientation);
  const fromBottom = [3, 4, 6, 7].includes(orientation);
  const turned = new Uint8Array(grey.length);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const [along, below] = lying ? [row, column] : [column, row];
      const x = fromRight ? width - 1 - along : along;
      const y = fromBottom ? height - 1 - below : below;
      turned[row * columns + column] = grey[y * width + x] ?? 0;
    }
  return { grey: turned, width: columns, height: rows };
}

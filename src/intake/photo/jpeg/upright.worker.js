// Turns a picture the way that its Exif orientation says.

/** @typedef {import('./scan.worker.js').GreyPicture} GreyPicture */

const ORIENTATION = 0x0112;

/**
 * The orientation in the first directory of an Exif block (TIFF 6.0 §2 and §8), 1 to 8; 1 where none is to be read.
 * @param {Uint8Array | undefined} exif
 * @returns {number}
 */
export function orientationOf(exif) {
  if (exif === undefined || exif.length < 14) return 1;
  const view = new DataView(exif.buffer, exif.byteOffset, exif.byteLength);
  const little = view.getUint16(0) === 0x4949;
  const directory = view.getUint32(4, little);
  if (directory + 2 > exif.length) return 1;
  const count = view.getUint16(directory, little);
  for (let at = directory + 2; at < directory + 2 + count * 12 && at + 12 <= exif.length; at += 12)
    if (view.getUint16(at, little) === ORIENTATION) {
      const value = view.getUint16(at + 8, little);
      return value >= 1 && value <= 8 ? value : 1;
    }
  return 1;
}

/**
 * @param {GreyPicture} picture
 * @param {number} orientation 1 to 8 (Exif 2.32 §4.6.4, tag 0x0112)
 * @returns {GreyPicture}
 */
export function upright(picture, orientation) {
  if (orientation === 1) return picture;
  const { grey, width, height } = picture;
  const lying = orientation > 4;
  const [columns, rows] = lying ? [height, width] : [width, height];
  // From the left and from the top of what is stored, or from the other end.
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

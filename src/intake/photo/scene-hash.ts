import type { GreyPicture } from './grey.js';

const COLUMNS = 9;
const ROWS = 8;
/** Grey levels of 255 between the darkest and the brightest cell, below which noise alone decides the bits. Own judgement, no source. */
const FLAT = 6;
/** Grey levels by which a cell must be brighter than its neighbour: between even cells rounding would decide. */
const BRIGHTER = 1;

/**
 * A difference hash: the picture's mean brightness in 9 × 8 cells, one bit for each pair of neighbours in a row,
 * set where the right one is clearly brighter; 64 bits as 16 hex digits, rows from the top, left bit first.
 * Scaling, saving again and changing the brightness hardly move it. Undefined for an even surface, whose bits
 * would be noise, and for a picture smaller than the cells.
 */
export function sceneHash(picture: GreyPicture): string | undefined {
  if (picture.width < COLUMNS || picture.height < ROWS) return undefined;
  const cells = cellMeans(picture);
  if (Math.max(...cells) - Math.min(...cells) < FLAT) return undefined;
  let hex = '';
  for (let row = 0; row < ROWS; row++) {
    let byte = 0;
    for (let column = 0; column < COLUMNS - 1; column++) {
      const at = row * COLUMNS + column;
      byte = (byte << 1) | ((cells[at + 1] ?? 0) - (cells[at] ?? 0) > BRIGHTER ? 1 : 0);
    }
    hex += byte.toString(16).padStart(2, '0');
  }
  return hex;
}

function cellMeans({ grey, width, height }: GreyPicture): Float64Array {
  const means = new Float64Array(COLUMNS * ROWS);
  const edge = (i: number, of: number, length: number) => Math.floor((i * length) / of);
  for (let row = 0; row < ROWS; row++)
    for (let column = 0; column < COLUMNS; column++) {
      const [left, right] = [edge(column, COLUMNS, width), edge(column + 1, COLUMNS, width)];
      const [top, bottom] = [edge(row, ROWS, height), edge(row + 1, ROWS, height)];
      let sum = 0;
      for (let y = top; y < bottom; y++) for (let x = left; x < right; x++) sum += grey[y * width + x] ?? 0;
      means[row * COLUMNS + column] = sum / ((right - left) * (bottom - top));
    }
  return means;
}

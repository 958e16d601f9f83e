import type { GreyPicture } from './grey.js';

const COLUMNS = 9;
const ROWS = 8;
/**
 * Grey levels of 255 between the darkest and the brightest cell below which noise decides the bits. Own judgement,
 * no source.
 */
const FLAT = 6;
/** Grey levels by which a cell must be brighter than its neighbour: between even cells rounding would decide. */
const BRIGHTER = 1;

/**
 * A difference hash: mean brightness in 9 × 8 cells, one bit for each pair of neighbours in a row, set where the
 * right one is clearly brighter; 64 bits as 16 hex digits, rows from the top, left bit first. Scaling, saving again
 * and changing the brightness hardly change it. Undefined for an even surface, whose bits would be noise, and for a
 * picture smaller than the cells.
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

/** Pixels on a cell's edge count in each cell by their share, so that a preview gives the same hash as the picture. */
function cellMeans({ grey, width, height }: GreyPicture): Float64Array {
  const sums = new Float64Array(COLUMNS * ROWS);
  // Sums left of each edge in one row, so that a cell is the difference of two.
  const edges = Array.from({ length: COLUMNS + 1 }, (_, i) => (i * width) / COLUMNS);
  for (let y = 0; y < height; y++) {
    const row = y * width;
    const [top, bottom] = [(y * ROWS) / height, ((y + 1) * ROWS) / height];
    const first = Math.floor(top);
    const inFirst = Math.min(1, (first + 1 - top) / (bottom - top));
    let sum = 0;
    let x = 0;
    let before = 0;
    for (let column = 0; column < COLUMNS; column++) {
      const edge = edges[column + 1] ?? width;
      for (; x + 1 <= edge; x++) sum += grey[row + x] ?? 0;
      const until = sum + (edge - x) * (grey[row + x] ?? 0) * (x < width ? 1 : 0);
      const inCell = until - before;
      before = until;
      sums[first * COLUMNS + column] = (sums[first * COLUMNS + column] ?? 0) + inCell * inFirst;
      if (inFirst < 1 && first + 1 < ROWS) {
        const below = (first + 1) * COLUMNS + column;
        sums[below] = (sums[below] ?? 0) + inCell * (1 - inFirst);
      }
    }
  }
  const pixels = (width / COLUMNS) * (height / ROWS);
  return sums.map((sum) => sum / pixels);
}

// Decodes the scan of a plain JPEG photo to its end and keeps the mean brightness of each block of 8 × 8 pixels.

import { codesOf, END_PLACES, STEP_BITS, stepsOf } from './codes.worker.js';

/** @typedef {import('./head.worker.js').Head} Head */
/** @typedef {{ grey: Uint8Array, width: number, height: number }} GreyPicture */

/** More bytes than one unit of a scan can reach past the end of what is there: 10 blocks of 64 codes of 31 bits. */
const SPARE = 4096;
/** The most bits that a difference of means has in eight-bit coding (T.81 table F.1). */
const MOST_DC_BITS = 11;

/**
 * The picture at an eighth of its size: of each block its mean brightness, as T.81 §A.3.3 gives it for the block's
 * first coefficient. All coded data is read; undefined when a code is none, or when there is less or more than the
 * picture needs: then the file is cut off or damaged.
 * @param {Uint8Array} file
 * @param {Head} head
 * @param {Uint8Array} [room] to work in, `roomFor(file)` bytes or more; for one photo after the other
 * @returns {GreyPicture | undefined}
 */
export function decodeMeans(file, head, room = new Uint8Array(roomFor(file.length))) {
  const parts = withoutStuffing(file, head.scanAt, room);
  const blocks = blocksOf(head);
  if (parts === undefined || blocks === undefined) return undefined;
  const [first] = head.components;
  const [across, down] = [first?.across ?? 1, first?.down ?? 1];
  const columns = Math.ceil(head.width / (8 * across));
  const rows = Math.ceil(head.height / (8 * down));
  const units = columns * rows;
  const each = head.restartInterval === 0 ? units : head.restartInterval;
  if (parts.ends.length !== Math.ceil(units / each)) return undefined;
  const stride = columns * across;
  const means = new Uint8Array(stride * rows * down);
  let begin = 0;
  for (const [i, end] of parts.ends.entries()) {
    const span = { from: i * each, to: Math.min(units, (i + 1) * each), columns, across, down, stride };
    const bits = decodeUnits(parts.view, begin * 8, end * 8, span, blocks, means);
    // What is left of the last byte is padding (T.81 §F.1.2.3).
    if (bits > end * 8 || bits <= (end - 1) * 8) return undefined;
    begin = end;
  }
  return cropped(means, stride, Math.ceil(head.width / 8), Math.ceil(head.height / 8));
}

/**
 * Bytes that decoding a file of this size needs to work in.
 * @param {number} bytes
 */
export function roomFor(bytes) {
  return bytes + SPARE;
}

/**
 * @typedef {object} Block one block of a unit
 * @property {Uint16Array} dc
 * @property {Uint16Array} ac
 * @property {Uint16Array} steps
 * @property {number} quantum of brightness; 0 for a colour difference
 * @property {number} x of the unit's blocks
 * @property {number} y
 */

/**
 * @param {Head} head
 * @returns {Block[] | undefined}
 */
function blocksOf({ components }) {
  /** @type {Block[]} */
  const blocks = [];
  for (const [i, component] of components.entries()) {
    const [dc, ac] = [codesOf(component.dc), codesOf(component.ac)];
    if (dc === undefined || ac === undefined) return undefined;
    const steps = stepsOf(ac);
    const quantum = i === 0 ? component.quantum : 0;
    for (let y = 0; y < component.down; y++)
      for (let x = 0; x < component.across; x++) blocks.push({ dc, ac, steps, quantum, x, y });
  }
  return blocks;
}

/**
 * Reads units of the scan; brightness restarts at the middle.
 * @param {DataView} view
 * @param {number} begin bits
 * @param {number} end bits
 * @param {{ from: number, to: number, columns: number, across: number, down: number, stride: number }} span
 * @param {readonly Block[]} blocks
 * @param {Uint8Array} means
 * @returns {number} the bit after the last unit; more than `end` when a code is none or the data ran out
 */
function decodeUnits(view, begin, end, { from, to, columns, across, down, stride }, blocks, means) {
  let at = begin;
  let level = 0;
  let column = from % columns;
  let unitAt = Math.floor(from / columns) * down * stride + column * across;
  for (let unit = from; unit < to; unit++) {
    if (at > end) return Number.POSITIVE_INFINITY;
    for (const { dc, ac, steps, quantum, x, y } of blocks) {
      const code = dc[(view.getInt32(at >>> 3) << (at & 7)) >>> 16] ?? 0;
      const size = code & 255;
      if (code === 0 || size > MOST_DC_BITS) return Number.POSITIVE_INFINITY;
      at += code >> 8;
      if (quantum !== 0) {
        if (size !== 0) {
          const bits = view.getInt32(at >>> 3) << (at & 7);
          const value = bits >>> (32 - size);
          level += bits < 0 ? value : value - (1 << size) + 1;
        }
        // The first coefficient is eight times the mean; 128 is the middle of brightness.
        const mean = ((level * quantum + 4) >> 3) + 128;
        means[unitAt + y * stride + x] = mean < 0 ? 0 : Math.min(mean, 255);
      }
      at += size;
      let place = 1;
      while (place < 64) {
        const word = view.getInt32(at >>> 3) << (at & 7);
        let step = steps[word >>> (32 - STEP_BITS)] ?? 0;
        let reached = place + (step >> 4);
        if (reached <= 64) {
          at += step & 15;
          place = reached;
          // The word still holds the bits for a second look: reading it anew is what takes time.
          step = steps[(word << (step & 15)) >>> (32 - STEP_BITS)] ?? 0;
          reached = place + (step >> 4);
          if (reached <= 64) {
            at += step & 15;
            place = reached;
            continue;
          }
          if (reached < END_PLACES || reached >= END_PLACES + 64) continue;
        }
        if (reached >= END_PLACES && reached < END_PLACES + 64) {
          at += step & 15;
          break;
        }
        // A long code, or one of the next block among them: one at a time.
        const single = ac[word >>> 16] ?? 0;
        if (single === 0) return Number.POSITIVE_INFINITY;
        at += (single >> 8) + (single & 15);
        if ((single & 15) === 0 && (single & 255) !== 0xf0) break;
        place += ((single >> 4) & 15) + 1;
      }
      if (place > 64) return Number.POSITIVE_INFINITY;
    }
    column += 1;
    unitAt += across;
    if (column === columns) {
      column = 0;
      unitAt += (down - 1) * stride;
    }
  }
  return at;
}

/**
 * The coded data without the zeros that follow its bytes 0xFF (T.81 §B.1.1.5), and where each restart interval
 * ends in it. Undefined when the markers in it are not those of restarts in their order and then the end of image.
 * @param {Uint8Array} file
 * @param {number} begin
 * @param {Uint8Array} clean
 * @returns {{ view: DataView, ends: number[] } | undefined}
 */
function withoutStuffing(file, begin, clean) {
  /** @type {number[]} */
  const ends = [];
  let length = 0;
  let from = begin;
  let next = begin;
  for (;;) {
    const at = file.indexOf(0xff, next);
    if (at < 0) return undefined;
    const marker = file[at + 1];
    const stuffed = marker === 0;
    clean.set(file.subarray(from, stuffed ? at + 1 : at), length);
    length += (stuffed ? at + 1 : at) - from;
    from = at + 2;
    next = from;
    if (stuffed) continue;
    ends.push(length);
    if (marker === 0xd9)
      return { view: new DataView(clean.buffer, clean.byteOffset, clean.byteLength), ends };
    if (marker !== 0xd0 + ((ends.length - 1) & 7)) return undefined;
  }
}

/**
 * @param {Uint8Array} picture
 * @param {number} stride
 * @param {number} width
 * @param {number} height
 * @returns {GreyPicture}
 */
function cropped(picture, stride, width, height) {
  if (stride === width) return { grey: picture.subarray(0, width * height), width, height };
  const grey = new Uint8Array(width * height);
  for (let row = 0; row < height; row++)
    grey.set(picture.subarray(row * stride, row * stride + width), row * width);
  return { grey, width, height };
}

// Look-up tables for the Huffman codes of a JPEG scan (ITU-T T.81 §C.2 and annex F).

/** @typedef {import('./head.worker.js').HuffmanTable} HuffmanTable */

/** Bits that one look-up of `steps` covers. */
export const STEP_BITS = 12;
/** Places that a step goes on when the block ends with it, beside those before the end. */
export const END_PLACES = 128;
/** Places of a step that tells not even one coefficient: further than any block reaches. */
const NO_PLACES = 255;

/**
 * What the next 16 bits begin with: length of the code × 256 + symbol; 0 where no code begins so.
 * Undefined for a table that cannot be.
 * @param {HuffmanTable} table
 * @returns {Uint16Array | undefined}
 */
export function codesOf({ counts, symbols }) {
  const codes = new Uint16Array(65536);
  let at = 0;
  let symbol = 0;
  for (let length = 1; length <= 16; length++) {
    const covered = 1 << (16 - length);
    for (let i = counts[length - 1] ?? 0; i > 0; i--, symbol++, at += covered) {
      const value = symbols[symbol];
      if (value === undefined || at + covered > 65536) return undefined;
      codes.fill((length << 8) | value, at, at + covered);
    }
  }
  return codes;
}

/**
 * As many coefficients as the next bits tell whole, up to the end of the block: bits that they take + 16 × places
 * that they go on in it. Only how far a coefficient reaches is needed, not what it is.
 * @param {Uint16Array} codes
 * @returns {Uint16Array}
 */
export function stepsOf(codes) {
  const steps = new Uint16Array(1 << STEP_BITS).fill(NO_PLACES << 4);
  for (let bits = 0; bits < steps.length; bits++) {
    let used = 0;
    let places = 0;
    for (;;) {
      const code = codes[(bits << (16 - STEP_BITS + used)) & 0xffff] ?? 0;
      const length = code >> 8;
      const [run, size] = [(code >> 4) & 15, code & 15];
      if (length === 0 || used + length + size > STEP_BITS) break;
      const ends = size === 0 && run !== 15;
      // 63 places are a whole block; more would look like an end.
      if (!ends && places + run + 1 > 63) break;
      used += length + size;
      places += ends ? END_PLACES : run + 1;
      steps[bits] = used | (places << 4);
      if (ends) break;
    }
  }
  return steps;
}

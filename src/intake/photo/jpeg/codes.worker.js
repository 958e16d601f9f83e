// Look-up tables for the Huffman codes of a JPEG scan (ITU-T T.81 §C.2 and annex F).

/** @typedef {import('./head.worker.js').HuffmanTable} HuffmanTable */

/** Bits that one look-up of `steps` covers. */
export const STEP_BITS = 12;
/** In a step: the block ends with it. */
export const ENDS = 128 << 4;

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
 * As many coefficients as the next bits tell whole: bits that they take + 16 × places that they go on in the block,
 * and `ENDS` where the end of the block is among them; 0 where not even one is told. Only how far a coefficient
 * reaches is needed, not what it is.
 * @param {Uint16Array} codes
 * @returns {Uint16Array}
 */
export function stepsOf(codes) {
  const steps = new Uint16Array(1 << STEP_BITS);
  for (let bits = 0; bits < steps.length; bits++) {
    let used = 0;
    let places = 0;
    for (;;) {
      const code = codes[(bits << (16 - STEP_BITS + used)) & 0xffff] ?? 0;
      const length = code >> 8;
      const [run, size] = [(code >> 4) & 15, code & 15];
      if (length === 0 || used + length + size > STEP_BITS || places > 63) break;
      used += length + size;
      if (size === 0 && run !== 15) {
        steps[bits] = used | (places << 4) | ENDS;
        break;
      }
      places += run + 1;
      steps[bits] = used | (places << 4);
    }
  }
  return steps;
}

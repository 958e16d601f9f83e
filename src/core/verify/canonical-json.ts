import { canonicalBytes } from '../ledger/canonical.js';
import { refuse } from './malformed.js';

/** Made once: making it takes as long as reading an entry. */
const UTF_8 = new TextDecoder('utf-8', { fatal: true });
/** No record nests deeper. */
const SHALLOW = 32;

/**
 * The JSON value of bytes that are its one written form (RFC 8785). A key that stands twice, a number written in
 * another way or a space more would let two programs read two things from the same bytes.
 * @throws Malformed
 */
export function readCanonical(bytes: Uint8Array, what: string): unknown {
  const { text, value } = parse(bytes, what);
  if (isPlainlyCanonical(text, value, bytes)) return value;
  if (Buffer.compare(canonical(value, what), bytes) !== 0) refuse(`${what} is not in its one written form`);
  return value;
}

/**
 * Whether the text is surely the one written form, by what costs little: it is what the engine writes for its value,
 * and every key stands after the one before. When not, only writing it anew can tell.
 */
function isPlainlyCanonical(text: string, value: unknown, bytes: Uint8Array): boolean {
  // A lone surrogate is written as an escape, and a byte-order mark is no part of the text.
  const plain = !text.includes('\\u') && Buffer.byteLength(text) === bytes.length;
  // Last, because the engine's writer does not stand endless nesting.
  return plain && isOrdered(value, 0) && JSON.stringify(value) === text;
}

function isOrdered(value: unknown, depth: number): boolean {
  if (typeof value !== 'object' || value === null) return true;
  if (depth > SHALLOW) return false;
  if (Array.isArray(value)) return value.every((one) => isOrdered(one, depth + 1));
  let before = '';
  for (const [key, held] of Object.entries(value)) {
    if (key < before || !isOrdered(held, depth + 1)) return false;
    before = key;
  }
  return true;
}

function parse(bytes: Uint8Array, what: string): { text: string; value: unknown } {
  try {
    const text = UTF_8.decode(bytes);
    return { text, value: JSON.parse(text) };
  } catch {
    return refuse(`${what} is not JSON in UTF-8`);
  }
}

function canonical(value: unknown, what: string): Uint8Array {
  try {
    return canonicalBytes(value);
  } catch (error) {
    // Half a character, nesting without end, or a number beyond all numbers (1e400), which is a plain Error there.
    if (error instanceof Error) return refuse(`${what}: ${error.message}`);
    throw error;
  }
}

import { canonicalBytes } from '../record/canonical.js';
import { refuse } from './malformed.js';

/**
 * The JSON value of bytes that are its one written form (RFC 8785). A key that stands twice, a number written in
 * another way or a space more would let two programs read two things from the same bytes.
 * @throws Malformed
 */
export function readCanonical(bytes: Uint8Array, what: string): unknown {
  const value = parse(bytes, what);
  if (Buffer.compare(canonical(value, what), bytes) !== 0) refuse(`${what} is not in its one written form`);
  return value;
}

function parse(bytes: Uint8Array, what: string): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
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

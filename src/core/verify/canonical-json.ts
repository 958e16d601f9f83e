import { canonicalBytes } from '../ledger/canonical.js';
import { isSameBytes } from '../model/bytes.js';
import { refuse } from './malformed.js';

/** A decoder for all calls: making one takes as long as reading an entry. */
const UTF_8 = new TextDecoder('utf-8', { fatal: true });

/**
 * The JSON value of bytes in canonical form (RFC 8785). A key that stands twice, a number written in
 * another way or a space more would let two programs read two things from the same bytes.
 * @throws Malformed
 */
export function readCanonical(bytes: Uint8Array, what: string): unknown {
  const value = parse(bytes, what);
  return isSameBytes(canonical(value, what), bytes)
    ? value
    : refuse(`${what} is not in canonical form (RFC 8785)`);
}

function parse(bytes: Uint8Array, what: string): unknown {
  try {
    return JSON.parse(UTF_8.decode(bytes));
  } catch {
    return refuse(`${what} is not JSON in UTF-8`);
  }
}

function canonical(value: unknown, what: string): Uint8Array {
  try {
    return canonicalBytes(value);
  } catch (error) {
    // A lone surrogate, endless nesting, or a number beyond the range of doubles (1e400) is a plain Error there.
    if (error instanceof Error) return refuse(`${what}: ${error.message}`);
    throw error;
  }
}

import { createHash } from 'node:crypto';

/** Looks at all of the bytes. */
export function look(/** @type {Buffer} */ bytes) {
  return createHash('sha256').update(bytes).digest('hex');
}

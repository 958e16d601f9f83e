import { sha1 } from '@noble/hashes/legacy';
import { sha256, sha384, sha512 } from '@noble/hashes/sha2';
import { concatBytes } from '../../core/model/bytes.js';
import type { CreateHasher, Digest, DigestLarge } from '../../core/ports/cryptography.js';

const HASHES = { sha1, sha256, sha384, sha512 };
/** Names of Web Cryptography §28. */
const NAMES = { sha1: 'SHA-1', sha256: 'SHA-256', sha384: 'SHA-384', sha512: 'SHA-512' };

export const digest: Digest = (hash, pieces) => {
  const hashing = HASHES[hash].create();
  for (const piece of pieces) hashing.update(piece);
  return hashing.digest();
};

export const digestLarge: DigestLarge = async (hash, pieces) =>
  new Uint8Array(await crypto.subtle.digest(NAMES[hash], concatBytes(pieces)));

export const createHasher: CreateHasher = (hash) => {
  const hashing = HASHES[hash].create();
  return { update: (piece) => void hashing.update(piece), digest: () => hashing.digest() };
};

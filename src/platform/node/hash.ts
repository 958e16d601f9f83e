import { createHash } from 'node:crypto';
import type { CreateHasher, Digest, DigestLarge } from '../../core/ports/cryptography.js';

export const digest: Digest = (hash, pieces) => {
  const hashing = createHash(hash);
  for (const piece of pieces) hashing.update(piece);
  return hashing.digest();
};

export const digestLarge: DigestLarge = async (hash, pieces) => digest(hash, pieces);

export const createHasher: CreateHasher = (hash) => {
  const hashing = createHash(hash);
  return { update: (piece) => void hashing.update(piece), digest: () => hashing.digest() };
};

import type { Sha256 } from '../model/evidence.js';
import { nodeHash, treeHash } from './tree.js';

/** Largest power of two below n, for n > 1: where RFC 9162 §2.1.1 splits a tree. */
function split(n: number): number {
  let k = 1;
  while (k * 2 < n) k *= 2;
  return k;
}

/**
 * Hashes that lead from one leaf to the tree hash, leaf end first: PATH of RFC 9162 §2.1.3.1.
 * @throws RangeError when there is no such leaf.
 */
export function inclusionProof(leaves: readonly Sha256[], index: number): Sha256[] {
  if (!Number.isInteger(index) || index < 0 || index >= leaves.length)
    throw new RangeError(`no leaf ${index} in a tree of ${leaves.length}`);
  if (leaves.length === 1) return [];
  const k = split(leaves.length);
  const left = leaves.slice(0, k);
  const right = leaves.slice(k);
  return index < k
    ? [...inclusionProof(left, index), treeHash(right)]
    : [...inclusionProof(right, index - k), treeHash(left)];
}

/** Whether the proof leads from the leaf to the root: RFC 9162 §2.1.3.2. Never throws. */
export function verifyInclusion(claim: {
  leaf: Sha256;
  index: number;
  size: number;
  proof: readonly Sha256[];
  root: Sha256;
}): boolean {
  const { leaf, index, size, proof, root } = claim;
  if (!isCount(index) || !isCount(size) || index >= size) return false;
  let fn = index;
  let sn = size - 1;
  let hash = leaf;
  for (const step of proof) {
    if (sn === 0) return false;
    if (fn % 2 === 1 || fn === sn) {
      hash = nodeHash(step, hash);
      while (fn % 2 === 0 && fn !== 0) {
        fn = half(fn);
        sn = half(sn);
      }
    } else {
      hash = nodeHash(hash, step);
    }
    fn = half(fn);
    sn = half(sn);
  }
  return sn === 0 && hash === root;
}

/**
 * Hashes that show that the first `oldSize` leaves were the whole tree once: PROOF of RFC 9162 §2.1.4.1.
 * @throws RangeError when the tree was never that size, or the size is 0.
 */
export function consistencyProof(leaves: readonly Sha256[], oldSize: number): Sha256[] {
  if (!Number.isInteger(oldSize) || oldSize < 1 || oldSize > leaves.length)
    throw new RangeError(`a tree of ${leaves.length} was never of size ${oldSize}`);
  return subproof(leaves, oldSize, true);
}

function subproof(leaves: readonly Sha256[], m: number, known: boolean): Sha256[] {
  if (m === leaves.length) return known ? [] : [treeHash(leaves)];
  const k = split(leaves.length);
  const left = leaves.slice(0, k);
  const right = leaves.slice(k);
  return m <= k
    ? [...subproof(left, m, known), treeHash(right)]
    : [...subproof(right, m - k, false), treeHash(left)];
}

/** Whether the newer tree only added leaves to the older one: RFC 9162 §2.1.4.2. Never throws. */
export function verifyConsistency(claim: {
  oldSize: number;
  oldRoot: Sha256;
  size: number;
  root: Sha256;
  proof: readonly Sha256[];
}): boolean {
  const { oldSize, oldRoot, size, root, proof } = claim;
  if (!isCount(oldSize) || !isCount(size) || oldSize < 1 || oldSize > size) return false;
  if (oldSize === size) return proof.length === 0 && oldRoot === root;
  const [first, ...rest] = isPowerOfTwo(oldSize) ? [oldRoot, ...proof] : proof;
  if (first === undefined) return false;
  let fn = oldSize - 1;
  let sn = size - 1;
  while (fn % 2 === 1) {
    fn = half(fn);
    sn = half(sn);
  }
  let older = first;
  let newer = first;
  for (const step of rest) {
    if (sn === 0) return false;
    if (fn % 2 === 1 || fn === sn) {
      older = nodeHash(step, older);
      newer = nodeHash(step, newer);
      while (fn % 2 === 0 && fn !== 0) {
        fn = half(fn);
        sn = half(sn);
      }
    } else {
      newer = nodeHash(newer, step);
    }
    fn = half(fn);
    sn = half(sn);
  }
  return sn === 0 && older === oldRoot && newer === root;
}

function half(n: number): number {
  return Math.floor(n / 2);
}

function isCount(n: number): boolean {
  return Number.isSafeInteger(n) && n >= 0;
}

function isPowerOfTwo(n: number): boolean {
  let odd = n;
  while (odd > 1 && odd % 2 === 0) odd /= 2;
  return odd === 1;
}

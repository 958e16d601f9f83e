import { digest, digestLarge } from '#platform/hash';
import { fromHex, toHex } from '../model/bytes.js';
import type { Sha256 } from '../model/evidence.js';

/** SHA-256 of bytes as 64 hexadecimal digits (FIPS 180-4). */
export function sha256Of(bytes: Uint8Array): Sha256 {
  return sha256([bytes]);
}

/** SHA-256 of megabytes: a browser's own hash, which answers later, is ten times as quick as one in script. */
export async function sha256OfLarge(bytes: Uint8Array): Promise<Sha256> {
  return toHex(await digestLarge('sha256', [bytes])) as Sha256;
}

function sha256(pieces: readonly Uint8Array[]): Sha256 {
  return toHex(digest('sha256', pieces)) as Sha256;
}

const LEAF = Uint8Array.of(0);
const NODE = Uint8Array.of(1);

/** Hash of one entry: SHA-256(0x00 ‖ bytes), RFC 9162 §2.1.1. The prefix keeps a node from passing as a leaf. */
export function leafHash(entryBytes: Uint8Array): Sha256 {
  return sha256([LEAF, entryBytes]);
}

/** Hash of two subtrees: SHA-256(0x01 ‖ left ‖ right), RFC 9162 §2.1.1. */
export function nodeHash(left: Sha256, right: Sha256): Sha256 {
  return sha256([NODE, fromHex(left), fromHex(right)]);
}

/** Hash of the tree without leaves: SHA-256 of nothing, RFC 9162 §2.1.1. */
export const EMPTY_ROOT: Sha256 = sha256Of(new Uint8Array());

/** A tree that grows at its end: each added leaf costs a few hashes, however large the tree is. */
export interface GrowingTree {
  readonly size: number;
  add(leaf: Sha256): void;
  /** Hash over all leaves so far. */
  root(): Sha256;
  /** A copy that grows on its own. */
  copy(): GrowingTree;
}

/** An empty tree. It keeps only the roots of its full subtrees, one for each bit of the size: RFC 9162 §2.1.2. */
export function growTree(): GrowingTree {
  return grown([], 0);
}

function grown(peaks: Sha256[], startSize: number): GrowingTree {
  let size = startSize;
  return {
    get size() {
      return size;
    },
    add(leaf) {
      let hash = leaf;
      for (let rest = size; rest % 2 === 1; rest = (rest - 1) / 2) {
        const left = peaks.pop();
        if (left === undefined) throw new Error('fewer subtrees than the size has bits');
        hash = nodeHash(left, hash);
      }
      peaks.push(hash);
      size += 1;
    },
    root: () => (peaks.length === 0 ? EMPTY_ROOT : peaks.reduceRight((right, left) => nodeHash(left, right))),
    copy: () => grown([...peaks], size),
  };
}

/** Hash over all leaves: MTH of RFC 9162 §2.1.1, from leaf hashes in order. */
export function treeHash(leaves: readonly Sha256[]): Sha256 {
  const tree = growTree();
  for (const leaf of leaves) tree.add(leaf);
  return tree.root();
}

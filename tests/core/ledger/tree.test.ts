import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  consistencyProof,
  inclusionProof,
  verifyConsistency,
  verifyInclusion,
} from '../../../src/core/ledger/proof.js';
import { EMPTY_ROOT, growTree, leafHash, sha256Of, treeHash } from '../../../src/core/ledger/tree.js';
import { concatBytes, fromHex, toHex, utf8Bytes } from '../../../src/core/model/bytes.js';
import type { Sha256 } from '../../../src/core/model/evidence.js';
import { TREE } from './vectors.js';

const sha = async (...parts: Uint8Array[]) =>
  new Uint8Array(await crypto.subtle.digest('SHA-256', concatBytes(parts)));

/** MTH as RFC 9162 §2.1.1 writes it down, split by split: slow, and shares nothing with the code under test. */
async function slowTreeHash(entries: readonly Uint8Array[]): Promise<Uint8Array> {
  const [only] = entries;
  if (only === undefined) return sha();
  if (entries.length === 1) return sha(Uint8Array.of(0), only);
  let k = 1;
  while (2 * k < entries.length) k *= 2;
  return sha(Uint8Array.of(1), await slowTreeHash(entries.slice(0, k)), await slowTreeHash(entries.slice(k)));
}

const inputs = TREE.leaves.map(fromHex);
const leaves = inputs.map((bytes) => leafHash(bytes));
const leafOf = (i: number): Sha256 => leaves[i] ?? expect.fail(`no leaf ${i}`);
const rootOf = (size: number): Sha256 => treeHash(leaves.slice(0, size));

/** Another hash: its first digit is changed. */
const bent = (hash: Sha256): Sha256 => `${hash.startsWith('0') ? '1' : '0'}${hash.slice(1)}` as Sha256;

describe('SHA-256', () => {
  it.each([
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
    [
      'abcdefghbcdefghicdefghijdefghijkefghijklfghijklmghijklmnhijklmnoijklmnopjklmnopqklmnopqrlmnopqrsmnopqrstnopqrstu',
      'cf5b16a778af8380036ce59e7b0492370b249b11e8f07a51afac45037afee9d1',
    ],
    ['a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
  ])('gives the FIPS 180 example values', (text, hash) => {
    expect(sha256Of(utf8Bytes(text))).toBe(hash);
  });
});

describe('the tree hash (RFC 9162 §2.1, published test values)', () => {
  it('hashes leaves with their prefix', () => {
    expect(leaves).toEqual(TREE.leafHashes);
  });

  it.each(TREE.roots.map((root, size) => ({ size, root })))('of $size leaves', ({ size, root }) => {
    expect(rootOf(size)).toBe(root);
  });

  it('is that of the definition, for any leaves, and grows leaf by leaf', () =>
    fc.assert(
      fc.asyncProperty(fc.array(fc.uint8Array({ maxLength: 8 }), { maxLength: 70 }), async (entries) => {
        const tree = growTree();
        expect(tree.root()).toBe(EMPTY_ROOT);
        entries.forEach((bytes, i) => {
          const before = tree.copy();
          tree.add(leafHash(bytes));
          expect(tree.size).toBe(i + 1);
          expect(before.size).toBe(i);
        });
        expect(tree.root()).toBe(toHex(await slowTreeHash(entries)));
      }),
    ));

  it('never takes two leaves’ node for a leaf of the same bytes', () => {
    const pair = fromHex(leafOf(0) + leafOf(1));
    expect(leafHash(pair)).not.toBe(rootOf(2));
  });
});

describe('an inclusion proof', () => {
  it.each(TREE.inclusion)('of leaf $index in $size is the published one', ({ index, size, proof }) => {
    expect(inclusionProof(leaves.slice(0, size), index)).toEqual(proof);
  });

  it('holds for every leaf of every size, and for no other leaf, place, size, root or step', () => {
    for (let size = 1; size <= leaves.length; size += 1)
      for (let index = 0; index < size; index += 1) {
        const proof = inclusionProof(leaves.slice(0, size), index);
        const claim = { leaf: leafOf(index), index, size, proof, root: rootOf(size) };
        expect(verifyInclusion(claim)).toBe(true);
        const wrong = [
          { ...claim, leaf: bent(claim.leaf) },
          { ...claim, root: bent(claim.root) },
          { ...claim, index: size },
          { ...claim, index: -1 },
          { ...claim, index: index + 0.5 },
          { ...claim, proof: [...proof, claim.root] },
          ...(size > 1
            ? [
                { ...claim, index: (index + 1) % size },
                { ...claim, proof: proof.slice(1) },
              ]
            : []),
          ...proof.map((_, i) => ({ ...claim, proof: proof.with(i, bent(proof[i] ?? claim.root)) })),
        ];
        for (const claimed of wrong) expect(verifyInclusion(claimed)).toBe(false);
      }
  });

  it('cannot be made for a leaf that is not there', () => {
    expect(() => inclusionProof(leaves, 8)).toThrow(RangeError);
    expect(() => inclusionProof([], 0)).toThrow(RangeError);
  });
});

describe('a consistency proof', () => {
  it.each(TREE.consistency)('from $oldSize to $size is the published one', ({ oldSize, size, proof }) => {
    expect(consistencyProof(leaves.slice(0, size), oldSize)).toEqual(proof);
  });

  it('holds from every size to every later one, and not when anything is changed', () => {
    for (let size = 1; size <= leaves.length; size += 1)
      for (let oldSize = 1; oldSize <= size; oldSize += 1) {
        const proof = consistencyProof(leaves.slice(0, size), oldSize);
        const claim = { oldSize, oldRoot: rootOf(oldSize), size, root: rootOf(size), proof };
        expect(verifyConsistency(claim)).toBe(true);
        const wrong = [
          { ...claim, oldRoot: bent(claim.oldRoot) },
          { ...claim, root: bent(claim.root) },
          { ...claim, oldSize: 0 },
          { ...claim, oldSize: size + 1 },
          { ...claim, proof: [...proof, claim.root] },
          ...(proof.length > 0 ? [{ ...claim, proof: proof.slice(1) }] : []),
          ...proof.map((_, i) => ({ ...claim, proof: proof.with(i, bent(proof[i] ?? claim.root)) })),
        ];
        for (const claimed of wrong) expect(verifyConsistency(claimed)).toBe(false);
      }
  });

  it('fails when an old leaf was changed, taken out or put in', () => {
    const rewritten = [
      leaves.with(2, bent(leafOf(2))),
      leaves.toSpliced(2, 1),
      leaves.toSpliced(2, 0, bent(leafOf(2))),
    ];
    for (const other of rewritten) {
      const claim = { oldSize: 5, oldRoot: rootOf(5), size: other.length, root: treeHash(other) };
      expect(verifyConsistency({ ...claim, proof: consistencyProof(other, 5) })).toBe(false);
    }
  });

  it('cannot be made from nothing or from a larger tree', () => {
    expect(() => consistencyProof(leaves, 0)).toThrow(RangeError);
    expect(() => consistencyProof(leaves, 9)).toThrow(RangeError);
  });
});

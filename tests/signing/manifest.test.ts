import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { buildManifest, type ManifestParts } from '../../src/signing/manifest.js';
import { BUILT_AT, exhibits, ledgerEntries, leftOut, PHOTO, RULES, text } from './sample.js';

const parts: ManifestParts = {
  volume: 'dossier',
  delivery: '2026-0714-A',
  builtAt: BUILT_AT,
  tool: { name: 'load-dossier', version: '0.0.0' },
  entries: ledgerEntries(),
  ruleSet: { name: 'produce', version: '1', bytes: RULES },
  exhibits,
  attachments: [{ name: 'e1.jpg', bytes: PHOTO, type: 'image/jpeg', what: 'original' }],
  leftOut,
};

describe('the manifest', () => {
  it('computes sizes, hashes, leaves and root from the bytes', () => {
    const { manifest } = buildManifest(parts);
    const sha = (...bytes: Uint8Array[]) => createHash('sha256').update(Buffer.concat(bytes)).digest('hex');
    expect(manifest.attachments).toEqual([
      { name: 'e1.jpg', bytes: PHOTO.length, sha256: sha(PHOTO), type: 'image/jpeg', what: 'original' },
    ]);
    // RFC 9162 §2.1.1, spelled out for four leaves.
    const [zero, one] = [Uint8Array.of(0), Uint8Array.of(1)];
    const hex = (digits = '') => Buffer.from(digits, 'hex');
    const [a, b, c, d] = parts.entries.map((entry) => sha(zero, entry));
    expect(manifest.record.leaves).toEqual([a, b, c, d]);
    const left = sha(one, hex(a), hex(b));
    const right = sha(one, hex(c), hex(d));
    expect(manifest.record.root).toBe(sha(one, hex(left), hex(right)));
    expect(manifest.record.size).toBe(4);
  });

  it('has one written form, whatever the order of the keys', () => {
    const { bytes } = buildManifest(parts);
    const { delivery, leftOut: first, ...others } = parts;
    const turned = { leftOut: first, ...others, delivery };
    expect(buildManifest(turned).bytes).toEqual(bytes);
    expect(new TextDecoder().decode(bytes)).toMatch(/^\{"attachments":\[\{"bytes":/);
  });

  it.each<[string, Partial<ManifestParts>, RegExp]>([
    ['a name twice', { attachments: [...parts.attachments, ...parts.attachments] }, /two attachments/],
    [
      'the name of the manifest itself',
      {
        attachments: [
          ...parts.attachments,
          { name: 'manifest.json', bytes: text('x'), type: 'text/plain', what: 'original' },
        ],
      },
      /only the manifest/,
    ],
    ['an exhibit whose file is nowhere', { leftOut: [] }, /exhibit 2/],
    [
      'an exhibit whose file is another',
      { attachments: [{ name: 'e1.jpg', bytes: text('x'), type: 'image/jpeg', what: 'original' }] },
      /exhibit 1/,
    ],
    [
      'a name that is a path',
      {
        attachments: [
          ...parts.attachments,
          { name: '../x', bytes: text('x'), type: 'text/plain', what: 'original' },
        ],
      },
      /name/,
    ],
    [
      'an empty attachment',
      {
        attachments: [
          ...parts.attachments,
          { name: 'x', bytes: text(''), type: 'text/plain', what: 'original' },
        ],
      },
      /bytes/,
    ],
  ])('does not accept %s', (_, change, message) => {
    expect(() => buildManifest({ ...parts, ...change })).toThrow(message);
  });
});

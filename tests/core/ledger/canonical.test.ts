import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asJsonKeeps, canonicalBytes } from '../../../src/core/ledger/canonical.js';
import { sha256Of } from '../../../src/core/ledger/tree.js';
import { CANONICAL } from './vectors.js';

const text = (value: unknown) => new TextDecoder().decode(canonicalBytes(value));

describe('canonical bytes', () => {
  it.each(CANONICAL)('are those published for $name (RFC 8785 test data)', ({ input, output, sha256 }) => {
    const bytes = canonicalBytes(JSON.parse(input));
    expect(new TextDecoder().decode(bytes)).toBe(output);
    expect(sha256Of(bytes)).toBe(sha256);
  });

  it('write minus zero as zero (RFC 8785 §3.2.2.3)', () => {
    expect(text(-0)).toBe('0');
  });

  it('do not change when they are read and written again', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 6 }), (json) => {
        const once = text(JSON.parse(json));
        expect(text(JSON.parse(once))).toBe(once);
      }),
    );
  });

  it('do not depend on the order of keys', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string({ unit: 'grapheme' }), fc.integer()), (object) => {
        const turned = Object.fromEntries(Object.entries(object).reverse());
        expect(text(turned)).toBe(text(object));
      }),
    );
  });

  it.each([
    ['a high surrogate alone', { a: { b: 'x\ud800' } }, 'a.b'],
    ['a low surrogate alone', { a: ['ok', '\udc00x'] }, 'a.1'],
    ['a half character in a key', { a: { '\ud83d': 1 } }, 'a'],
  ])('refuse %s and name the field', (_name, value, field) => {
    expect(() => canonicalBytes(value)).toThrow(
      expect.objectContaining({ name: 'DossierError', code: 'bad-value', where: { field } }),
    );
  });

  it('accept a whole pair of surrogates', () => {
    expect(text('\ud83d\ude02')).toBe('"😂"');
  });

  it.each([
    ['undefined', undefined],
    ['undefined in an object', { a: undefined }],
    ['undefined in an array', [undefined]],
    ['a hole in an array', new Array(1)],
    ['NaN', { a: Number.NaN }],
    ['infinity', Number.POSITIVE_INFINITY],
    ['a function', { a: () => 1 }],
    ['a big integer', 1n],
    ['a symbol', Symbol('a')],
    ['a date', new Date(0)],
    ['bytes', new Uint8Array(2)],
    ['an object that speaks for itself', { toJSON: () => 1 }],
  ])('refuse %s as a bug', (_name, value) => {
    expect(() => canonicalBytes(value)).toThrow(/not JSON/);
  });

  it('refuse nesting that would exhaust the stack', () => {
    const deep: unknown = JSON.parse('['.repeat(100_000) + ']'.repeat(100_000));
    expect(() => canonicalBytes(deep)).toThrow(/nested more than 64/);
  });

  it('keep null apart from what is left out', () => {
    expect(asJsonKeeps({ a: undefined, b: null, c: [{ d: undefined }] })).toEqual({ b: null, c: [{}] });
  });
});

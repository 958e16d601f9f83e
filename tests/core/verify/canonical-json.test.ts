import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalBytes } from '../../../src/core/ledger/canonical.js';
import { readCanonical } from '../../../src/core/verify/canonical-json.js';
import { Malformed } from '../../../src/core/verify/malformed.js';

const read = (text: string) => readCanonical(Buffer.from(text), 'the line');

describe('the one written form of a JSON value (RFC 8785)', () => {
  it.each([
    '{"a":1,"b":[true,null,"x"]}',
    // A program that reads keys as numbers would put 9 first; as text, 10 is.
    '{"10":1,"9":2}',
    '{"":0,"A":1,"a":2,"é":3,"😀":4,"ﬁ":5}',
    '"\\u0001\\\\u0041\\n"',
    '{"__proto__":{"a":1}}',
    '1e+21',
    `${'['.repeat(60)}${']'.repeat(60)}`,
  ])('%s is read', (text) => {
    expect(read(text)).toEqual(JSON.parse(text));
  });

  it.each([
    ['keys out of order', '{"b":1,"a":2}'],
    ['keys out of order deep inside', '[{"a":{"c":1,"b":2}}]'],
    ['keys ordered by code point', '{"ﬁ":5,"😀":4}'],
    ['keys ordered as numbers', '{"9":2,"10":1}'],
    ['a key twice', '{"a":1,"a":1}'],
    ['a space', '{"a": 1}'],
    ['a line end behind it', '{"a":1}\n'],
    ['a number in another form', '[1.0]'],
    ['a negative zero', '[-0]'],
    ['a number beyond all numbers', '[1e400]'],
    ['an escape that is not needed', '"\\u0041"'],
    ['half a character', '"\\ud800"'],
    ['a byte-order mark', '\ufeff{"a":1}'],
    ['nesting without end', `${'['.repeat(100_000)}${']'.repeat(100_000)}`],
  ])('%s is refused', (_, text) => {
    expect(() => read(text)).toThrow(Malformed);
  });

  it('is told by writing the value anew, whatever the text', () => {
    const reversed = (value: unknown): unknown =>
      typeof value !== 'object' || value === null || Array.isArray(value)
        ? value
        : Object.fromEntries(Object.entries(value).reverse());
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), fc.constantFrom(0, 1, undefined), (value, space) => {
        for (const text of [JSON.stringify(value, null, space), JSON.stringify(reversed(value))]) {
          const same = Buffer.from(canonicalBytes(JSON.parse(text))).equals(Buffer.from(text));
          if (same) expect(read(text)).toEqual(JSON.parse(text));
          else expect(() => read(text)).toThrow(Malformed);
        }
      }),
    );
  });
});

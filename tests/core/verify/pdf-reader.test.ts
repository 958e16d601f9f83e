import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Malformed } from '../../../src/core/verify/malformed.js';
import { readObject } from '../../../src/core/verify/pdf/object.js';
import { PdfReader } from '../../../src/core/verify/pdf/reader.js';
import { type PdfValue, textOf } from '../../../src/core/verify/pdf/value.js';

const read = (words: string) => new PdfReader(Buffer.from(words, 'latin1')).value();
/** A value as plain data, without its offsets. */
function plain(value: PdfValue): unknown {
  switch (value.is) {
    case 'number':
      return value.value;
    case 'name':
      return `/${value.name}`;
    case 'string':
      return Buffer.from(value.bytes).toString('latin1');
    case 'array':
      return value.items.map(plain);
    case 'dict':
      return Object.fromEntries([...value].map(([key, held]) => [key, plain(held)]));
    case 'ref':
      return { ref: value.number };
    default:
      return value.is;
  }
}

describe('PDF syntax (ISO 32000-1 §7.3)', () => {
  it.each<[string, unknown]>([
    ['123', 123],
    ['+17', 17],
    ['-.002', -0.002],
    ['4.', 4],
    ['true', 'true'],
    ['null', 'null'],
    ['/Name1', '/Name1'],
    ['/A;Name_With-Various***Characters?', '/A;Name_With-Various***Characters?'],
    ['/Lime#20Green', '/Lime Green'],
    ['/The_Key_of_F#23_Minor', '/The_Key_of_F#_Minor'],
    ['/', '/'],
    ['(This is a string)', 'This is a string'],
    ['(balanced ( parentheses ) inside)', 'balanced ( parentheses ) inside'],
    ['(two \\\nlines)', 'two lines'],
    ['(\\245\\307 \\0053)', '\xa5\xc7 \x053'],
    ['(\\n\\)\\\\)', '\n)\\'],
    ['<4E6F 762073>', 'Nov s'],
    ['<901FA>', '\x90\x1f\xa0'],
    ['[549 3.14 false (Ralph) /SomeName]', [549, 3.14, 'false', 'Ralph', '/SomeName']],
    [
      '<</Type/Example/V 0.01/R 12 0 R/A[1 0 R 2]>>',
      { Type: '/Example', V: 0.01, R: { ref: 12 }, A: [{ ref: 1 }, 2] },
    ],
    ['[1 2 3]', [1, 2, 3]],
    ['[1 0 /R]', [1, 0, '/R']],
  ])('%s', (words, expected) => {
    expect(plain(read(words))).toEqual(expected);
  });

  it.each([
    ['a key twice', '<</A 1/A 2>>'],
    ['a key twice, once escaped', '<</A 1/#41 2>>'],
    ['a comment', '[1 % two\n]'],
    ['another generation', '12 1 R'],
    ['a dictionary without end', '<</A 1'],
    ['an array without end', '[1 2'],
    ['a string without end', '(abc'],
    ['a hex string without end', '<ab'],
    ['a hex string with words', '<xy>'],
    ['a name badly escaped', '/A#4'],
    ['a value where a key belongs', '<<1 2>>'],
    ['a key without value', '<</A>>'],
    ['an unknown word', 'nulls'],
    ['nothing', ''],
  ])('%s is refused', (_, words) => {
    expect(() => read(words)).toThrow(Malformed);
  });

  it('reads every string back that it was written from', () =>
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 40 }), (bytes) => {
        const escaped = Buffer.from(bytes)
          .toString('latin1')
          .replace(/[\\()\r]/g, (c) => (c === '\r' ? '\\r' : `\\${c}`));
        expect(plain(read(`(${escaped})`))).toBe(Buffer.from(bytes).toString('latin1'));
        expect(plain(read(`<${Buffer.from(bytes).toString('hex')}>`))).toBe(
          Buffer.from(bytes).toString('latin1'),
        );
      }),
    ));

  it('reads text strings as UTF-16 where they say so', () => {
    expect(textOf(read('<FEFF00D1006100F1>'))).toBe('Ñañ');
    expect(textOf(read('(plain)'))).toBe('plain');
    expect(textOf(read('<FEFF00>'))).toBeUndefined();
  });
});

describe('an object of a PDF (ISO 32000-1 §7.3.8, §7.3.10)', () => {
  const object = (words: string, more = '') =>
    readObject(Buffer.from(words + more, 'latin1'), 7, { from: 0, to: words.length }, () => ({
      ...{ is: 'number', integer: true },
      value: 4,
    }));

  it.each([
    ['a number', '7 0 obj 12 endobj'],
    ['a stream', '7 0 obj<</Length 4>>stream\nabcd\nendstream endobj\n'],
    [
      'a stream whose length stands elsewhere',
      '7 0 obj<</Length 9 0 R>>stream\r\nabcd\r\nendstream\nendobj\n\n',
    ],
    [
      'a stream with the end of one in it',
      '7 0 obj<</Length 24>>stream\nendstream endobj 8 0 obj\nendstream endobj',
    ],
    ['an empty stream', '7 0 obj<</Length 0>>stream\nendstream\nendobj'],
    ['a string with the end of a stream in it', '7 0 obj (endstream endobj) endobj'],
    ['a list that is longer than the beginnings of streams', `7 0 obj[${'1 0 R '.repeat(2_000)}]endobj`],
  ])('%s is read, whatever comes behind it', (_, words) => {
    const { value, stream } = object(words);
    const before = object(words, '8 0 obj 1 endobj');
    expect([plain(before.value), before.stream]).toEqual([plain(value), stream]);
  });

  it.each([
    ['something behind it', '7 0 obj 12 endobj 1'],
    ['something between value and end', '7 0 obj 12 13 endobj'],
    ['another number', '8 0 obj 12 endobj'],
    ['another generation', '7 1 obj 12 endobj'],
    ['something before it', ' 7 0 obj 12 endobj'],
    ['no end', '7 0 obj 12'],
    ['a stream that is shorter than it says', '7 0 obj<</Length 6>>stream\nabcd\nendstream endobj'],
    ['a stream that is longer than it says', '7 0 obj<</Length 3>>stream\nabcd\nendstream endobj'],
    ['a stream that is longer than the file', '7 0 obj<</Length 4000>>stream\nabcd\nendstream endobj'],
    ['a stream without its length', '7 0 obj<<>>stream\nabcd\nendstream endobj'],
    ['a stream with a fraction for its length', '7 0 obj<</Length 4.>>stream\nabcd\nendstream endobj'],
    ['something behind a stream', '7 0 obj<</Length 4>>stream\nabcd\nendstream 1 endobj'],
    ['a stream whose bytes lie elsewhere', '7 0 obj<</Length 4/F(x)>>stream\nabcd\nendstream endobj'],
    ['packed objects', '7 0 obj<</Type/ObjStm/Length 4>>stream\nabcd\nendstream endobj'],
    [
      'a stream with an endless beginning',
      `7 0 obj<</A[${'1 0 R '.repeat(2_000)}]/Length 4>>stream\nabcd\nendstream endobj`,
    ],
  ])('with %s is refused', (_, words) => {
    expect(() => object(words)).toThrow(Malformed);
  });
});

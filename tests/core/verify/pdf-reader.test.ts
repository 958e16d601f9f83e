import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Malformed } from '../../../src/core/verify/malformed.js';
import { activeContent } from '../../../src/core/verify/pdf/active-content.js';
import { readPdf } from '../../../src/core/verify/pdf/file.js';
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

describe('checks of a PDF with very many kinds of dictionaries', () => {
  /** One object that holds dictionaries of which no two have the same keys. */
  function withKinds(count: number): Buffer {
    const objects = [
      '<</Type/Catalog/Pages 2 0 R/X 3 0 R>>',
      '<</Type/Pages/Kids[]/Count 0>>',
      `[${Array.from({ length: count }, (_, i) => `<</S/A${i === count - 1 ? '/URI(x)' : ''}/a${i} 1>>`).join('')}]`,
    ];
    let text = '%PDF-1.7\n';
    const offsets = objects.map((object, i) => {
      const at = text.length;
      text += `${i + 1} 0 obj\n${object}\nendobj\n`;
      return `${String(at).padStart(10, '0')} 00000 n \n`;
    });
    const table = `xref\n0 4\n0000000000 65535 f \n${offsets.join('')}trailer\n<</Size 4/Root 1 0 R>>\n`;
    return Buffer.from(`${text}${table}startxref\n${text.length}\n%%EOF\n`, 'latin1');
  }

  it('look at each dictionary a few times, however many there are', () => {
    const file = readPdf(withKinds(2_000));
    let looked = 0;
    const counted = new Map(
      [...file.objects].map(([number, object]) => [
        number,
        new Proxy(object, {
          get: (of, key) => {
            if (key === 'dictionaries') looked += of.dictionaries.length;
            return Reflect.get(of, key, of);
          },
        }),
      ]),
    );
    expect(activeContent({ ...file, objects: counted })).toHaveLength(1);
    expect(looked).toBeLessThan(10 * 2_000);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Malformed } from '../../../src/core/verify/malformed.js';
import { readObject } from '../../../src/core/verify/pdf/object.js';
import { plainElement } from '../../../src/core/verify/pdf/plain-element.js';
import { PdfReader } from '../../../src/core/verify/pdf/reader.js';
import { cases } from '../../properties.js';

const NUMBER = 12;

function recognised(text: string) {
  const bytes = Buffer.from(text, 'latin1');
  return plainElement(new PdfReader(bytes), NUMBER, 0, bytes.length);
}

/** As the reader finds it; undefined where it refuses it. */
function read(text: string) {
  const bytes = Buffer.from(text, 'latin1');
  const reader = new PdfReader(bytes);
  reader.begin(NUMBER, 0);
  try {
    return readObject(reader, NUMBER, bytes.length, () => ({ is: 'null' }));
  } catch (error) {
    if (error instanceof Malformed) return undefined;
    throw error;
  }
}

const object = (entries: string) =>
  `12 0 obj\n<<\n  /Type /StructElem\n  /S /TD\n  /P 7 0 R\n${entries}>>\n\nendobj\n\n`;

const number = fc.integer({ min: 0, max: 99_999 });
const kid = fc.oneof(
  number.map(String),
  number.map((n) => `${n + 1} 0 R`),
  number.map((n) => `<<\n    /Type /OBJR\n    /Pg ${n + 1} 0 R\n    /Obj ${n + 2} 0 R\n  >>`),
);
const maybe = (text: fc.Arbitrary<string>) => fc.option(text, { nil: '' });
const words = fc.stringMatching(/^[A-Za-z0-9 ,.]{0,20}$/);
const attributes = fc.constantFrom(
  '<<\n    /O /Table\n    /Headers [(U1x2y3) (U1x2y4)]\n  >>',
  '<<\n    /O /Table\n    /Scope /Column\n    /Headers []\n  >>',
  '<<\n    /O /Layout\n    /BorderColor [0.85 0.8 0.8862745]\n    /BorderStyle [/None /Solid]\n  >>',
  '<<\n    /O /List\n    /ListNumbering /Decimal\n  >>',
);
const element = fc
  .tuple(
    maybe(words.map((text) => `  /T (${text})\n`)),
    maybe(words.map((text) => `  /ID (${text})\n`)),
    maybe(fc.array(attributes, { maxLength: 2 }).map((all) => `  /A [${all.join(' ')}]\n`)),
    fc.array(kid, { maxLength: 8 }).map((all) => `  /K [${all.join(' ')}]\n`),
    maybe(number.map((n) => `  /Pg ${n + 1} 0 R\n`)),
  )
  .map((entries) => object(entries.join('')));

/** Some characters in the place of some others, of those that mean something to PDF. */
const changed = fc
  .tuple(element, fc.nat(), fc.nat({ max: 6 }), fc.stringMatching(/^[ \n0-9R/()[\]<>\\STKPgA%#-]{0,6}$/))
  .map(([text, at, length, other]) => {
    const from = at % text.length;
    return text.slice(0, from) + other + text.slice(from + length);
  });

describe('an element recognised by its form', () => {
  it('is one that the reader takes, with the same references and no other keys', () => {
    fc.assert(
      fc.property(fc.oneof(element, changed), (text) => {
        const found = recognised(text);
        if (found === undefined) return;
        const own = read(text);
        expect(own?.references).toEqual(found.references);
        expect(found.value).toEqual(own?.value);
        const keys = own?.dictionaries.flatMap(({ kind }) => kind.keys()) ?? [];
        const known =
          /^(Type|S|P|T|ID|A|K|Pg|O|Obj|ListNumbering|Placement|Border(Color|Style|Thickness)|Scope|Headers)$/;
        expect(keys.filter((key) => !known.test(key))).toEqual([]);
      }),
      { numRuns: cases(1_000) },
    );
  });

  it.each([
    [
      'the typesetter’s own',
      '  /A [<<\n    /O /Table\n    /Headers [(U1x2y3)]\n  >>]\n  /K [3 8 0 R]\n  /Pg 9 0 R\n',
    ],
    ['one without kids', '  /K []\n'],
  ])('is %s', (_, entries) => {
    expect(recognised(object(entries))?.references).toEqual(read(object(entries))?.references);
    expect(recognised(object(entries))).toBeDefined();
  });

  it.each([
    ['a key twice', object('  /K [1]\n  /K [2]\n')],
    ['a key of another kind', object('  /AA [1]\n  /K [1]\n')],
    ['an action among its kids', object('  /K [<<\n    /S /JavaScript\n  >>]\n')],
    ['words that look like a reference', object('  /T (see 99 0 R)\n  /K [1]\n')],
    ['a type that is an action', object('  /K [1]\n').replace('/TD', '/ResetForm')],
    ['a reference to object 0', object('  /K [0 0 R]\n')],
    ['another number', object('  /K [1]\n').replace('12 0 obj', '13 0 obj')],
    ['something behind it', `${object('  /K [1]\n')}%`],
    ['something before it', ` ${object('  /K [1]\n')}`],
    ['very many kids', object(`  /K [${'1 0 R '.repeat(2_000).trim()}]\n`)],
  ])('is not one with %s', (_, text) => {
    expect(recognised(text)).toBeUndefined();
  });

  it('is not looked at once for each of its digits', { timeout: 20_000 }, () => {
    const long = object(`  /T (${'1'.repeat(7_800)})\n  /K [8 0 R]\n`);
    for (let i = 0; i < 2_000; i += 1) expect(recognised(long)?.references).toEqual([7, 8]);
  });
});

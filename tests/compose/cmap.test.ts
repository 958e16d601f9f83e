import { readFileSync } from 'node:fs';
import fontkit from '@pdf-lib/fontkit';
import { describe, expect, it } from 'vitest';
import { codePointsOf } from '../../src/compose/cmap.js';
import { fontFiles } from '../../src/compose/glyphs.js';

type Table = [platform: number, encoding: number, bytes: Buffer];

const words = (...values: number[]) => {
  const made = Buffer.alloc(values.length * 2);
  for (const [i, value] of values.entries()) made.writeUInt16BE(value & 0xffff, i * 2);
  return made;
};
const longs = (...values: number[]) => words(...values.flatMap((value) => [value >>> 16, value & 0xffff]));

/** A font with nothing in it but its table of code points. */
function font(...tables: Table[]): Uint8Array {
  let at = 4 + 8 * tables.length;
  const records = tables.map(([platform, encoding, bytes]) => {
    const record = Buffer.concat([words(platform, encoding), longs(at)]);
    at += bytes.length;
    return record;
  });
  const cmap = Buffer.concat([words(0, tables.length), ...records, ...tables.map(([, , bytes]) => bytes)]);
  return Buffer.concat([
    longs(0x00010000),
    words(1, 16, 0, 0),
    Buffer.from('cmap'),
    longs(0, 28, cmap.length),
    cmap,
  ]);
}

/** Segments A–C by difference, E–G by a list in which F has none, and the one that ends each table. */
const segments = Buffer.concat([
  words(4, 0, 0, 6, 0, 0, 0),
  words(0x43, 0x47, 0xffff, 0),
  words(0x41, 0x45, 0xffff),
  words(1 - 0x41, 0, 1),
  words(0, 4, 0),
  words(7, 0, 9),
]);
const groups = Buffer.concat([words(12, 0), longs(28, 0, 1, 0x1f600, 0x1f602, 5)]);

describe('the code points of a font', () => {
  it.each(fontFiles().map((file) => [file.split('/').at(-1) ?? '', file]))(
    'are what a font library reads from %s',
    (_, file) => {
      const bytes = readFileSync(file);
      expect(codePointsOf(bytes)).toEqual(new Set(fontkit.create(bytes).characterSet));
    },
  );

  it('are those of segments and lists, without the ones that have no glyph', () => {
    expect([...codePointsOf(font([3, 1, segments]))]).toEqual([0x41, 0x42, 0x43, 0x45, 0x47]);
  });

  it('are those of groups, which the fullest table has', () => {
    const both = font([3, 1, segments], [3, 10, groups]);
    expect([...codePointsOf(both)]).toEqual([0x1f600, 0x1f601, 0x1f602]);
  });

  it.each([
    ['no table for Unicode', font([1, 0, segments]), /no table for Unicode/],
    ['another form', font([3, 1, words(6, 0, 0)]), /form that is not read/],
    ['no such table', Buffer.concat([longs(0x00010000), words(0, 0, 0, 0)]), /no table cmap/],
  ])('are not guessed from a font with %s', (_, bytes, message) => {
    expect(() => codePointsOf(bytes)).toThrow(message);
  });
});

import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Delimiter, splitLine } from '../../../src/intake/table/delimiter.js';
import { detectEncoding, type Encoding } from '../../../src/intake/table/encoding.js';
import { eachRow } from '../../../src/intake/table/rows.js';
import { parseWrittenTable } from '../../../src/intake/table/written-table.js';

/** Bytes in pieces of the given size, so that pieces end in the middle of lines and characters. */
const pieces = (bytes: Uint8Array, size: number) =>
  async function* () {
    for (let i = 0; i < bytes.length; i += size) yield bytes.subarray(i, i + size);
  };

async function rowsOf(bytes: Uint8Array, delimiter: Delimiter, encoding: Encoding = 'utf-8', size = 7) {
  const rows: [number, string[]][] = [];
  await eachRow(pieces(bytes, size), { encoding, delimiter }, (cells, line) => rows.push([line, cells]) > 0);
  return rows;
}
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('a line', () => {
  it.each([
    ['a,"b,c",d', ['a', 'b,c', 'd']],
    ['a, "b" ,c', ['a', 'b ', 'c']],
    ['a,b"c"d,e', ['a', 'b"c"d', 'e']],
    ['"" "a",b', ['a', 'b']],
    ['"a" "b",c', ['a "b"', 'c']],
    ['"a""b"', ['a"b']],
    ['"open,a', ['"open', 'a']],
  ])('%s is split', (line, fields) => expect(splitLine(line, ',')).toEqual(fields));

  // Once for each quotation mark, it would take minutes.
  it('of quotation marks is looked through once', () => {
    const marks = '"'.repeat(1_000_000);
    expect(splitLine(`x${marks}`, ',')).toEqual([`x${marks}`]);
    expect(splitLine(`"${marks}"`, ',')).toEqual(['"'.repeat(500_000)]);
  });
});

describe('rows of a log', () => {
  it.each([
    ['LF', 'a,b\nc,d\n'],
    ['CR LF', 'a,b\r\nc,d\r\n'],
    ['CR alone', 'a,b\rc,d\r'],
    ['no last line end', 'a,b\nc,d'],
  ])('end with %s', async (_, text) => {
    for (const size of [1, 2, 3, 4, 100])
      expect(await rowsOf(utf8(text), ',', 'utf-8', size)).toEqual([
        [1, ['a', 'b']],
        [2, ['c', 'd']],
      ]);
  });

  it('keep their line over blank lines and over line ends within quotes', async () => {
    expect(await rowsOf(utf8('a,b\n\n"c\r\nx","d ""q"""\ne,f\n'), ',')).toEqual([
      [1, ['a', 'b']],
      [3, ['c\nx', 'd "q"']],
      [5, ['e', 'f']],
    ]);
  });

  it.each([
    ['a quotation mark that never closes', `a,"b\n${'c,d\n'.repeat(2000)}`],
    ['a line that never ends', `a,${'b'.repeat(1_100_000)}`],
  ])('refuse %s and name the line', async (_, text) => {
    await expect(rowsOf(utf8(text), ',', 'utf-8', 65536)).rejects.toMatchObject({
      code: 'unsupported-file',
      where: { row: 1 },
    });
  });

  it('are those that a general CSV parser gives (csv-parse, RFC 4180)', async () => {
    const cell = fc.string({ unit: fc.constantFrom('a', '1', '"', ',', '\n', ' ', 'é'), maxLength: 6 });
    const printed = (c: string): string => (/[",\n]/.test(c) ? `"${c.replaceAll('"', '""')}"` : c);
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 6 }),
        async (table) => {
          const text = table.map((row) => row.map(printed).join(',')).join('\n');
          const theirs: string[][] = parse(text, { relax_column_count: true, skip_empty_lines: true });
          const ours = (await rowsOf(utf8(text), ',')).map(([, cells]) => cells);
          // Lines of blanks alone are no rows to us.
          expect(ours).toEqual(theirs.filter((row) => row.length > 1 || row[0]?.trim() !== ''));
        },
      ),
    );
  });
});

describe('encodings', () => {
  const text = 'Año;Soll\n1;2,5\n';
  const be = Buffer.from(text, 'utf16le').swap16();
  it.each([
    ['UTF-8', Buffer.from(text), 'utf-8'],
    ['UTF-8 with mark', Buffer.from(`\ufeff${text}`), 'utf-8'],
    ['UTF-16 LE with mark', Buffer.from(`\ufeff${text}`, 'utf16le'), 'utf-16le'],
    ['UTF-16 LE', Buffer.from(text, 'utf16le'), 'utf-16le'],
    ['UTF-16 BE with mark', Buffer.concat([Buffer.from([0xfe, 0xff]), be]), 'utf-16be'],
    ['UTF-16 BE', be, 'utf-16be'],
    ['Latin-1', Buffer.from(text, 'latin1'), 'latin1'],
  ] as const)('%s is found out and read', async (_, bytes, encoding) => {
    expect(detectEncoding(bytes)).toBe(encoding);
    expect((await rowsOf(bytes, ';', encoding, 3))[0]?.[1]).toEqual(['Año', 'Soll']);
  });
});

describe('a written table', () => {
  it('has headings as words joined by dashes, and rows by the line they begin on', () => {
    const table = parseWrittenTable(
      '\ufeffTime;Set point;note\r\n\r\n1;2;"two\r\nlines"\r\n;;\r\n3;4\r\n',
      't.csv',
    );
    expect(table.headings).toEqual(['time', 'set-point', 'note']);
    expect(table.rows.map((r) => [r.row, Object.fromEntries(r.cells)])).toEqual([
      [3, { time: '1', 'set-point': '2', note: 'two\nlines' }],
      [6, { time: '3', 'set-point': '4' }],
    ]);
  });
});

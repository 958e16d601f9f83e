import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { eachRow } from '../../src/intake/table/rows.js';

/**
 * Rows of delimited text against Python's csv module, an independent reader of RFC 4180, on files that Python's
 * own writer made: every way of quoting, every delimiter, every line end that we read.
 */
const folder = mkdtempSync(join(tmpdir(), 'csv-check-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Writes a file of made-up cells and prints what csv.reader makes of it, as JSON. */
const PYTHON = `
import csv, io, json, random, sys
path, seed, delimiter, newline, quoting = sys.argv[1], int(sys.argv[2]), sys.argv[3], sys.argv[4], int(sys.argv[5])
r = random.Random(seed)
bits = ['a', '1', '36.5', '"', ' ', 'é', '°F', ',', ';', '\\t', '|', '\\n', '2026-07-14 04:00', '', '=', '\\u2212']
rows = [[''.join(r.choice(bits) for _ in range(r.randrange(5))) for _ in range(r.randrange(2, 6))] for _ in range(200)]
out = io.StringIO(newline='')
csv.writer(out, delimiter=delimiter, lineterminator=newline, quoting=quoting).writerows(rows)
text = out.getvalue()
open(path, 'w', encoding='utf-8', newline='').write(text)
print(json.dumps(list(csv.reader(io.StringIO(text, newline=''), delimiter=delimiter))))
`;
/** csv.QUOTE_MINIMAL, QUOTE_ALL, QUOTE_NONNUMERIC (Python library reference, csv). */
const QUOTING = [0, 1, 2] as const;

const cases = [',', ';', '\t', '|'].flatMap((delimiter) =>
  ['\n', '\r\n', '\r'].flatMap((newline) => QUOTING.map((quoting) => ({ delimiter, newline, quoting }))),
);

describe('rows are those that Python’s csv module reads', () => {
  it.each(cases.map((one, seed) => ({ ...one, seed })))(
    '%o',
    async ({ delimiter, newline, quoting, seed }) => {
      const file = join(folder, `${seed}.csv`);
      const told = execFileSync(
        'python3',
        ['-c', PYTHON, file, String(seed), delimiter, newline, String(quoting)],
        {
          encoding: 'utf8',
          env: { ...process.env, PYTHONIOENCODING: 'utf-8' },
        },
      );
      const theirs = JSON.parse(told) as string[][];
      const ours: string[][] = [];
      await eachRow(
        file,
        { encoding: 'utf-8', delimiter: delimiter as ',' },
        (cells) => ours.push(cells) > 0,
      );
      // Lines of blanks alone are no rows of a log; Python counts them.
      const isRow = (row: string[]) => row.join(delimiter).trim() !== '';
      expect(ours.filter(isRow)).toEqual(theirs.filter(isRow));
    },
  );
});

describe('the forms that RFC 4180 §2 names', () => {
  it.each([
    [
      '1. each record on a line',
      'a,b\r\nc,d\r\n',
      [
        ['a', 'b'],
        ['c', 'd'],
      ],
    ],
    [
      '2. the last record may lack its line end',
      'a,b\r\nc,d',
      [
        ['a', 'b'],
        ['c', 'd'],
      ],
    ],
    ['4. spaces belong to the field', 'a, b ,c\r\n', [['a', ' b ', 'c']]],
    ['5. fields may be quoted', '"a","b"\r\n', [['a', 'b']]],
    ['6. quoted fields hold line ends and commas', '"a\r\nb",","\r\n', [['a\nb', ',']]],
    ['7. a quotation mark in a field is doubled', '"a""b",c\r\n', [['a"b', 'c']]],
  ])('%s', async (_, text, rows) => {
    const file = join(folder, 'form.csv');
    writeFileSync(file, text);
    const ours: string[][] = [];
    await eachRow(file, { encoding: 'utf-8', delimiter: ',' }, (cells) => ours.push(cells) > 0);
    expect(ours).toEqual(rows);
  });
});

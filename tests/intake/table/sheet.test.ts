import { describe, expect, it } from 'vitest';
import { zone } from '../../../src/core/model/time.js';
import { examineFile } from '../../../src/intake/examine.js';
import { recogniseFile } from '../../../src/intake/recognise.js';
import { readSheets } from '../../../src/intake/table/sheet.js';
import { readUnitLog } from '../../../src/intake/unit-log/read.js';
import { delivery, emptyFolder, put, someHash } from '../a-delivery.js';
import { celsius, evidence, instants } from '../unit-log/reading.js';
import { type MadeCell, sheetXml, spreadsheet, workbook, zipped } from './make-sheet.js';

const folder = await emptyFolder();
let files = 0;
async function examined(bytes: Buffer) {
  const file = await put(folder, `${files++}.xlsx`, bytes);
  const result = await examineFile({
    path: file.path,
    name: file.name,
    file: { name: file.name, bytes: file.bytes, sha256: someHash },
    delivery,
    options: { logZone: zone.parse('America/Phoenix') },
  });
  return { ...result, path: file.path };
}

/** 2026-07-14 04:00 and 04:05 as days since 1899-12-30. */
const [FOUR, FIVE_PAST] = [46217 + 4 / 24, 46217 + 4 / 24 + 5 / 1440];
const LOG: MadeCell[][] = [
  ['Trailer', 'T-118'],
  [],
  ['Time', 'Set point (°F)', 'Return air (°F)', 'Mode'],
  [{ day: FOUR }, 36, 37.400000000000006, 'Cool "fast",\tbut\nslow'],
  [{ day: FIVE_PAST }, 36, { error: '#N/A' }, 'Defrost'],
];

describe('a spreadsheet', () => {
  it('is recognised by what is in it', async () => {
    const { path } = await put(folder, 'named.bin', await spreadsheet({ Data: LOG }));
    expect((await recogniseFile(path)).is).toBe('spreadsheet');
    const other = await put(folder, 'other.xlsx', await zipped({ 'a.txt': 'a' }));
    expect((await recogniseFile(other.path)).is).toBe('archive');
  });

  it('with a log is read as the same table in CSV would be, its rows by their numbers', async () => {
    const { received, problems, log, path } = await examined(await spreadsheet({ Data: LOG }));
    expect(problems).toEqual([]);
    if (received.kind !== 'unit-log') throw new Error(received.kind);
    expect(received.mapping).toMatchObject({ sheet: 'Data', headerRow: 3, decimal: '.' });
    const again = await readUnitLog(path, received.mapping, { evidence, addedSeconds: 0 });
    expect(instants(again.times)).toEqual(['2026-07-14T11:00', '2026-07-14T11:05']);
    expect(celsius(again.channels['return-air'])).toEqual([3, Number.NaN]);
    expect([...(again.states.mode ?? [])]).toEqual(['Cool "fast", but slow', 'Defrost']);
    expect([...again.rows]).toEqual([4, 5]);
    expect(log?.rows.map((row) => row.row)).toEqual([4, 5]);
  });

  it.each([
    ['day numbers that are not shown as dates', [FOUR, 36]],
    ['dates as text', ['2026-07-14 04:00', 36]],
  ] as [string, MadeCell[]][])('may have %s', async (_, row) => {
    const { received } = await examined(await spreadsheet({ A: [['Time', 'Return F'], row] }));
    expect(received).toMatchObject({ kind: 'unit-log', from: '2026-07-14T11:00:00.000Z' });
  });

  it('may have the date and the time of day in two columns', async () => {
    const rows: MadeCell[][] = [
      ['Date', 'Time', 'Return F'],
      [{ day: 46217 }, { day: 0.25 }, 36],
      [{ day: 46217 }, 0.3125, 36],
    ];
    const { received } = await examined(await spreadsheet({ A: rows }));
    expect(received).toMatchObject({ from: '2026-07-14T13:00:00.000Z', to: '2026-07-14T14:30:00.000Z' });
  });

  // ISO/IEC 29500-1, §18.2.28; an xsd:boolean has two words for yes.
  it.each(['1', 'true'] as const)('may count its days from 1904 (%s)', async (yes) => {
    const xml = sheetXml([
      ['Time', 'Return F'],
      [{ day: FOUR - 1462 }, 36],
    ]);
    const { received } = await examined(await zipped(workbook({ A: xml }, yes)));
    expect(received).toMatchObject({ from: '2026-07-14T11:00:00.000Z' });
  });

  it('is read by its first sheet that is a log; the others are named', async () => {
    const { received, takenFor } = await examined(
      await spreadsheet({
        Summary: [
          ['Mean', 36],
          ['Max', 38],
        ],
        Rows: LOG,
        More: LOG,
      }),
    );
    expect(received).toMatchObject({ kind: 'unit-log', mapping: { sheet: 'Rows' } });
    expect(takenFor).toMatch(/sheet "Rows" of "Summary", "Rows", "More"$/);
  });

  it('with a table of readings gives its readings', async () => {
    const { received, readings, problems } = await examined(
      await spreadsheet({
        Pulps: [
          ['time', 'kind', 'value', 'unit', 'stop', 'line'],
          [{ day: FOUR }, 'pulp', 34.2, 'F', 'load-1', 'romaine'],
          [{ day: FOUR }, 'pulp', 'warm', 'F', 'load-1', 'romaine'],
        ],
      }),
    );
    expect(received).toMatchObject({ kind: 'readings', rows: 1, rowsLeftOut: 1 });
    expect(readings).toMatchObject([
      {
        row: 2,
        reading: { temperature: { value: 34.2, unit: '°F' }, time: { instant: '2026-07-14T11:00:00.000Z' } },
      },
    ]);
    expect(problems).toMatchObject([{ where: { row: 3, column: 'value' } }]);
  });

  it('without either is kept as a document that says what the likeliest sheet lacks', async () => {
    const { received, problems } = await examined(
      await spreadsheet({
        A: [
          ['x', 'y'],
          [1, 2],
        ],
        B: [
          ['Time', 'Return air'],
          [FOUR, 36],
        ],
      }),
    );
    expect(received.kind).toBe('document');
    expect(problems).toMatchObject([{ message: expect.stringMatching(/°F or °C/) }]);
  });
});

describe('a hostile spreadsheet is a problem and a document', () => {
  const billion = `<row r="1"><c r="A1"><v>1</v></c></row><row r="999999999"><c r="A999999999"><v>1</v></c></row>`;
  const sheet = (data: string) => `<worksheet><sheetData>${data}</sheetData></worksheet>`;
  it.each([
    [
      'a bomb of zeros',
      { ...workbook({ A: '' }), 'xl/worksheets/sheet1.xml': Buffer.alloc(200 * 1024 * 1024, ' ') },
      /unpack|bomb|bytes/,
    ],
    ['a row with the number of a billion', workbook({ A: sheet(billion) }), /a sheet of 999999999 rows/],
    [
      'broken XML',
      workbook({ A: '<worksheet><sheetData><row r="1"><c' }),
      /cannot be read|no sheet|sheets are empty/,
    ],
    ['no sheets at all', { 'xl/workbook.xml': '<workbook/>' }, /./],
  ] as [string, Record<string, string | Buffer>, RegExp][])('%s', async (_, parts, message) => {
    const { received, problems } = await examined(await zipped(parts));
    expect(received.kind).toBe('document');
    expect(problems.map((p) => p.message).join()).toMatch(message);
    expect(problems[0]?.where.file).toMatch(/xlsx$/);
  });

  it('a damaged one', async () => {
    const bytes = await spreadsheet({ Data: LOG });
    // In the packed bytes of the first entries.
    for (let at = 80; at < 400; at++) bytes[at] = (bytes[at] ?? 0) ^ 0x55;
    await expect(
      readSheets((await put(folder, 'damaged.xlsx', bytes)).path, 'damaged.xlsx'),
    ).rejects.toMatchObject({
      name: 'DossierError',
    });
  });
});

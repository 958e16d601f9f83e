import { utils, write } from '@e965/xlsx';
import { PDFDocument, StandardFonts } from 'pdf-lib';
import { describe, expect, it } from 'vitest';
import { parseDeliveryFile } from '../../../src/intake/delivery-file.js';
import { examineFile } from '../../../src/intake/examine.js';
import { readUnitLog } from '../../../src/intake/unit-log/read.js';
import { DELIVERY_YAML, emptyFolder, put, someHash } from '../a-delivery.js';
import { celsius, evidence } from '../unit-log/reading.js';

/** What a file holds of its log is read, or told by name: never passed over. */
const folder = await emptyFolder();
const delivery = parseDeliveryFile(
  DELIVERY_YAML.replace('America/Chicago', 'America/Phoenix'),
  'delivery.yaml',
).facts;

async function taken(name: string, bytes: string | Uint8Array) {
  const found = await put(folder, name, bytes);
  const file = { name, bytes: found.bytes, sha256: someHash };
  const { received, problems } = await examineFile({ path: found.path, name, file, delivery });
  const told = problems.map(({ message }) => message);
  if (received.kind !== 'unit-log') return { kind: received.kind, told };
  const log = await readUnitLog(found.path, received.mapping, { evidence, addedSeconds: 0 });
  const values = celsius(log.channels.probe).map((value) => (Number.isNaN(value) ? 'none' : value));
  return { kind: received.kind, values, told };
}

const wall = (i: number) => `2026-07-14 04:${String(i).padStart(2, '0')}`;

type Word = readonly [x: number, line: number, text: string];
async function pdf(pages: readonly (readonly Word[])[]): Promise<Uint8Array> {
  const made = await PDFDocument.create();
  const font = await made.embedFont(StandardFonts.Helvetica);
  for (const words of pages) {
    const sheet = made.addPage([600, 800]);
    for (const [x, line, text] of words) sheet.drawText(text, { x, y: 760 - line * 14, size: 9, font });
  }
  return made.save();
}
const HEAD: readonly Word[] = [
  [50, 0, 'Date time'],
  [200, 0, 'Temp (°C)'],
];
const row = (line: number, i: number, text: string): Word[] => [
  [50, line, wall(i)],
  [200, line, text],
];

describe('the text of a PDF', () => {
  it('keeps rows of a sensor that was out, marked or blank', async () => {
    const marks = ['---', 'no data', ''];
    const words = Array.from({ length: 15 }, (_, i) =>
      row(i + 1, i, i < 12 ? `${i}.5` : (marks[i - 12] ?? '')).filter(([, , text]) => text !== ''),
    );
    expect(await taken('out.pdf', await pdf([[...HEAD, ...words.flat()]]))).toEqual({
      kind: 'unit-log',
      values: [...Array.from({ length: 12 }, (_, i) => i + 0.5), 'none', 'none', 'none'],
      told: [],
    });
  });

  it('has its lines with a time that stand outside the columns told, with the page', async () => {
    const rows = Array.from({ length: 12 }, (_, i) => row(i + 1, i, `${i}.5`));
    const { told } = await taken(
      'footer.pdf',
      await pdf([[...HEAD, ...rows.flat(), [120, 40, 'Printed 2026-07-15 09:30 by R. Tansy']]]),
    );
    expect(told).toEqual([
      '1 line with a date and a time outside the columns of its table not read, the first on page 1: "Printed 2026-07-15 09:30 by R. Tansy"',
    ]);
  });

  it('is told not to be looked through where the file is too large', async () => {
    const small = await pdf([[...HEAD]]);
    const large = Buffer.concat([Buffer.alloc(65 * 1024 * 1024, '%'), small]);
    large.set(small.subarray(0, 9));
    const { kind, told } = await taken('large.pdf', large);
    expect(kind).toBe('document');
    expect(told.join(' ')).toContain('its text was not looked through for a log');
  });
});

describe('records', () => {
  const record = (i: number) => ({ time: wall(i), temp_c: i + 0.5 });
  const records = [0, 1, 2].map(record);

  it('whose last line is unfinished have that line told', async () => {
    const lines = records.map((one) => JSON.stringify(one));
    expect(await taken('cut.jsonl', `${lines.join('\n')}\n{"time":"2026-0`)).toMatchObject({
      values: [0.5, 1.5, 2.5],
      told: ['the file ends within the record in line 4, which is not read'],
    });
  });

  it('with lists in them have those told', async () => {
    const lines = records.map((one) => JSON.stringify({ ...one, history: [1, 2] }));
    const { told } = await taken('lists.jsonl', `${lines.join('\n')}\n`);
    expect(told).toEqual(['lists within its records are not read: history']);
  });

  it.each([
    [
      'JSON',
      'sensors.json',
      JSON.stringify({ sensors: ['North', 'South'].map((name) => ({ name, readings: records })) }),
    ],
    [
      'XML',
      'sensors.xml',
      `<?xml version="1.0"?><log>${['North', 'South']
        .map(
          (name) =>
            `<sensor><name>${name}</name>${records.map((r) => `<row time="${r.time}" temp_c="${r.temp_c}"/>`).join('')}</sensor>`,
        )
        .join('')}</log>`,
    ],
  ])('of two sensors in %s are asked about, not read as one', async (_, name, text) => {
    const { kind, told } = await taken(name, text);
    expect(kind).toBe('document');
    expect(told[0]).toContain('name": North (3 rows), South (3 rows)');
  });

  it('in two lists: the second is told', async () => {
    const { values, told } = await taken(
      'two.json',
      JSON.stringify({ front: [...records, record(3)], rear: records }),
    );
    expect(values).toHaveLength(4);
    expect(told).toEqual(['of its tables the first is read; "rear" is another and is not read']);
  });

  it('with one name twice in an element keep both values', async () => {
    const rows = records.map(
      (r) => `<row><time>${r.time}</time><temp_c>${r.temp_c}</temp_c><temp_c>9</temp_c></row>`,
    );
    const { kind, values, told } = await taken(
      'twice.xml',
      `<?xml version="1.0"?><log>${rows.join('')}</log>`,
    );
    expect([kind, values, told]).toEqual(['unit-log', [0.5, 1.5, 2.5], []]);
  });
});

it('a further log of a spreadsheet is told by the name of its sheet', async () => {
  const book = utils.book_new();
  for (const [sheet, first] of [
    ['Front', 3],
    ['Rear', 4],
  ] as const)
    utils.book_append_sheet(
      book,
      utils.aoa_to_sheet([['Time', 'Temp (°C)'], ...[0, 1].map((i) => [wall(i), first + i])]),
      sheet,
    );
  const bytes = new Uint8Array(write(book, { type: 'array', bookType: 'ods' }) as ArrayBuffer);
  expect(await taken('two.ods', bytes)).toEqual({
    kind: 'unit-log',
    values: [3, 4],
    told: ['of its tables the first is read; "Rear" is another and is not read'],
  });
});

const SHOCKS = [
  ['Time', 'Peak (g)'],
  [wall(5), '4.4'],
];
const bareShocks = [
  ['Time', 'Peak'],
  [wall(5), '4.4'],
];
const LOG = [['Time', 'Temp (°C)'], ...[0, 1].map((i) => [wall(i), i])];
const READINGS = [
  ['time', 'kind', 'value', 'unit', 'stop'],
  [wall(0), 'pulp', '36', 'F', 'load-1'],
];
const NO_UNIT = 'nothing says in what unit "Peak" is';

it.each<[string, [name: string, rows: (string | number)[][]][], string, string[]]>([
  [
    'shocks behind a log',
    [
      ['Air', LOG],
      ['Shocks', SHOCKS],
    ],
    'unit-log',
    ['of its tables the first is read; "Shocks" is another and is not read'],
  ],
  [
    'readings behind a log',
    [
      ['Air', LOG],
      ['Pulps', READINGS],
    ],
    'unit-log',
    ['of its tables the first is read; "Pulps" is another and is not read'],
  ],
  [
    'shocks without a unit before a log',
    [
      ['Shocks', bareShocks],
      ['Air', LOG],
    ],
    'unit-log',
    [NO_UNIT],
  ],
  ['shocks without a unit alone', [['Shocks', bareShocks]], 'document', [NO_UNIT]],
])('a spreadsheet with %s says so', async (_, sheets, kind, told) => {
  const book = utils.book_new();
  for (const [name, rows] of sheets) utils.book_append_sheet(book, utils.aoa_to_sheet(rows), name);
  const bytes = new Uint8Array(write(book, { type: 'array', bookType: 'xlsx' }) as ArrayBuffer);
  const found = await taken('several.xlsx', bytes);
  expect({ ...found, values: undefined }).toEqual({ kind, values: undefined, told });
});

it('a table of shocks too large to read whole is kept as a paper, and said to be', async () => {
  const wave = Array.from({ length: 1500 }, (_, i) => (i % 7) / 10).join();
  const table = (rows: number) =>
    `Time,Peak (g),Axis,Curve\n${Array.from({ length: rows }, (_, i) => `${wall(i)},4.4,vertical,"${wave}"\n`).join('')}`;
  expect(await taken('few.csv', table(10))).toEqual({ kind: 'readings', told: [] });
  expect(await taken('many.csv', table(300))).toEqual({
    kind: 'document',
    told: ['more than 1 MB, which is no list of events'],
  });
});

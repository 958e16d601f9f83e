import { utils, write } from '@e965/xlsx';
import { PDFDocument, StandardFonts } from 'pdf-lib';
import { describe, expect, it } from 'vitest';
import { toInstant } from '../../../src/core/model/time.js';
import { parseDeliveryFile } from '../../../src/intake/delivery-file.js';
import { examineFile } from '../../../src/intake/examine.js';
import { readUnitLog } from '../../../src/intake/unit-log/read.js';
import { DELIVERY_YAML, emptyFolder, put, someHash } from '../a-delivery.js';
import { celsius, evidence } from '../unit-log/reading.js';
import { sheetXml, workbook, zipped } from './make-sheet.js';

const folder = await emptyFolder();
const delivery = parseDeliveryFile(
  DELIVERY_YAML.replace('America/Chicago', 'America/Phoenix'),
  'delivery.yaml',
).facts;

async function taken(name: string, bytes: string | Uint8Array) {
  const found = await put(folder, name, bytes);
  const file = { name, bytes: found.bytes, sha256: someHash };
  return { examined: await examineFile({ path: found.path, name, file, delivery }), path: found.path };
}

/** The type of the file, and the log that is read from it again. */
async function log(name: string, bytes: string | Uint8Array) {
  const { examined, path } = await taken(name, bytes);
  const { received, problems } = examined;
  if (received.kind !== 'unit-log') return { type: received.file.type, problem: problems[0]?.message };
  const read = await readUnitLog(path, received.mapping, { evidence, addedSeconds: 0 });
  return {
    type: received.file.type,
    times: Array.from(read.times, (at) => toInstant(at).slice(11, 16)),
    values: celsius(read.channels.probe ?? read.channels['return-air']),
  };
}

const TIMES = ['11:00', '11:05', '11:10'];
const VALUES = [3.5, 3.6, -1.25];
const EXPECTED = { times: TIMES, values: VALUES };
const wall = (i: number) => `2026-07-14 04:${String(i * 5).padStart(2, '0')}`;

/** Invented rows as a spreadsheet has them: days as numbers with a format of dates. */
function book(form: 'biff8' | 'ods'): Uint8Array {
  const day = (Date.UTC(2026, 6, 14, 4) - Date.UTC(1899, 11, 30)) / 86_400_000;
  const rows = VALUES.map((value, i) => [{ t: 'n', v: day + (i * 5) / 1440, z: 'yyyy-mm-dd hh:mm' }, value]);
  const made = utils.book_new();
  utils.book_append_sheet(made, utils.aoa_to_sheet([['Remarks'], ['invented']]), 'About');
  utils.book_append_sheet(made, utils.aoa_to_sheet([['Date time', 'Return air (°C)'], ...rows]), 'Log');
  return new Uint8Array(write(made, { type: 'array', bookType: form }) as ArrayBuffer);
}

describe('a log in the form of', () => {
  it('a spreadsheet of before 2007', async () => {
    expect(await log('log.xls', book('biff8'))).toEqual({ type: 'application/vnd.ms-excel', ...EXPECTED });
  });

  it('an OpenDocument spreadsheet', async () => {
    const type = 'application/vnd.oasis.opendocument.spreadsheet';
    expect(await log('log.ods', book('ods'))).toEqual({ type, ...EXPECTED });
  });

  it('JSON lines, with what is nested by its names', async () => {
    const lines = VALUES.map((c, i) =>
      JSON.stringify({ ts: wall(i), air: { temp_c: c, rh: 91 }, tags: [1, 2] }),
    );
    expect(await log('log.jsonl', `${lines.join('\n')}\n`)).toEqual({
      type: 'application/jsonl',
      ...EXPECTED,
    });
    // A recorder that loses power leaves its last line unfinished.
    expect(await log('cut.jsonl', `${lines.join('\n')}\n{"ts":"2026-0`)).toMatchObject(EXPECTED);
  });

  it('a list in JSON, with what stands beside it', async () => {
    const readings = VALUES.map((value, i) => ({ time: wall(i), value }));
    const text = JSON.stringify({ 'time zone': 'UTC-7', unit: 'Celsius', readings });
    expect(await log('log.json', text)).toEqual({ type: 'application/json', ...EXPECTED });
  });

  it.each([
    ['elements', (t: string, v: number) => `<row><time>${t}</time><temp unit="C">${v}</temp></row>`],
    ['attributes', (t: string, v: number) => `<m at="${t}" temperature="${v}"/>`],
  ])('XML with values in %s', async (_, row) => {
    const rows = VALUES.map((value, i) => row(wall(i), value)).join('\n');
    const text = `<?xml version="1.0"?>\n<log><scale><unit>°C</unit></scale><rows>${rows}</rows></log>`;
    expect(await log('log.xml', text)).toEqual({ type: 'application/xml', ...EXPECTED });
  });

  it('XML with cells that say their place, and how they look', async () => {
    const cell = (text: string | number, place?: number) =>
      `<Cell ${place === undefined ? '' : `s:Index="${place}" `}s:Style="plain"><Data s:Type="String">${text}</Data></Cell>`;
    const rows = [
      `<Row>${cell('Time')}${cell('Alarm')}${cell('Temp (°C)')}</Row>`,
      ...VALUES.map((value, i) => `<Row>${cell(wall(i))}${cell(value, 3)}</Row>`),
    ].join('');
    const text = `<?xml version="1.0"?><Book xmlns:s="urn:invented"><Table>${rows}</Table></Book>`;
    expect(await log('places.xml', text)).toMatchObject(EXPECTED);
  });

  it('XML with cells by their place', async () => {
    const rows = [['Time', 'Temp (°C)'], ...VALUES.map((value, i) => [wall(i), value])]
      .map((cells) => `<Row>${cells.map((c) => `<Cell><Data>${c}</Data></Cell>`).join('')}</Row>`)
      .join('');
    expect(await log('table.xml', `<?xml version="1.0"?><Book><Table>${rows}</Table></Book>`)).toMatchObject(
      EXPECTED,
    );
  });
});

describe('the text of a PDF', () => {
  const minutes = Array.from({ length: 24 }, (_, i) => i);
  const clock = (i: number) => `2026-07-14 04:${String(i).padStart(2, '0')}`;

  /** A page with words at places. */
  async function page(
    words: readonly (readonly [x: number, line: number, text: string])[],
  ): Promise<Uint8Array> {
    const made = await PDFDocument.create();
    const font = await made.embedFont(StandardFonts.Helvetica);
    const sheet = made.addPage([600, 800]);
    for (const [x, line, text] of words) sheet.drawText(text, { x, y: 760 - line * 14, size: 9, font });
    return made.save();
  }
  const value = (i: number) => (3.5 + i / 10).toFixed(1);

  it('is read as a table where its columns are clear', async () => {
    const bytes = await page([
      ...([
        [50, 0, 'Invented recorder'],
        [50, 2, 'Date time'],
        [200, 2, 'Temp (°C)'],
        [300, 2, 'RH (%)'],
      ] as const),
      ...minutes.flatMap(
        (i) =>
          [
            [50, 3 + i, clock(i)],
            [200, 3 + i, value(i)],
            [300, 3 + i, '91'],
          ] as const,
      ),
    ]);
    const read = await log('log.pdf', bytes);
    expect(read).toMatchObject({ type: 'application/pdf', values: minutes.map((i) => Number(value(i))) });
  });

  it('is read where the table goes on in columns beside it', async () => {
    const bytes = await page([
      ...([
        [50, 0, 'Date time'],
        [160, 0, 'Temp (°C)'],
        [300, 0, 'Date time'],
        [410, 0, 'Temp (°C)'],
      ] as const),
      ...minutes.flatMap((i) => {
        const [left, line] = i < 12 ? [0, i] : [250, i - 12];
        return [
          [50 + left, 1 + line, clock(i)],
          [160 + left, 1 + line, value(i)],
        ] as const;
      }),
    ]);
    expect(await log('two.pdf', bytes)).toMatchObject({ values: minutes.map((i) => Number(value(i))) });
  });

  it('is refused with the reason where its columns are not, and the PDF is kept', async () => {
    const bytes = await page(
      minutes.flatMap(
        (i) =>
          [
            [50, i, clock(i)],
            [i % 2 === 0 ? 200 : 215, i, value(i)],
            ...(i % 3 === 0 ? [[330, i, '91'] as const] : []),
            ...(i % 2 === 0 ? [[260, i, '7'] as const] : []),
          ] as const,
      ),
    );
    expect(await log('unclear.pdf', bytes)).toEqual({
      type: 'application/pdf',
      problem: expect.stringContaining('the columns of its table are not clear'),
    });
  });

  it('that holds no log stays the paper that it is', async () => {
    const { examined } = await taken(
      'paper.pdf',
      await page([
        [50, 0, 'BILL OF LADING'],
        [50, 1, 'July 14, 2026'],
      ]),
    );
    expect([examined.received.kind, examined.problems]).toEqual(['document', []]);
  });
});

describe('a workbook with a sheet of a chart', () => {
  const parts = workbook({
    Log: sheetXml([
      ['Time', 'Temp (°C)'],
      [{ day: 46_217.25 }, 3.5],
      [{ day: 46_217.5 }, 3.6],
    ]),
  });
  const withChart = (chart: 'before' | 'after'): Record<string, string> => {
    const entry = '<sheet name="Curve" sheetId="9" r:id="rIdChart"/>';
    const type = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships/chartsheet';
    return {
      ...parts,
      'xl/workbook.xml': (parts['xl/workbook.xml'] ?? '').replace(
        chart === 'before' ? '<sheets>' : '</sheets>',
        (tag) => (chart === 'before' ? tag + entry : entry + tag),
      ),
      'xl/_rels/workbook.xml.rels': (parts['xl/_rels/workbook.xml.rels'] ?? '').replace(
        '</Relationships>',
        `<Relationship Id="rIdChart" Type="${type}" Target="chartsheets/sheet1.xml"/></Relationships>`,
      ),
      'xl/chartsheets/sheet1.xml':
        '<?xml version="1.0"?><chartsheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetViews/></chartsheet>',
    };
  };
  it.each(['before', 'after'] as const)('%s that of the log is read by the log', async (where) => {
    const read = await log(`chart-${where}.xlsx`, await zipped(withChart(where)));
    expect(read).toMatchObject({ values: [3.5, 3.6] });
  });
});

describe('what takes a reader long is refused at once, or read in one pass', () => {
  it('a cell with a million attributes', async () => {
    const many = Array.from({ length: 1_000_000 }, (_, i) => `a${i}="1"`).join(' ');
    const sheet = sheetXml([['Time', 'Temp']]).replace('<row ', `<row ${many} `);
    const started = Date.now();
    const { problem } = await log('attributes.xlsx', await zipped(workbook({ Log: sheet })));
    expect(problem).toContain('an element with more than 65536 bytes of attributes');
    expect(Date.now() - started).toBeLessThan(20_000);
  });

  it('quoted cells over hundreds of lines', async () => {
    const note = `"${'""and so on""\n'.repeat(450)}"`;
    const rows = VALUES.map((value, i) => `${wall(i)},${value},${note}`);
    const lines = Array.from({ length: 300 }, () => rows).flat();
    expect(await log('quoted.csv', `Time,Temp (°C),Note\n${lines.join('\n')}\n`)).toMatchObject(EXPECTED);
  });
});

describe('records that are no log', () => {
  it.each([
    ['settings in JSON', '{"name": "invented", "values": [1, 2, 3]}\n'],
    ['a list of other things', '[{"name": "a", "size": 1}, {"name": "b", "size": 2}]'],
    [
      'a document in XML',
      '<?xml version="1.0"?><letter><to>R. Tansy</to><text>Run it at 38.</text></letter>',
    ],
  ])('%s: a text without a problem', async (_, text) => {
    const { examined } = await taken('text.txt', text);
    expect([examined.received.kind, examined.problems]).toEqual(['document', []]);
  });

  it.each([
    ['elements that are nested without end', `<a>${'<b>'.repeat(100_000)}`, 'nested deeper than 40 levels'],
    ['a list that is nested without end', `[${'{"a":['.repeat(100_000)}`, 'records cannot be read'],
    [
      'entities that grow',
      `<?xml version="1.0"?><!DOCTYPE a [<!ENTITY b "${'x'.repeat(1000)}"><!ENTITY c "&b;&b;">]><a><r><t>&c;</t><u>1</u></r></a>`,
      'undefined entity',
    ],
  ])('%s: kept with the reason', async (_, text, reason) => {
    const { examined } = await taken('bad.txt', text);
    expect(examined.problems[0]?.message).toContain(reason);
  });
});

// Files that are made to be slow: each is taken in by itself, and must be read, or refused with the reason, within a
// minute. Prints how long each took, the most memory of the process, and what came of it.
//   node tests/stress/slow-inputs.js [part of a name]
import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { mkdtemp, open, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFDocument, StandardFonts } from 'pdf-lib';
import yazl from 'yazl';

const dist = (/** @type {string} */ file) => import(new URL(`../../dist/${file}`, import.meta.url).href);
const { parseDeliveryFile } = await dist('intake/delivery-file.js');
const { examineFile } = await dist('intake/examine.js');
const [, , wanted = ''] = process.argv;
const MOST_SECONDS = 60;
const folder = await mkdtemp(join(tmpdir(), 'stress-slow-'));

const delivery = parseDeliveryFile(
  `delivery: T-1
parties: { carrier: { name: Invented Haulage } }
equipment: { trailer: { number: "118" } }
stops:
  - { id: load-1, does: load, place: Nowhere Field, zone: America/Phoenix, planned: 2026-07-14T04:00 }
  - { id: drop-1, does: unload, place: Paper Moon, zone: America/Phoenix, planned: 2026-07-16T06:00 }
lines:
  - { id: romaine, goods: lettuce-romaine, from: load-1, to: drop-1, instruction: { setPoint: 36 °F } }
`,
  'delivery.yaml',
).facts;

const BEGINNING = Date.UTC(2026, 6, 14, 4);
const wall = (/** @type {number} */ i) =>
  new Date(BEGINNING + i * 60_000).toISOString().slice(0, 16).replace('T', ' ');
const times = (/** @type {number} */ n, /** @type {(i: number) => string} */ make) =>
  Array.from({ length: n }, (_, i) => make(i));

/** @param {Record<string, Buffer>} entries */
async function zipOf(entries) {
  const zip = new yazl.ZipFile();
  for (const [name, bytes] of Object.entries(entries)) zip.addBuffer(bytes, name);
  zip.end();
  /** @type {Buffer[]} */
  const chunks = [];
  for await (const chunk of zip.outputStream) chunks.push(/** @type {Buffer} */ (chunk));
  return Buffer.concat(chunks);
}

/** @param {string} sheet */
const spreadsheet = (sheet) =>
  zipOf({
    '[Content_Types].xml': Buffer.from(
      '<?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/></Types>',
    ),
    'xl/workbook.xml': Buffer.from(
      '<?xml version="1.0"?><workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="Log" sheetId="1" r:id="r1"/></sheets></workbook>',
    ),
    'xl/_rels/workbook.xml.rels': Buffer.from(
      '<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/></Relationships>',
    ),
    'xl/worksheets/sheet1.xml': Buffer.from(sheet),
  });

/** A log of so many pages, a row on each. @param {number} pages */
async function paperLog(pages) {
  const made = await PDFDocument.create();
  const font = await made.embedFont(StandardFonts.Helvetica);
  for (let i = 0; i < pages; i += 1) {
    const page = made.addPage([300, 200]);
    const rows = i === 0 ? [['Date time', 'Temp (°C)']] : [];
    rows.push([wall(i), `${i % 30}.5`]);
    rows.forEach(([time = '', value = ''], line) => {
      page.drawText(time, { x: 20, y: 180 - line * 14, size: 9, font });
      page.drawText(value, { x: 180, y: 180 - line * 14, size: 9, font });
    });
  }
  return made.save();
}

/** A TIFF whose tags stand behind 130 MB of nothing. @param {string} path */
async function lateTags(path) {
  const at = 130 * 1024 * 1024;
  const head = Buffer.from('49492a0000000000', 'hex');
  head.writeUInt32LE(at, 4);
  const file = await open(path, 'w');
  await file.write(head, 0, head.length, 0);
  await file.write(Buffer.from('000000000000', 'hex'), 0, 6, at);
  await file.close();
}

/** @param {string} path */
async function millionRecords(path) {
  const out = createWriteStream(path);
  out.write('<?xml version="1.0"?><log>');
  for (let i = 0; i < 1_500_000; i += 1) if (!out.write('<r><a>1</a><b>2</b></r>')) await once(out, 'drain');
  out.end('</log>');
  await once(out, 'finish');
}

const quoted = `"${'""and so on""\n'.repeat(398)}"`;
/** @type {[name: string, make: (path: string) => Promise<unknown>][]} */
const CASES = [
  [
    'attributes.xlsx',
    async (path) =>
      writeFile(
        path,
        await spreadsheet(
          `<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row ${times(1_000_000, (i) => `a${i}="1"`).join(' ')}></row></sheetData></worksheet>`,
        ),
      ),
  ],
  [
    'names.json',
    (path) =>
      writeFile(
        path,
        JSON.stringify([Object.fromEntries(times(900_000, (i) => `n${i}`).map((n) => [n, 1]))]),
      ),
  ],
  [
    'quoted.csv',
    (path) =>
      writeFile(path, `Time,Temp (°C),Note\n${times(2_000, (i) => `${wall(i)},3.5,${quoted}\n`).join('')}`),
  ],
  ['records.xml', millionRecords],
  [
    'zips.zip',
    async (path) => {
      const inner = await zipOf({ 'note.txt': Buffer.from('Run it at 38.') });
      await writeFile(
        path,
        await zipOf(Object.fromEntries(times(500, (i) => `${i}.zip`).map((n) => [n, inner]))),
      );
    },
  ],
  [
    'late-letter.csv',
    (path) =>
      writeFile(
        path,
        Buffer.from(
          `Time;Temp (°C);Note\n${times(500_000, (i) => `${wall(i)};3.5;ok\n`).join('')}${wall(500_001)};3.6;café\n`,
          'latin1',
        ),
      ),
  ],
  ['late-tags.tif', lateTags],
  ['pages.pdf', async (path) => writeFile(path, await paperLog(2_500))],
  [
    'lists.json',
    (path) =>
      writeFile(
        path,
        JSON.stringify({
          sensors: times(5_000, (i) => `s${i}`).map((name) => ({
            name,
            readings: times(60, (j) => wall(j)).map((time) => ({ time, temp_c: 3.5 })),
          })),
        }),
      ),
  ],
  [
    'dates.csv',
    (path) =>
      writeFile(path, `Time,Temp_C\n${times(400_000, (i) => `13/07/2026\n04:00,${i % 9}\n`).join('')}`),
  ],
];

let bad = 0;
try {
  for (const [name, make] of CASES.filter(([one]) => one.includes(wanted))) {
    const path = join(folder, name);
    await make(path);
    const { size } = await stat(path);
    const started = performance.now();
    /** @type {string} */
    let came;
    try {
      const file = { name, bytes: size, sha256: 'a'.repeat(64) };
      const { takenFor, problems, inside } = await examineFile({ path, name, file, delivery });
      inside?.close();
      came = [
        takenFor,
        ...problems.slice(0, 1).map((/** @type {{ message: string }} */ p) => p.message),
      ].join(' | ');
    } catch (error) {
      came = `THROWN ${String(error)}`;
      bad += 1;
    }
    const seconds = (performance.now() - started) / 1000;
    if (seconds > MOST_SECONDS) bad += 1;
    const most = Math.round(process.resourceUsage().maxRSS / 1024);
    console.log(
      `${name}, ${(size / 1e6).toFixed(1)} MB: ${seconds.toFixed(1)} s, up to ${most} MB so far; ${came.slice(0, 200)}`,
    );
    await rm(path);
  }
} finally {
  await rm(folder, { recursive: true, force: true });
}
process.exit(bad === 0 ? 0 : 1);

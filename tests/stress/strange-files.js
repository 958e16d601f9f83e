// Changes files of every kind that is taken in (bytes, numbers, lengths, ends, parts of one in another) and takes them
// in, in a process that is watched: none may stop it, keep it for long, or take the rest of the folder with it.
//   node tests/stress/strange-files.js [files] [part of a name]
import { fork } from 'node:child_process';
import { once } from 'node:events';
import {
  cpSync,
  createWriteStream,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import yazl from 'yazl';

const [wanted = '2000', only = ''] = process.argv.slice(2);
const AT_A_TIME = 25;
const MOST_SECONDS = 60;
const LARGEST_SEED = 400_000;
const FACTS = `delivery: STRANGE-1
parties: { carrier: { name: Example Haulage } }
equipment: { trailer: { number: T-7 } }
stops:
  - { id: load-1, does: load, place: Esparto Flats, zone: America/Phoenix, planned: 2026-07-14T04:00 }
  - { id: drop-1, does: unload, place: Mock Elms, zone: America/Chicago, planned: 2026-07-16T06:00 }
lines:
  - { id: romaine, goods: lettuce-romaine, from: load-1, to: drop-1 }
`;

const fixtures = fileURLToPath(new URL('../../fixtures/', import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), 'stress-strange-files-'));
const facts = join(scratch, 'facts.yaml');
writeFileSync(facts, FACTS);

const any = (/** @type {number} */ below) => Math.floor(Math.random() * below);
/** @template T @param {readonly T[]} list @returns {T} */
const one = (list) => /** @type {T} */ (list[any(list.length)]);

/** @param {string} file @param {Record<string, string | Buffer>} entries @param {boolean} compress */
async function zip(file, entries, compress) {
  const made = new yazl.ZipFile();
  for (const [name, content] of Object.entries(entries))
    made.addBuffer(Buffer.from(content), name, { compress });
  made.end();
  await pipeline(made.outputStream, createWriteStream(file));
}

/** What files are changed from. @returns {Promise<{ name: string, bytes: Buffer }[]>} */
async function seeds() {
  const made = join(scratch, 'made');
  mkdirSync(made);
  const photo = readFileSync(join(fixtures, 'photos/plain.jpg'));
  await zip(join(made, 'chat.zip'), { 'a/IMG_1.jpg': photo, 'note.txt': 'Run it at 34.' }, true);
  await zip(join(made, 'stored.zip'), { 'IMG_2.jpg': photo, 'readings.csv': 'kind,time,value\n' }, false);
  const xml = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';
  const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
  const office = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  const packaged = 'http://schemas.openxmlformats.org/package/2006';
  const cells = (/** @type {readonly (string | number)[]} */ row, /** @type {number} */ i) =>
    `<row r="${i + 1}">${row.map((cell, j) => (typeof cell === 'number' ? `<c r="${'AB'[j]}${i + 1}"><v>${cell}</v></c>` : `<c r="${'AB'[j]}${i + 1}" t="inlineStr"><is><t>${cell}</t></is></c>`)).join('')}</row>`;
  const rows = [
    ['Time', 'Return Air F'],
    ...Array.from({ length: 40 }, (_, i) => [46217 + i / 96, 34 + (i % 5)]),
  ];
  await zip(
    join(made, 'log.xlsx'),
    {
      '[Content_Types].xml': `${xml}<Types xmlns="${packaged}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>`,
      '_rels/.rels': `${xml}<Relationships xmlns="${packaged}/relationships"><Relationship Id="r1" Type="${office}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
      'xl/workbook.xml': `${xml}<workbook xmlns="${main}" xmlns:r="${office}"><sheets><sheet name="Log" sheetId="1" r:id="r1"/></sheets></workbook>`,
      'xl/_rels/workbook.xml.rels': `${xml}<Relationships xmlns="${packaged}/relationships"><Relationship Id="r1" Type="${office}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
      'xl/worksheets/sheet1.xml': `${xml}<worksheet xmlns="${main}"><sheetData>${rows.map(cells).join('')}</sheetData></worksheet>`,
    },
    true,
  );
  const lines = /** @type {string[]} */ (photo.toString('base64').match(/.{1,76}/g)).join('\r\n');
  writeFileSync(
    join(made, 'message.eml'),
    `From: Dock <dock@example.com>\r\nTo: Driver <driver@example.com>\r\nDate: Thu, 16 Jul 2026 06:20:00 -0500\r\nSubject: Load refused\r\nMIME-Version: 1.0\r\nContent-Type: multipart/mixed; boundary="x"\r\n\r\n--x\r\nContent-Type: text/plain\r\n\r\nWarm pulp.\r\n--x\r\nContent-Type: image/jpeg; name="IMG_3.jpg"\r\nContent-Transfer-Encoding: base64\r\nContent-Disposition: attachment; filename="IMG_3.jpg"\r\n\r\n${lines}\r\n--x--\r\n`,
  );
  const files = [fixtures, made].flatMap((folder) =>
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && !/\.(js|md|gitattributes)$/.test(entry.name))
      .map((entry) => join(entry.parentPath, entry.name)),
  );
  return files
    .map((file) => ({ name: basename(file), bytes: readFileSync(file) }))
    .filter(({ name, bytes }) => name.includes(only) && bytes.length > 0 && bytes.length <= LARGEST_SEED);
}

/** A place in a file, mostly near its ends, where lengths and directories are. @param {number} length */
function place(length) {
  const near = Math.min(length, one([64, 512, 4096]));
  const kind = any(5);
  return kind < 2 ? any(near) : kind < 4 ? length - 1 - any(near) : any(length);
}

const NUMBERS = [0, 1, 2, 4, 7, 8, 0xff, 0xffff, 0x7fffffff, 0x80000000, 0xfffffff0, 0xffffffff];

/** @param {Buffer} from @param {Buffer} other */
function changed(from, other) {
  let bytes = Buffer.from(from);
  for (let times = 1 + any(4); times > 0; times -= 1) {
    const at = place(bytes.length);
    const size = 1 + any(64);
    switch (any(7)) {
      case 0:
        for (let i = 0; i < 3; i += 1) bytes[place(bytes.length)] = any(256);
        break;
      case 1:
        if (at + 4 <= bytes.length) bytes.writeUInt32BE(one(NUMBERS), at);
        break;
      case 2:
        if (at + 4 <= bytes.length) bytes.writeUInt32LE(one(NUMBERS), at);
        break;
      case 3:
        bytes = bytes.subarray(0, Math.max(1, at));
        break;
      case 4:
        bytes = Buffer.concat([bytes.subarray(0, at), bytes.subarray(at, at + size), bytes.subarray(at)]);
        break;
      case 5:
        bytes = Buffer.concat([bytes.subarray(0, at), bytes.subarray(at + size)]);
        break;
      default: {
        const piece = other.subarray(place(other.length)).subarray(0, one([16, 256, 4096]));
        bytes = Buffer.concat([bytes.subarray(0, at), piece, bytes.subarray(at)]);
      }
    }
    if (bytes.length === 0) return Buffer.from('x');
  }
  return bytes;
}

/** @type {import('node:child_process').ChildProcess | undefined} */
let child;
async function taker() {
  if (child === undefined) {
    child = fork(
      fileURLToPath(new URL('./strange-files.worker.js', import.meta.url)),
      [facts, mkdtempSync(join(scratch, 'taker-'))],
      {
        stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
      },
    );
    child.stderr?.on('data', (/** @type {Buffer} */ text) => process.stderr.write(text));
    await once(child, 'message');
  }
  return child;
}

/** What became of a folder: how long and with how much memory, or that it was not taken in. @param {string} folder */
async function takeIn(folder) {
  const worker = await taker();
  const waiting = new AbortController();
  const { signal } = waiting;
  const answers = [
    once(worker, 'message', { signal }).then(([message]) => message),
    once(worker, 'exit', { signal }).then(() => 'it ended'),
    setTimeout(MOST_SECONDS * 1000, `more than ${MOST_SECONDS} s`, { signal }),
  ];
  worker.send(folder);
  const told = await Promise.race(answers);
  waiting.abort();
  await Promise.allSettled(answers);
  if (typeof told !== 'string') return told;
  worker.kill('SIGKILL');
  child = undefined;
  return { failed: told };
}

const all = await seeds();
/** @type {string[]} */
const faults = [];
let [slowest, most, taken] = [0, 0, 0];
for (let done = 0; done < Number(wanted); done += AT_A_TIME) {
  const folder = join(scratch, 'in');
  mkdirSync(folder);
  for (let i = 0; i < AT_A_TIME; i += 1) {
    const seed = one(all);
    writeFileSync(join(folder, `${i}-${seed.name}`), changed(seed.bytes, one(all).bytes));
  }
  const { failed, seconds, megabytes, counts } = await takeIn(folder);
  if (failed === undefined) {
    slowest = Math.max(slowest, seconds);
    most = Math.max(most, megabytes);
    taken += counts.taken + counts.held;
  } else {
    for (const file of readdirSync(folder)) {
      const alone = join(scratch, 'alone');
      mkdirSync(alone);
      cpSync(join(folder, file), join(alone, file));
      const { failed: why } = await takeIn(alone);
      if (why !== undefined) {
        const kept = join(tmpdir(), `strange-${faults.length}-${file}`);
        cpSync(join(folder, file), kept);
        faults.push(`${kept}: ${why}`);
      }
      rmSync(alone, { recursive: true });
    }
    if (faults.length === 0) faults.push(`a folder of ${AT_A_TIME}: ${failed}, none of them alone`);
  }
  rmSync(folder, { recursive: true });
  if (done % 500 === 0)
    console.log(`${done} of ${wanted}; slowest folder ${slowest.toFixed(1)} s; ${most.toFixed(0)} MB`);
}
child?.disconnect();
await (child === undefined ? undefined : once(child, 'exit'));
rmSync(scratch, { recursive: true });
for (const fault of faults) console.log(fault);
console.log(
  `${wanted} changed files of ${all.length}: ${taken} taken in, ${faults.length} stopped it; slowest folder of ${AT_A_TIME} ${slowest.toFixed(1)} s, at most ${most.toFixed(0)} MB`,
);
process.exitCode = faults.length > 0 ? 1 : 0;

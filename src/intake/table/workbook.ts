import { readFile } from 'node:fs/promises';
import { DossierError } from '../../core/model/error.js';
import { WorkerError } from '../../platform/node/worker/worker-error.js';
import { Workers } from '../../platform/node/worker/workers.js';
import { type Archive, type ArchiveLimits, openArchive } from '../archive.js';
import { type SheetText, sheetTexts } from './sheet-text.js';

/** The part that makes a zip file a spreadsheet (ECMA-376 part 1 §12.3.23, by the name that programs give it). */
const WORKBOOK = 'xl/workbook.xml';
/** ISO/IEC 26300-3 §3.3: the first entry says what the package is; templates end otherwise. */
const OPEN_DOCUMENT = 'application/vnd.oasis.opendocument.spreadsheet';

/** Half a million rows of eight columns; beyond that a sheet takes more memory than a CSV of the same rows. */
const LIMITS: ArchiveLimits = {
  entries: 2_000,
  entryBytes: 192 * 1024 ** 2,
  totalBytes: 256 * 1024 ** 2,
  // Rows of equal numbers pack well; the totals above are what bounds the memory.
  ratio: 1_000,
};
/** A sheet is a rectangle to its reader: a million rows of twenty columns. */
const MOST_CELLS = 20_000_000;
/** Attributes of one element beyond this take a reader minutes. */
const LONGEST_TAG = 64 * 1024;

const SAVE_AS_CSV = 'save the sheet of the log alone as CSV and collect that too';

/** The kind of spreadsheet that a zip file is, by its list of contents; undefined for another archive. */
export async function packedBook(path: string): Promise<'xlsx' | 'ods' | undefined> {
  const archive = await openArchive(path, path, LIMITS);
  try {
    if (archive.entries.some(({ name }) => name === WORKBOOK)) return 'xlsx';
    const mimetype = archive.entries.find(({ name, bytes }) => name === 'mimetype' && bytes < 200);
    if (mimetype === undefined) return undefined;
    const chunks: Uint8Array[] = [];
    for await (const chunk of mimetype.read()) chunks.push(chunk);
    return Buffer.concat(chunks).toString('latin1').startsWith(OPEN_DOCUMENT) ? 'ods' : undefined;
  } catch (error) {
    if (!(error instanceof DossierError)) throw error;
    return undefined;
  } finally {
    archive.close();
  }
}

/**
 * All sheets of a packed spreadsheet in their order. What the list of contents promises is checked before anything is
 * unpacked. Throws DossierError for one that is damaged, locked or larger than is read.
 */
export async function readPackedBook(
  path: string,
  fileName: string,
  kind: 'xlsx' | 'ods',
): Promise<SheetText[]> {
  const archive = await openArchive(path, fileName, LIMITS);
  try {
    const [problem] = archive.problems;
    if (problem !== undefined)
      throw new DossierError(problem.code, problem.message, { where: problem.where, fix: SAVE_AS_CSV });
    return await inThread(
      kind === 'xlsx' ? reader : otherReader,
      await repacked(archive, fileName),
      fileName,
    );
  } finally {
    archive.close();
  }
}

/**
 * The checked entries as a new zip file, not packed: the reader sees these and nothing that stands between or
 * beside them in the original (parser differentials; entries that unpack to more than they say).
 */
async function repacked(archive: Archive, fileName: string): Promise<ArrayBuffer> {
  const { ZipFile } = await import('yazl');
  const zip = new ZipFile();
  for (const entry of archive.entries) {
    if (!/\.(?:xml|rels)$|^mimetype$/.test(entry.name)) continue;
    const chunks: Uint8Array[] = [];
    for await (const chunk of entry.read()) chunks.push(chunk);
    const xml = Buffer.concat(chunks);
    refuseWide(xml, fileName);
    zip.addBuffer(entry.name === WORKBOOK ? withPlainEpoch(xml) : xml, entry.name, { compress: false });
  }
  zip.end();
  const chunks: Uint8Array[] = [];
  for await (const chunk of zip.outputStream as NodeJS.ReadableStream) chunks.push(Buffer.from(chunk));
  return toArrayBuffer(Buffer.concat(chunks));
}

/** A copy of its own, which a thread can take over. */
function toArrayBuffer(bytes: Uint8Array): ArrayBuffer {
  const own = new ArrayBuffer(bytes.length);
  new Uint8Array(own).set(bytes);
  return own;
}

/** That days count from 1904 may be written as `true` or `1` (ISO/IEC 29500-1, §18.2.28); the reader knows only `1`. */
function withPlainEpoch(workbook: Buffer): Buffer {
  const text = workbook.toString('latin1');
  const plain = text.replace(/(\sdate1904\s*=\s*)["']true["']/, (_, name: string) => `${name}"1"`);
  return Buffer.from(plain, 'latin1');
}

/**
 * A few bytes can name a cell a billion rows down, and the reader fills the rows between; an element can have a million
 * attributes. References that are
 * written to hide from this scan end at the thread's heap instead.
 */
function refuseWide(xml: Buffer, fileName: string): void {
  for (let at = xml.indexOf(60); at >= 0; at = xml.indexOf(60, at + 1)) {
    const end = xml.indexOf(62, at);
    if ((end < 0 ? xml.length : end) - at <= LONGEST_TAG) continue;
    throw new DossierError('file-too-large', `an element with more than ${LONGEST_TAG} bytes of attributes`, {
      where: { file: fileName },
      fix: SAVE_AS_CSV,
    });
  }
  let rows = 0;
  let columns = 0;
  for (const [, letters = '', digits = ''] of xml
    .toString('latin1')
    .matchAll(/\sr\s*=\s*["']([A-Z]*)(\d+)["']/g)) {
    rows = Math.max(rows, Number(digits));
    let column = 0;
    for (const letter of letters) column = column * 26 + letter.charCodeAt(0) - 64;
    columns = Math.max(columns, column);
  }
  if (rows * Math.max(1, columns) > MOST_CELLS)
    throw new DossierError('file-too-large', `a sheet of ${rows} rows and ${columns} columns`, {
      where: { file: fileName },
      fix: SAVE_AS_CSV,
    });
}

const reader = new Workers<ArrayBuffer, SheetText[]>({
  script: new URL('./sheets.worker.js', import.meta.url),
  runs: 'thread',
  seconds: 30,
  megabytes: 768,
  answer: sheetTexts,
});

/** Of before 2007, and of OpenDocument. */
const otherReader = new Workers<ArrayBuffer, SheetText[]>({
  script: new URL('./other-sheets.worker.js', import.meta.url),
  runs: 'thread',
  seconds: 30,
  megabytes: 768,
  answer: sheetTexts,
});

/** All sheets of a spreadsheet in the binary form of before 2007. Throws DossierError as `readPackedBook`. */
export async function readOldBook(path: string, fileName: string): Promise<SheetText[]> {
  const bytes = await readFile(path);
  return inThread(otherReader, toArrayBuffer(bytes), fileName);
}

async function inThread(
  workers: Workers<ArrayBuffer, SheetText[]>,
  bytes: ArrayBuffer,
  fileName: string,
): Promise<SheetText[]> {
  try {
    return await workers.ask(bytes, { handedOver: [bytes] });
  } catch (cause) {
    if (!(cause instanceof WorkerError)) throw cause;
    const why = cause.is === 'out-of-memory' ? 'its tables are larger than is read' : cause.message;
    throw new DossierError('unsupported-file', `the spreadsheet cannot be read: ${why}`, {
      where: { file: fileName },
      fix: SAVE_AS_CSV,
      cause,
    });
  }
}

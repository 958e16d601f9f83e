import { refuse } from '../malformed.js';
import { ascii, PdfReader } from './reader.js';
import type { PdfDict, PdfName, PdfRef, PdfValue } from './value.js';

export interface PdfObject {
  number: number;
  value: PdfValue;
  /** Where the bytes of the stream are, for an object that is one. */
  stream?: { from: number; to: number };
  /** Every dictionary in the value, the value itself included. */
  dictionaries: readonly PdfDict[];
  /** Numbers of the objects that it refers to. */
  references: ReadonlySet<number>;
}

/** A whole PDF file, every byte of it accounted for. */
export interface PdfFile {
  bytes: Uint8Array;
  objects: Map<number, PdfObject>;
  trailer: PdfDict;
  /** Numbers of the objects that the trailer refers to. */
  roots: ReadonlySet<number>;
  catalog: PdfDict;
}

const MOST_OBJECTS = 2_000_000;
const HEADER = /^%PDF-(?:1\.[0-7]|2\.0)\r?\n(?:%[\x80-\xff]{1,16}\r?\n)?\s*$/;
const TAIL = /(?:^|\n)startxref\r?\n(\d{1,10})\r?\n%%EOF(?:\r?\n)?$/;

/** Whether the file starts as a PDF does, with nothing before it that another program could read first. */
export function startsAsPdf(bytes: Uint8Array): boolean {
  return ascii(bytes, 0, 5) === '%PDF-';
}

/**
 * Reads a PDF that was written in one piece: one classic cross-reference table at its end, objects one after
 * the other from the header to the table, nothing between them, nothing after the end. An update appended to
 * the file, hidden bytes or a second table therefore cannot go unseen.
 * @throws Malformed for every other file
 */
export function readPdf(bytes: Uint8Array): PdfFile {
  if (!startsAsPdf(bytes)) refuse('the file does not start with %PDF-');
  const tail = TAIL.exec(ascii(bytes, Math.max(0, bytes.length - 64), bytes.length));
  if (tail === null) refuse('the file does not end with startxref, a number and %%EOF');
  const tableAt = Number(tail[1]);
  const endsAt = bytes.length - tail[0].length + (tail[0].startsWith('\n') ? 1 : 0);
  const table = readTable(bytes, tableAt);
  const { trailer, roots } = readTrailer(bytes, table.endsAt, endsAt);
  requireSize(trailer, table.size);
  const objects = readObjects(bytes, table.offsets, tableAt);
  const file = { bytes, objects, trailer, roots };
  const catalog = lookUp(file, trailer.entries.get('Root'));
  if (catalog?.is !== 'dict') refuse('the file has no catalog');
  return { ...file, catalog };
}

/** What a value stands for: the value itself, or the object it refers to. */
export function lookUp(file: Pick<PdfFile, 'objects'>, value: PdfValue | undefined): PdfValue | undefined {
  if (value?.is !== 'ref') return value;
  const target = file.objects.get(value.number)?.value;
  return target?.is === 'ref' ? refuse(`object ${value.number} is only a reference`) : target;
}

export function isSame(value: PdfValue | undefined, ref: PdfRef | undefined): boolean {
  return value?.is === 'ref' && ref !== undefined && value.number === ref.number;
}

function readTable(bytes: Uint8Array, at: number) {
  const reader = new PdfReader(bytes, at);
  if (at >= bytes.length || !reader.takes('xref'))
    refuse('there is no cross-reference table where the end says');
  reader.white();
  const offsets = new Map<number, number>();
  let next = 0;
  while (!reader.takes('trailer')) {
    const first = reader.digits();
    reader.expect(' ');
    const count = reader.digits();
    if (first < next || first + count > MOST_OBJECTS) refuse('the cross-reference table is out of order');
    next = first + count;
    reader.white();
    for (let number = first; number < next; number += 1) {
      const line = /^(\d{10}) (\d{5}) ([nf])(?: \n| \r|\r\n)$/.exec(ascii(bytes, reader.at, reader.at + 20));
      if (line === null) refuse(`no entry for object ${number} in the cross-reference table`);
      reader.at += 20;
      if (line[3] === 'f') continue;
      if (line[2] !== '00000') refuse(`object ${number} has a generation other than 0`);
      offsets.set(number, Number(line[1]));
    }
    reader.white();
  }
  return { offsets, endsAt: reader.at, size: next };
}

function readTrailer(bytes: Uint8Array, from: number, endsAt: number) {
  const reader = new PdfReader(bytes, from);
  const trailer = reader.value();
  reader.white();
  if (trailer.is !== 'dict' || reader.at !== endsAt)
    refuse('the trailer is not one dictionary before startxref');
  for (const key of ['Prev', 'XRefStm', 'Encrypt'])
    if (trailer.entries.has(key)) refuse(`the trailer has /${key}: the file was updated later, or encrypted`);
  return { trailer, roots: reader.references };
}

/** ISO 32000-1 §7.5.5: strict programs take objects from /Size on for missing, others show them. */
function requireSize(trailer: PdfDict, size: number): void {
  const said = trailer.entries.get('Size');
  if (said?.is !== 'number' || said.value !== size)
    refuse("the trailer's /Size is not that of the cross-reference table");
}

function readObjects(bytes: Uint8Array, offsets: Map<number, number>, tableAt: number) {
  const inOrder = [...offsets].sort(([, a], [, b]) => a - b);
  const objects = new Map<number, PdfObject>();
  const start = inOrder[0]?.[1] ?? refuse('the file has no objects');
  if (start > 1024 || !HEADER.test(ascii(bytes, 0, start)))
    refuse('something stands between the header and the first object');
  const names = new Map<number, PdfName>();
  const lengthOf = (number: number): PdfValue => {
    const offset = offsets.get(number) ?? refuse(`object ${number} is missing`);
    return open(bytes, number, offset).value();
  };
  inOrder.forEach(([number, offset], i) => {
    const until = inOrder[i + 1]?.[1] ?? tableAt;
    objects.set(number, readObject(open(bytes, number, offset, names), number, until, lengthOf));
  });
  return objects;
}

function open(bytes: Uint8Array, number: number, offset: number, names?: Map<number, PdfName>): PdfReader {
  const reader = new PdfReader(bytes, offset, names);
  reader.expect(`${number} 0 obj`);
  return reader;
}

function readObject(
  reader: PdfReader,
  number: number,
  until: number,
  lengthOf: (number: number) => PdfValue,
): PdfObject {
  const value = reader.value();
  reader.white();
  const stream =
    value.is === 'dict' && reader.takes('stream') ? readStream(reader, value, lengthOf) : undefined;
  reader.expect('endobj');
  reader.white();
  if (reader.at !== until) refuse(`something stands after object ${number}`);
  const { dictionaries, references } = reader;
  const object = { number, value, dictionaries, references };
  return stream === undefined ? object : { ...object, stream };
}

function readStream(reader: PdfReader, dict: PdfDict, lengthOf: (number: number) => PdfValue) {
  const type = dict.entries.get('Type');
  if (type?.is === 'name' && (type.name === 'ObjStm' || type.name === 'XRef'))
    refuse(`objects packed in a stream at byte ${dict.from}`);
  for (const key of ['F', 'FFilter', 'FDecodeParms'])
    if (dict.entries.has(key)) refuse(`a stream whose data lie outside the file at byte ${dict.from}`);
  if (!reader.takes('\r\n')) reader.expect('\n');
  const said = dict.entries.get('Length');
  const length = said?.is === 'ref' ? lengthOf(said.number) : said;
  if (length?.is !== 'number' || !length.integer || length.value < 0)
    refuse(`a stream without its length at byte ${dict.from}`);
  const from = reader.at;
  const to = from + length.value;
  if (to > reader.bytes.length) refuse(`a stream that is longer than the file at byte ${dict.from}`);
  reader.at = to;
  if (!reader.takes('\r\n')) reader.takes('\n');
  reader.expect('endstream');
  reader.white();
  return { from, to };
}

import { latin1 } from '../../model/bytes.js';
import { refuse } from '../malformed.js';
import { type PdfObject, readObject } from './object.js';
import { PdfReader } from './reader.js';
import { readTable, type TableEntry } from './table.js';
import { type PdfDict, type PdfName, type PdfRef, type PdfValue, visit } from './value.js';

/** A whole PDF file, every byte of it accounted for. */
export interface PdfFile {
  bytes: Uint8Array;
  objects: ReadonlyMap<number, PdfObject>;
  /** Every dictionary in the objects, as they stand in the file: inner ones before those that hold them. */
  dictionaries: readonly PdfDict[];
  trailer: PdfDict;
  catalog: PdfDict;
}

/** Bytes within which an object that is a number must end. */
const LONGEST_NUMBER = 256;
const HEADER = /^%PDF-(?:1\.[0-7]|2\.0)\r?\n(?:%[\x80-\xff]{1,16}\r?\n)?\s*$/;
const TAIL = /(?:^|\n)startxref\r?\n(\d{1,10})\r?\n%%EOF(?:\r?\n)?$/;

/** Whether the file starts as a PDF does, with nothing before it that another program could read first. */
export function startsAsPdf(bytes: Uint8Array): boolean {
  return latin1(bytes, 0, 5) === '%PDF-';
}

/**
 * Reads a PDF that was written in one piece: one classic cross-reference table at its end, objects one after
 * the other from the header to the table, nothing between them, nothing after the end. An update appended to
 * the file, hidden bytes or a second table therefore cannot go unseen.
 * @throws Malformed for every other file
 */
export function readPdf(bytes: Uint8Array): PdfFile {
  if (!startsAsPdf(bytes)) refuse('the file does not start with %PDF-');
  const tail = TAIL.exec(latin1(bytes, Math.max(0, bytes.length - 64)));
  if (tail === null) refuse('the file does not end with startxref, a number and %%EOF');
  const tableAt = Number(tail[1]);
  const endsAt = bytes.length - tail[0].length + (tail[0].startsWith('\n') ? 1 : 0);
  const { entries, trailer } = readTable(bytes, tableAt, endsAt);
  const objects = readObjects(bytes, entries, tableAt);
  const file = { bytes, objects, dictionaries: dictionariesIn(objects), trailer };
  const catalog = resolveReference(file, trailer.get('Root'));
  if (catalog?.is !== 'dict') refuse('the file has no catalog');
  return { ...file, catalog };
}

/** The value, or the value of the object that it refers to. */
export function resolveReference(
  file: Pick<PdfFile, 'objects'>,
  value: PdfValue | undefined,
): PdfValue | undefined {
  if (value?.is !== 'ref') return value;
  const target = file.objects.get(value.number)?.value;
  return target?.is === 'ref' ? refuse(`object ${value.number} is only a reference`) : target;
}

export function refersTo(value: PdfValue | undefined, ref: PdfRef | undefined): boolean {
  return value?.is === 'ref' && ref !== undefined && value.number === ref.number;
}

/** The objects by number, in the order in which they stand. */
function readObjects(bytes: Uint8Array, entries: readonly TableEntry[], tableAt: number) {
  const inOrder = entries.toSorted((a, b) => a.offset - b.offset);
  const start = inOrder[0]?.offset ?? refuse('the file has no objects');
  if (start > 1024 || !HEADER.test(latin1(bytes, 0, start)))
    refuse('there are bytes between the header and the first object');
  const objects = new Map<number, PdfObject>();
  const names = new Map<string, PdfName>();
  const lengthOf = lengths(bytes, entries);
  inOrder.forEach(({ number, offset }, i) => {
    const span = { from: offset, to: inOrder[i + 1]?.offset ?? tableAt };
    objects.set(number, readObject(bytes, number, span, lengthOf, names));
  });
  return objects;
}

function dictionariesIn(objects: ReadonlyMap<number, PdfObject>): PdfDict[] {
  const found: PdfDict[] = [];
  for (const { value } of objects.values())
    visit(value, (one) => {
      if (one.is === 'dict') found.push(one);
    });
  return found;
}

/** Reads the length of a stream that stands as an object of its own, which may come later. */
function lengths(bytes: Uint8Array, entries: readonly TableEntry[]): (number: number) => PdfValue {
  let offsets: Map<number, number> | undefined;
  return (number) => {
    offsets ??= new Map(entries.map((one) => [one.number, one.offset]));
    const from = offsets.get(number) ?? refuse(`object ${number} is missing`);
    const reader = new PdfReader(bytes, from, from + LONGEST_NUMBER);
    reader.expect(`${number} 0 obj`);
    return reader.value();
  };
}

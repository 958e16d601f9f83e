import { refuse } from '../malformed.js';
import { ascii } from './characters.js';
import type { DictShape } from './dict-shape.js';
import { type PdfObject, readObject } from './object.js';
import { plainElement } from './plain-element.js';
import { PdfReader } from './reader.js';
import { readTable, readTrailer, requireSize, type TableEntry } from './table.js';
import type { PdfDict, PdfRef, PdfValue } from './value.js';

/** A whole PDF file, every byte of it accounted for. */
export interface PdfFile {
  bytes: Buffer;
  objects: Map<number, PdfObject>;
  /** Every kind of dictionary in the objects. */
  kinds: ReadonlySet<DictShape>;
  trailer: PdfDict;
  /** Numbers of the objects that the trailer refers to. */
  roots: readonly number[];
  catalog: PdfDict;
}

const HEADER = /^%PDF-(?:1\.[0-7]|2\.0)\r?\n(?:%[\x80-\xff]{1,16}\r?\n)?\s*$/;
const TAIL = /(?:^|\n)startxref\r?\n(\d{1,10})\r?\n%%EOF(?:\r?\n)?$/;

/** Whether the file starts as a PDF does, with nothing before it that another program could read first. */
export function startsAsPdf(bytes: Uint8Array): boolean {
  return ascii(bufferOf(bytes), 0, 5) === '%PDF-';
}

function bufferOf(bytes: Uint8Array): Buffer {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
}

/**
 * Reads a PDF that was written in one piece: one classic cross-reference table at its end, objects one after
 * the other from the header to the table, nothing between them, nothing after the end. An update appended to
 * the file, hidden bytes or a second table therefore cannot go unseen.
 * @throws Malformed for every other file
 */
export function readPdf(given: Uint8Array): PdfFile {
  const bytes = bufferOf(given);
  if (!startsAsPdf(bytes)) refuse('the file does not start with %PDF-');
  const tail = TAIL.exec(ascii(bytes, Math.max(0, bytes.length - 64), bytes.length));
  if (tail === null) refuse('the file does not end with startxref, a number and %%EOF');
  const tableAt = Number(tail[1]);
  const endsAt = bytes.length - tail[0].length + (tail[0].startsWith('\n') ? 1 : 0);
  const table = readTable(bytes, tableAt);
  const { trailer, roots } = readTrailer(bytes, table.endsAt, endsAt);
  requireSize(trailer, table.size);
  const { objects, kinds } = readObjects(bytes, table.entries, tableAt);
  const file = { bytes, objects, kinds, trailer, roots };
  const catalog = resolveReference(file, trailer.get('Root'));
  if (catalog?.is !== 'dict') refuse('the file has no catalog');
  return { ...file, catalog };
}

/** What a value stands for: the value itself, or the object it refers to. */
export function resolveReference(
  file: Pick<PdfFile, 'objects'>,
  value: PdfValue | undefined,
): PdfValue | undefined {
  if (value?.is !== 'ref') return value;
  const target = file.objects.get(value.number)?.value;
  return target?.is === 'ref' ? refuse(`object ${value.number} is only a reference`) : target;
}

/** The dictionaries of the kinds that are wanted, object after object; each object is looked at once. */
export function dictionariesOf(
  { objects, kinds }: Pick<PdfFile, 'objects' | 'kinds'>,
  wanted: (kind: DictShape) => boolean,
): PdfDict[] {
  const asked = new Set([...kinds].filter(wanted));
  const numbers = new Set([...asked].flatMap((kind) => kind.objects));
  return [...numbers].flatMap(
    (number) => objects.get(number)?.dictionaries.filter(({ kind }) => asked.has(kind)) ?? [],
  );
}

/** Sorts dictionaries as they stand in the file, inner ones before those that hold them. */
export function sortedByOffset(dictionaries: readonly PdfDict[]): PdfDict[] {
  return dictionaries.toSorted((a, b) => a.to - b.to);
}

export function refersTo(value: PdfValue | undefined, ref: PdfRef | undefined): boolean {
  return value?.is === 'ref' && ref !== undefined && value.number === ref.number;
}

function readObjects(bytes: Buffer, entries: readonly TableEntry[], tableAt: number) {
  const inOrder = entries.toSorted((a, b) => a.offset - b.offset);
  const start = inOrder[0]?.offset ?? refuse('the file has no objects');
  if (start > 1024 || !HEADER.test(ascii(bytes, 0, start)))
    refuse('something stands between the header and the first object');
  const objects = new Map<number, PdfObject>();
  const kinds = new Set<DictShape>();
  const reader = new PdfReader(bytes);
  const lengthOf = lengths(bytes, entries);
  inOrder.forEach(({ number, offset }, i) => {
    const until = inOrder[i + 1]?.offset ?? tableAt;
    const element = plainElement(reader, number, offset, until);
    if (element !== undefined) {
      objects.set(number, element);
      return;
    }
    reader.begin(number, offset);
    objects.set(number, readObject(reader, number, until, lengthOf));
    for (const { kind } of reader.dictionaries) if (kind.standsIn(number)) kinds.add(kind);
  });
  return { objects, kinds };
}

/** Reads the length of a stream that stands as an object of its own, which may come later. */
function lengths(bytes: Buffer, entries: readonly TableEntry[]): (number: number) => PdfValue {
  let offsets: Map<number, number> | undefined;
  return (number) => {
    offsets ??= new Map(entries.map((one) => [one.number, one.offset]));
    const reader = new PdfReader(bytes);
    reader.begin(number, offsets.get(number) ?? refuse(`object ${number} is missing`));
    reader.expect(`${number} 0 obj`);
    return reader.value();
  };
}

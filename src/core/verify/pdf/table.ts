import { refuse } from '../malformed.js';
import { PdfReader } from './reader.js';
import type { PdfDict } from './value.js';

const MOST_OBJECTS = 2_000_000;
/** Bytes of the largest table with its trailer: twenty for each object, and some to spare. */
const LARGEST_TABLE = 48 * 1024 * 1024;
/** First number and count of a section of the table; and an entry: offset, generation, kind, line end (§7.5.4). */
const SECTION = /(\d{1,10}) (\d{1,10})(?!\d)[\0\t\n\f\r ]*/y;
const ENTRY = /(\d{10}) (\d{5}) ([nf])(?: \n| \r|\r\n)/y;

/** An object that is in use, and where it starts. */
export interface TableEntry {
  number: number;
  offset: number;
}

export interface Table {
  /** Every object that is in use, by number. */
  entries: TableEntry[];
  /** One more than the highest number. */
  size: number;
  trailer: PdfDict;
}

/** Reads the cross-reference table and the trailer, which must reach from one offset to the other. @throws Malformed */
export function readTable(bytes: Uint8Array, at: number, endsAt: number): Table {
  if (endsAt - at > LARGEST_TABLE) refuse('the cross-reference table is too large');
  const reader = new PdfReader(bytes, at, endsAt);
  if (!reader.takes('xref')) refuse('there is no cross-reference table where the end says');
  reader.white();
  const entries: TableEntry[] = [];
  let size = 0;
  while (!reader.takes('trailer')) {
    const [, first, count] = reader.find(SECTION) ?? refuse(`no section of the table at byte ${reader.at}`);
    if (Number(first) < size || Number(first) + Number(count) > MOST_OBJECTS)
      refuse('the cross-reference table is out of order');
    size = Number(first) + Number(count);
    for (let number = Number(first); number < size; number += 1) {
      const offset = readEntry(reader, number);
      if (offset !== undefined) entries.push({ number, offset });
    }
    reader.white();
  }
  return { entries, size, trailer: readTrailer(reader, size) };
}

/** Where the object starts; undefined for an entry that is free. */
function readEntry(reader: PdfReader, number: number): number | undefined {
  const [, offset, generation, kind] =
    reader.find(ENTRY) ?? refuse(`no entry for object ${number} in the cross-reference table`);
  if (kind === 'f') return undefined;
  return Number(generation) === 0 ? Number(offset) : refuse(`object ${number} has a generation other than 0`);
}

/** The trailer must be of the whole file: no update, no encryption, and a size that hides no object. */
function readTrailer(reader: PdfReader, size: number): PdfDict {
  const trailer = reader.value();
  reader.white();
  if (trailer.is !== 'dict' || !reader.isAtEnd())
    refuse('the trailer is not one dictionary before startxref');
  for (const key of ['Prev', 'XRefStm', 'Encrypt'])
    if (trailer.has(key)) refuse(`the trailer has /${key}: the file was updated later, or encrypted`);
  // ISO 32000-1 §7.5.5: strict programs take objects from /Size on for missing, others show them.
  const said = trailer.get('Size');
  if (said?.is !== 'number' || said.value !== size)
    refuse("the trailer's /Size is not that of the cross-reference table");
  return trailer;
}

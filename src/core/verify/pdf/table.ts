import { refuse } from '../malformed.js';
import { PdfReader } from './reader.js';
import type { PdfDict } from './value.js';

const MOST_OBJECTS = 2_000_000;
const LINE = 20;
const [SPACE, CR, LF, IN_USE, FREE] = [0x20, 0x0d, 0x0a, 0x6e, 0x66];

/** An object that is in use, and where it starts. */
export interface TableEntry {
  number: number;
  offset: number;
}

/** Every object that is in use, by number, and where the trailer begins. @throws Malformed */
export function readTable(bytes: Buffer, at: number) {
  const reader = new PdfReader(bytes);
  reader.at = at;
  if (at >= bytes.length || !reader.takes('xref'))
    refuse('there is no cross-reference table where the end says');
  reader.white();
  const entries: TableEntry[] = [];
  let next = 0;
  while (!reader.takes('trailer')) {
    const first = reader.digits();
    reader.expect(' ');
    const count = reader.digits();
    if (first < next || first + count > MOST_OBJECTS) refuse('the cross-reference table is out of order');
    next = first + count;
    reader.white();
    for (let number = first; number < next; number += 1) {
      const offset = offsetIn(bytes, reader.at, number);
      if (offset !== undefined) entries.push({ number, offset });
      reader.at += LINE;
    }
    reader.white();
  }
  return { entries, endsAt: reader.at, size: next };
}

/** ISO 32000-1 §7.5.4: offset, generation, kind and line end in twenty bytes. Undefined for an entry that is free. */
function offsetIn(bytes: Buffer, at: number, number: number): number | undefined {
  const offset = digitsIn(bytes, at, 10);
  const generation = digitsIn(bytes, at + 11, 5);
  const kind = bytes[at + 17];
  const spaced = bytes[at + 10] === SPACE && bytes[at + 16] === SPACE;
  if (
    offset < 0 ||
    generation < 0 ||
    !spaced ||
    (kind !== IN_USE && kind !== FREE) ||
    !endsLine(bytes, at + 18)
  )
    refuse(`no entry for object ${number} in the cross-reference table`);
  if (kind === FREE) return undefined;
  return generation === 0 ? offset : refuse(`object ${number} has a generation other than 0`);
}

/** The number of so many digits; -1 when they are not all there. */
function digitsIn(bytes: Buffer, from: number, count: number): number {
  let value = 0;
  for (let at = from; at < from + count; at += 1) {
    const byte = bytes[at] ?? 0;
    if (byte < 0x30 || byte > 0x39) return -1;
    value = value * 10 + byte - 0x30;
  }
  return value;
}

function endsLine(bytes: Buffer, at: number): boolean {
  const second = bytes[at + 1];
  return bytes[at] === SPACE ? second === LF || second === CR : bytes[at] === CR && second === LF;
}

/** The trailer, which must reach to `endsAt` and be of the whole file. @throws Malformed */
export function readTrailer(bytes: Buffer, from: number, endsAt: number) {
  const reader = new PdfReader(bytes);
  reader.at = from;
  const trailer = reader.value();
  reader.white();
  if (trailer.is !== 'dict' || reader.at !== endsAt)
    refuse('the trailer is not one dictionary before startxref');
  for (const key of ['Prev', 'XRefStm', 'Encrypt'])
    if (trailer.has(key)) refuse(`the trailer has /${key}: the file was updated later, or encrypted`);
  return { trailer, roots: reader.references };
}

/** ISO 32000-1 §7.5.5: strict programs take objects from /Size on for missing, others show them. @throws Malformed */
export function requireSize(trailer: PdfDict, size: number): void {
  const said = trailer.get('Size');
  if (said?.is !== 'number' || said.value !== size)
    refuse("the trailer's /Size is not that of the cross-reference table");
}

import { plainPdf, TABLE_LINE } from './plain-pdf.js';
import { MARK, type StandIn } from './stand-ins.js';

/** More than an image's dictionary takes, which the typesetter writes before its stream. */
const LONGEST_HEAD = 600;

/**
 * Puts pictures where their stand-ins are in a PDF that the typesetter made: their bytes are the streams of its image
 * objects, which say size and length, and the table of offsets follows. Everything else stays as it is.
 * A PDF of another make is a bug of the caller and throws an Error, as does a stand-in that would stay.
 */
export function inlay(pdf: Uint8Array, standIns: Iterable<StandIn>): Uint8Array {
  const plain = plainPdf(pdf);
  if (plain === undefined) throw new Error('the PDF has no plain table of offsets');
  const view = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.length);
  const known = new Map([...standIns].map((one) => [keyOf(one.bytes), one]));
  const { objects, tableAt, linesAt } = plain;
  const tail = Buffer.from(view.subarray(tableAt));
  const pieces: Uint8Array[] = [view.subarray(0, objects[0]?.from ?? tableAt)];
  let length = pieces[0]?.length ?? 0;
  for (const { number, from, to } of objects) {
    tail.write(String(length).padStart(10, '0'), linesAt - tableAt + number * TABLE_LINE);
    const bytes = withPicture(view.subarray(from, to), known);
    pieces.push(...bytes);
    length += bytes.reduce((sum, one) => sum + one.length, 0);
  }
  const end = tail.toString('latin1').replace(/startxref\n\d+\n/, `startxref\n${length}\n`);
  return Buffer.concat([...pieces, Buffer.from(end, 'latin1')]);
}

/** An object with the picture in it that its stand-in stands for, or as it is. */
function withPicture(object: Buffer, known: ReadonlyMap<string, StandIn>): Uint8Array[] {
  const start = object.subarray(0, LONGEST_HEAD).toString('latin1');
  const [head] = /^\d+ 0 obj\s*<<[\s\S]*?>>\s*stream\r?\n/.exec(start) ?? [];
  if (head === undefined || !/\/Subtype\s*\/Image\b/.test(head)) return [withoutStandIn(object, known)];
  const length = Number(/\/Length (\d+)/.exec(head)?.[1]);
  const stream = object.subarray(head.length, head.length + length);
  const found = known.get(keyOf(stream));
  if (found === undefined || Buffer.compare(stream, found.bytes) !== 0)
    return [withoutStandIn(object, known)];
  const stated = head
    .replace(/\/Length \d+/, `/Length ${found.picture.length}`)
    .replace(/\/Width \d+/, `/Width ${found.width}`)
    .replace(/\/Height \d+/, `/Height ${found.height}`);
  return [Buffer.from(stated, 'latin1'), found.picture, object.subarray(head.length + length)];
}

/** No page may show a stand-in for a picture: one that is written in another way than expected is a bug. */
function withoutStandIn(object: Buffer, known: ReadonlyMap<string, StandIn>): Buffer {
  const at = object.indexOf(MARK);
  if (at >= 0 && known.has(keyOf(object.subarray(at))))
    throw new Error('a picture is not set in the way that its stand-in can be found');
  return object;
}

/** The beginning of a stand-in, with the hash in it. */
const keyOf = (bytes: Uint8Array): string =>
  Buffer.from(bytes.buffer, bytes.byteOffset, Math.min(bytes.length, 38)).toString('latin1');

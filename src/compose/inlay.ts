import type { StandIn } from './stand-ins.js';

interface Piece {
  /** Where it began before. */
  from: number;
  bytes: Uint8Array[];
}

/** More than an image's dictionary takes, which the typesetter writes before its stream. */
const LONGEST_HEAD = 600;
/** One line of the table of offsets (ISO 32000-1 §7.5.4). */
const LINE = 20;

/**
 * Puts pictures where their stand-ins are in a PDF that the typesetter made: their bytes are the streams of its image
 * objects, which say size and length, and the table of offsets follows. Everything else stays as it is.
 * A PDF of another make is a bug of the caller and throws an Error.
 */
export function inlay(pdf: Uint8Array, standIns: Iterable<StandIn>): Uint8Array {
  const view = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.length);
  const { at: table, starts, entriesAt } = offsetsOf(view);
  const known = new Map([...standIns].map((one) => [keyOf(one.bytes), one]));
  const order = [...starts].sort((a, b) => a - b);
  const pieces: Piece[] = [{ from: 0, bytes: [view.subarray(0, order[0] ?? table)] }];
  for (const [i, from] of order.entries())
    pieces.push({ from, bytes: withPicture(view.subarray(from, order[i + 1] ?? table), known) });

  const moved = new Map<number, number>();
  let length = 0;
  for (const { from, bytes } of pieces) {
    moved.set(from, length);
    length += bytes.reduce((sum, one) => sum + one.length, 0);
  }
  const tail = Buffer.from(view.subarray(table));
  for (const [i, start] of starts.entries())
    if (start > 0) tail.write(String(moved.get(start)).padStart(10, '0'), entriesAt - table + i * LINE);
  const end = tail.toString('latin1').replace(/startxref\n\d+\n/, `startxref\n${length}\n`);
  return Buffer.concat([...pieces.flatMap(({ bytes }) => bytes), Buffer.from(end, 'latin1')]);
}

/** Where each object begins, by its number; 0 for none. */
function offsetsOf(view: Buffer): { at: number; starts: number[]; entriesAt: number } {
  const [, written] = /startxref\n(\d+)\n%%EOF\s*$/.exec(view.subarray(-64).toString('latin1')) ?? [];
  const at = Number(written);
  const [head = '', count] = /^xref\n0 (\d+)\n/.exec(view.subarray(at, at + 32).toString('latin1')) ?? [];
  const entriesAt = at + head.length;
  const starts = Array.from({ length: Number(count) }, (_, i) => {
    const line = view.toString('latin1', entriesAt + i * LINE, entriesAt + (i + 1) * LINE);
    const [, offset, use] = /^(\d{10}) \d{5} ([nf])[ \r]\n$/.exec(line) ?? [];
    if (offset === undefined) throw new Error('the PDF has no plain table of offsets');
    return use === 'n' ? Number(offset) : 0;
  });
  return { at, starts, entriesAt };
}

/** An object with the picture in it that its stand-in stands for, or as it is. */
function withPicture(object: Buffer, known: ReadonlyMap<string, StandIn>): Uint8Array[] {
  const start = object.subarray(0, LONGEST_HEAD).toString('latin1');
  const [head] = /^\d+ 0 obj\s*<<[\s\S]*?>>\s*stream\r?\n/.exec(start) ?? [];
  if (head === undefined || !/\/Subtype\s*\/Image\b/.test(head)) return [object];
  const length = Number(/\/Length (\d+)/.exec(head)?.[1]);
  const stream = object.subarray(head.length, head.length + length);
  const found = known.get(keyOf(stream));
  if (found === undefined || Buffer.compare(stream, found.bytes) !== 0) return [object];
  const stated = head
    .replace(/\/Length \d+/, `/Length ${found.picture.length}`)
    .replace(/\/Width \d+/, `/Width ${found.width}`)
    .replace(/\/Height \d+/, `/Height ${found.height}`);
  return [Buffer.from(stated, 'latin1'), found.picture, object.subarray(head.length + length)];
}

/** The beginning of a stand-in, with the hash in it. */
const keyOf = (bytes: Uint8Array): string =>
  Buffer.from(bytes.buffer, bytes.byteOffset, Math.min(bytes.length, 38)).toString('latin1');

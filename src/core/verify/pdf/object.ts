import { latin1 } from '../../model/bytes.js';
import { refuse } from '../malformed.js';
import { WHITE } from './characters.js';
import { PdfReader } from './reader.js';
import type { PdfDict, PdfName, PdfValue } from './value.js';

/** A range of bytes in the file: its first byte, and the byte after its last. */
export interface ByteSpan {
  from: number;
  to: number;
}

/** A well-formed object. */
export interface PdfObject {
  value: PdfValue;
  /** The bytes of the stream, for an object that is one. */
  stream?: ByteSpan;
}

/** Bytes of the longest dictionary of a stream, and of the longest object that is none. */
const LONGEST_STREAM_HEAD = 4096;
const LONGEST_OBJECT = 64 * 1024 * 1024;
/** Bytes between the end of a stream and the end of its object. */
const LONGEST_TAIL = 256;
const TAIL = new RegExp(`^(?:\r\n|\n)?endstream[${WHITE}]*endobj[${WHITE}]*$`);
/** The end of an object with a stream, which tells it from objects without one. */
const USUAL_TAIL = /endstream\s+endobj\s*$/;
const USUAL_TAIL_BYTES = 32;

/**
 * Reads the object of this number, which must fill its span.
 * @throws Malformed
 */
export function readObject(
  bytes: Uint8Array,
  number: number,
  { from, to }: ByteSpan,
  lengthOf: (number: number) => PdfValue,
  names?: Map<string, PdfName>,
): PdfObject {
  const isStream = USUAL_TAIL.test(latin1(bytes, Math.max(from, to - USUAL_TAIL_BYTES), to));
  if (!isStream && to - from > LONGEST_OBJECT) refuse(`object ${number} is too large`);
  const end = isStream ? Math.min(to, from + LONGEST_STREAM_HEAD) : to;
  const reader = new PdfReader(bytes, from, end, number, names);
  reader.expect(`${number} 0 obj`);
  const value = reader.value();
  reader.white();
  if (value.is === 'dict' && reader.takes('stream')) {
    const stream = streamAt(reader, value, lengthOf);
    if (stream.to > bytes.length) refuse(`a stream that is longer than the file at byte ${value.from}`);
    if (to - stream.to > LONGEST_TAIL || !TAIL.test(latin1(bytes, stream.to, to)))
      refuse(`there are bytes after the stream of object ${number}`);
    return { value, stream };
  }
  reader.expect('endobj');
  reader.white();
  if (!reader.isAtEnd()) refuse(`there are bytes after object ${number}`);
  return { value };
}

function streamAt(reader: PdfReader, dict: PdfDict, lengthOf: (number: number) => PdfValue): ByteSpan {
  const type = dict.get('Type');
  if (type?.is === 'name' && (type.name === 'ObjStm' || type.name === 'XRef'))
    refuse(`objects packed in a stream at byte ${dict.from}`);
  for (const key of ['F', 'FFilter', 'FDecodeParms'])
    if (dict.has(key)) refuse(`a stream whose data lie outside the file at byte ${dict.from}`);
  if (!reader.takes('\r\n')) reader.expect('\n');
  const said = dict.get('Length');
  const length = said?.is === 'ref' ? lengthOf(said.number) : said;
  if (length?.is !== 'number' || !length.integer || length.value < 0)
    refuse(`a stream without its length at byte ${dict.from}`);
  return { from: reader.at, to: reader.at + length.value };
}

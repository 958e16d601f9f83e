import { refuse } from '../malformed.js';
import type { PdfReader } from './reader.js';
import type { PdfDict, PdfValue } from './value.js';

/** Where something is in the file: the first byte, and the byte after the last. */
export interface ByteSpan {
  from: number;
  to: number;
}

interface Read {
  value: PdfValue;
  dictionaries: readonly PdfDict[];
}

/**
 * An object that was found well-formed. Its value is kept, but for the thousands of elements that only say how the
 * pages are read aloud: these are read again when one is asked for.
 */
export class PdfObject {
  constructor(
    readonly number: number,
    private readonly reader: PdfReader,
    private readonly from: number,
    /** Numbers of the objects that it refers to. */
    readonly references: readonly number[],
    private read: Read | undefined,
    /** The bytes of the stream, for an object that is one. */
    readonly stream?: ByteSpan,
  ) {}

  get value(): PdfValue {
    return this.again().value;
  }

  /** Every dictionary in the value, the value itself included; inner ones before those that hold them. */
  get dictionaries(): readonly PdfDict[] {
    return this.again().dictionaries;
  }

  private again(): Read {
    if (this.read === undefined) {
      this.reader.begin(this.number, this.from);
      this.read = { value: this.reader.value(), dictionaries: this.reader.dictionaries };
    }
    return this.read;
  }
}

/**
 * Reads the object that starts where the reader is and must reach to `until`; the reader has its dictionaries then.
 * @throws Malformed
 */
export function readObject(
  reader: PdfReader,
  number: number,
  until: number,
  lengthOf: (number: number) => PdfValue,
): PdfObject {
  reader.expect(`${number} 0 obj`);
  const from = reader.at;
  const value = reader.value();
  reader.white();
  const stream =
    value.is === 'dict' && reader.takes('stream') ? readStream(reader, value, lengthOf) : undefined;
  reader.expect('endobj');
  reader.white();
  if (reader.at !== until) refuse(`something stands after object ${number}`);
  const { dictionaries, references } = reader;
  const kept = value.is === 'dict' && value.kind.type === 'StructElem' ? undefined : { value, dictionaries };
  return new PdfObject(number, reader, from, references.slice(), kept, stream);
}

function readStream(reader: PdfReader, dict: PdfDict, lengthOf: (number: number) => PdfValue): ByteSpan {
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
  const from = reader.at;
  const to = from + length.value;
  if (to > reader.bytes.length) refuse(`a stream that is longer than the file at byte ${dict.from}`);
  reader.at = to;
  if (!reader.takes('\r\n')) reader.takes('\n');
  reader.expect('endstream');
  reader.white();
  return { from, to };
}

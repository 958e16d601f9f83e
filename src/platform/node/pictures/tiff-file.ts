import { closeSync, fstatSync, openSync, readSync } from 'node:fs';

export const EXIF_DIRECTORY = 0x8769;
export const GPS_DIRECTORY = 0x8825;

/** Bytes of one value by its type, 1 to 13 (TIFF 6.0 §2). */
const SIZES = [0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4];
/** Unsigned numbers of a directory's place: LONG, IFD, and in BigTIFF LONG8 and IFD8. */
const PLACES = new Set([4, 13, 16, 18]);
/** No tag that is read is longer. */
const MOST_VALUE = 4096;
const MOST_ENTRIES = 4096;

/** One field of a directory. */
export interface TiffEntry {
  tag: number;
  type: number;
  count: number;
  value: Buffer;
}

/** A TIFF file, the classic form or BigTIFF, wherever in it the directories lie. */
export class TiffFile {
  readonly #file: number;
  readonly #size: number;
  readonly littleEndian: boolean;
  readonly #big: boolean;
  readonly first: number;

  /** Throws RangeError for bytes that are no TIFF. */
  constructor(file: number) {
    this.#file = file;
    this.#size = fstatSync(file).size;
    const head = this.#bytes(0, 8);
    const order = head.toString('latin1', 0, 2);
    this.littleEndian = order === 'II';
    const version = this.#number(head, 2, 2);
    if ((order !== 'II' && order !== 'MM') || (version !== 42 && version !== 43))
      throw new RangeError('not a TIFF');
    this.#big = version === 43;
    this.first = this.#big ? this.#number(this.#bytes(8, 8), 0, 8) : this.#number(head, 4, 4);
  }

  /** The wanted entries of the directory at a place, and the directories that it names. */
  directory(at: number, wanted: ReadonlySet<number>): { entries: TiffEntry[]; places: Map<number, number> } {
    const [countBytes, entryBytes, countOf, inline] = this.#big ? [8, 20, 8, 8] : [2, 12, 4, 4];
    const count = this.#number(this.#bytes(at, countBytes), 0, countBytes);
    if (count > MOST_ENTRIES) throw new RangeError('too many entries');
    const table = this.#bytes(at + countBytes, count * entryBytes);
    const entries: TiffEntry[] = [];
    const places = new Map<number, number>();
    for (let i = 0; i < table.length; i += entryBytes) {
      const tag = this.#number(table, i, 2);
      const type = this.#number(table, i + 2, 2);
      const values = this.#number(table, i + 4, countOf);
      const valueAt = i + 4 + countOf;
      if ((tag === EXIF_DIRECTORY || tag === GPS_DIRECTORY) && PLACES.has(type))
        places.set(tag, this.#number(table, valueAt, type > 13 ? 8 : 4));
      const bytes = values * (SIZES[type] ?? 0);
      if (!wanted.has(tag) || bytes === 0 || bytes > MOST_VALUE) continue;
      const value =
        bytes <= inline
          ? table.subarray(valueAt, valueAt + bytes)
          : this.#bytesOrNone(this.#number(table, valueAt, inline), bytes);
      if (value !== undefined) entries.push({ tag, type, count: values, value });
    }
    return { entries, places };
  }

  #bytesOrNone(at: number, length: number): Buffer | undefined {
    return at + length > this.#size ? undefined : this.#bytes(at, length);
  }

  #bytes(at: number, length: number): Buffer {
    const room = Buffer.alloc(length);
    if (at + length > this.#size || readSync(this.#file, room, 0, length, at) !== length)
      throw new RangeError('past the end of the file');
    return room;
  }

  /** Whole numbers of a field of type SHORT. */
  shorts({ type, count, value }: TiffEntry): number[] {
    if (type !== 3) return [];
    return Array.from({ length: count }, (_, i) => this.#number(value, 2 * i, 2));
  }

  #number(bytes: Buffer, at: number, length: number): number {
    if (length < 8) return this.littleEndian ? bytes.readUIntLE(at, length) : bytes.readUIntBE(at, length);
    const value = Number(this.littleEndian ? bytes.readBigUInt64LE(at) : bytes.readBigUInt64BE(at));
    if (!Number.isSafeInteger(value)) throw new RangeError('past the end of the file');
    return value;
  }
}

/** Reads an open TIFF and closes it. Undefined when the file is no TIFF or its first directory is out of place. */
export function withTiff<T>(path: string, read: (tiff: TiffFile) => T): T | undefined {
  const file = openSync(path, 'r');
  try {
    return read(new TiffFile(file));
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  } finally {
    closeSync(file);
  }
}

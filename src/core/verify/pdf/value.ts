import { hexBytes, literalBytes } from './characters.js';
import type { DictShape } from './dict-shape.js';

/** One value of a PDF file; strings and dictionaries with the offsets of their first byte and of the byte after them. */
export type PdfValue =
  | { is: 'null' | 'true' | 'false' }
  | PdfNumber
  | PdfName
  | PdfString
  | { is: 'array'; items: readonly PdfValue[] }
  | PdfDict
  | PdfRef;

export interface PdfNumber {
  is: 'number';
  value: number;
  integer: boolean;
}

export interface PdfName {
  is: 'name';
  name: string;
}

/** A reference to an indirect object; generation is always 0 in a dossier. */
export interface PdfRef {
  is: 'ref';
  number: number;
}

/** A string, decoded when it is asked for: of thousands in a file, few are. */
export class PdfString {
  readonly is = 'string';

  constructor(
    private readonly file: Buffer,
    readonly from: number,
    readonly to: number,
    readonly hex: boolean,
  ) {}

  get bytes(): Uint8Array {
    const inside = this.file.subarray(this.from + 1, this.to - 1);
    return this.hex ? hexBytes(inside) : literalBytes(inside);
  }
}

/** The entries of a dictionary, in the order in which they stand. */
export class PdfDict implements Iterable<[string, PdfValue]> {
  readonly is = 'dict';

  constructor(
    readonly kind: DictShape,
    private readonly held: readonly PdfValue[],
    /** Number of the object that it stands in; 0 in the trailer. */
    readonly object: number,
    readonly from: number,
    readonly to: number,
  ) {}

  get size(): number {
    return this.held.length;
  }

  get(key: string): PdfValue | undefined {
    const place = this.kind.placeOf(key);
    return place === undefined ? undefined : this.held[place];
  }

  has(key: string): boolean {
    return this.kind.placeOf(key) !== undefined;
  }

  values(): readonly PdfValue[] {
    return this.held;
  }

  *[Symbol.iterator](): Generator<[string, PdfValue]> {
    for (const [i, key] of this.kind.keys().entries()) {
      const value = this.held[i];
      if (value !== undefined) yield [key, value];
    }
  }
}

export function nameOf(value: PdfValue | undefined): string | undefined {
  return value?.is === 'name' ? value.name : undefined;
}

/** ISO 32000-1 §7.9.2: UTF-16BE with its mark, else taken byte for byte as Latin-1. */
export function textOf(value: PdfValue | undefined): string | undefined {
  if (value?.is !== 'string') return undefined;
  const { bytes } = value;
  if (bytes[0] !== 0xfe || bytes[1] !== 0xff) return Buffer.from(bytes).toString('latin1');
  if (bytes.length % 2 !== 0) return undefined;
  return Buffer.from(bytes.subarray(2)).swap16().toString('utf16le');
}

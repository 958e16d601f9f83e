import { latin1 } from '../../model/bytes.js';
import { hexBytes, literalBytes } from './characters.js';

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

/** A string, decoded when it is asked for. */
export class PdfString {
  readonly is = 'string';

  constructor(
    private readonly file: Uint8Array,
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
    private readonly entries: ReadonlyMap<string, PdfValue>,
    /** Number of the object that it stands in; 0 in the trailer. */
    readonly object: number,
    readonly from: number,
    readonly to: number,
  ) {}

  get size(): number {
    return this.entries.size;
  }

  get(key: string): PdfValue | undefined {
    return this.entries.get(key);
  }

  has(key: string): boolean {
    return this.entries.has(key);
  }

  keys(): Iterable<string> {
    return this.entries.keys();
  }

  values(): Iterable<PdfValue> {
    return this.entries.values();
  }

  [Symbol.iterator](): Iterator<[string, PdfValue]> {
    return this.entries[Symbol.iterator]();
  }
}

/** Visits a value with everything in it, inner values before those that hold them. */
export function visit(value: PdfValue, visitor: (one: PdfValue) => void): void {
  if (value.is === 'array') for (const item of value.items) visit(item, visitor);
  if (value.is === 'dict') for (const held of value.values()) visit(held, visitor);
  visitor(value);
}

export function nameOf(value: PdfValue | undefined): string | undefined {
  return value?.is === 'name' ? value.name : undefined;
}

/** ISO 32000-1 §7.9.2: UTF-16BE with its mark, else taken byte for byte as Latin-1. */
export function textOf(value: PdfValue | undefined): string | undefined {
  if (value?.is !== 'string') return undefined;
  const { bytes } = value;
  if (bytes[0] !== 0xfe || bytes[1] !== 0xff) return latin1(bytes);
  if (bytes.length % 2 !== 0) return undefined;
  let text = '';
  for (let at = 2; at < bytes.length; at += 2)
    text += String.fromCharCode((bytes[at] ?? 0) * 256 + (bytes[at + 1] ?? 0));
  return text;
}

/** One value of a PDF file; strings and dictionaries with the offsets of their first byte and of the byte after them. */
export type PdfValue =
  | { is: 'null' | 'true' | 'false' }
  | { is: 'number'; value: number; integer: boolean }
  | PdfName
  | { is: 'string'; bytes: Uint8Array; hex: boolean; from: number; to: number }
  | { is: 'array'; items: PdfValue[] }
  | PdfDict
  | PdfRef;

export interface PdfName {
  is: 'name';
  name: string;
}

export interface PdfDict {
  is: 'dict';
  entries: Map<string, PdfValue>;
  from: number;
  to: number;
}

/** A reference to an indirect object; generation is always 0 in a dossier. */
export interface PdfRef {
  is: 'ref';
  number: number;
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

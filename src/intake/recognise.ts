import { assertNever } from '../core/model/error.js';
import { isChat } from './chat/messages.js';
import { looksLikeMail } from './email/recognise-mail.js';
import { type RecordingType, recordingType } from './recording/recording-type.js';
import { type ByteSource, headOf } from './table/bytes.js';
import { DELIMITERS, guessDelimiter, linesOf } from './table/delimiter.js';
import { decode, looksLikeText } from './table/encoding.js';
import { isProse } from './table/prose.js';
import { rowsOfText } from './table/rows.js';

/** The type of a file by its content; its name is never used. */
export type Recognised =
  | { is: 'picture'; type: PictureType }
  | { is: 'pdf'; type: 'application/pdf' }
  | { is: 'table'; type: 'text/csv' }
  | { is: 'spreadsheet'; type: (typeof SPREADSHEETS)[keyof typeof SPREADSHEETS] }
  /** Text of records that may be a table. */
  | { is: 'records'; type: (typeof RECORDS)[keyof typeof RECORDS] }
  | { is: 'text'; type: 'text/plain' }
  | { is: 'message'; type: 'message/rfc822' }
  /** A film or a recorded sound. */
  | { is: 'recording'; type: RecordingType }
  | { is: 'archive'; type: 'application/zip' }
  /** No bytes, or nothing but blank space. */
  | { is: 'empty'; type: 'application/x-empty' | 'text/plain' }
  | { is: 'unknown'; type: 'application/octet-stream' };

export type PictureType =
  | 'image/jpeg'
  | 'image/png'
  | 'image/heic'
  | 'image/heif'
  | 'image/webp'
  | 'image/tiff'
  | 'image/avif';

/** Types of the IANA registry. */
const SPREADSHEETS = {
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  ods: 'application/vnd.oasis.opendocument.spreadsheet',
  xls: 'application/vnd.ms-excel',
} as const;
const RECORDS = {
  json: 'application/json',
  'json-lines': 'application/jsonl',
  xml: 'application/xml',
} as const;

/** Bytes of a file that `recognise` reads. */
const HEAD_BYTES = 64 * 1024;

interface Magic {
  type: PictureType | 'application/pdf';
  at: number;
  bytes: readonly number[];
  /** A second signature at a later offset. */
  and?: { at: number; text: string };
}

const ascii = (text: string): number[] => [...text].map((c) => c.charCodeAt(0));

/** Signatures, from each format's own specification. */
const MAGIC: readonly Magic[] = [
  { type: 'image/jpeg', at: 0, bytes: [0xff, 0xd8, 0xff] },
  { type: 'image/png', at: 0, bytes: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a] },
  { type: 'image/webp', at: 0, bytes: ascii('RIFF'), and: { at: 8, text: 'WEBP' } },
  { type: 'image/tiff', at: 0, bytes: [0x49, 0x49, 0x2a, 0x00] },
  { type: 'image/tiff', at: 0, bytes: [0x4d, 0x4d, 0x00, 0x2a] },
  // BigTIFF, with places of 64 bits.
  { type: 'image/tiff', at: 0, bytes: [0x49, 0x49, 0x2b, 0x00] },
  { type: 'image/tiff', at: 0, bytes: [0x4d, 0x4d, 0x00, 0x2b] },
  { type: 'application/pdf', at: 0, bytes: ascii('%PDF-') },
];

/** Brands of the AV1 Image File Format: those coded in AV1. */
const AVIF_BRANDS = new Set(['avif', 'avis']);
/** Brands of ISO/IEC 23008-12 in the `ftyp` box: those coded in HEVC, then the structural ones. */
const HEIC_BRANDS = new Set(['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'hevm', 'hevs']);
const HEIF_BRANDS = new Set(['mif1', 'msf1', 'mif2']);

/** Type by content, from the head of a file. Never throws. */
export function recognise(head: Uint8Array): Recognised {
  if (head.length === 0) return { is: 'empty', type: 'application/x-empty' };
  const magic = MAGIC.find((m) => startsWith(head, m));
  if (magic !== undefined)
    return magic.type === 'application/pdf'
      ? { is: 'pdf', type: magic.type }
      : { is: 'picture', type: magic.type };
  const heif = heifType(head);
  if (heif !== undefined) return { is: 'picture', type: heif };
  const recording = recordingType(head);
  if (recording !== undefined) return { is: 'recording', type: recording };
  if (isArchive(head)) return { is: 'archive', type: 'application/zip' };
  if (pdfWithPrefix(head)) return { is: 'pdf', type: 'application/pdf' };
  const text = decode(head);
  if (!looksLikeText(text)) return { is: 'unknown', type: 'application/octet-stream' };
  if (text.trim() === '' && head.length < HEAD_BYTES) return { is: 'empty', type: 'text/plain' };
  if (looksLikeMail(text)) return { is: 'message', type: 'message/rfc822' };
  const lines = linesOf(text);
  // The head may end in the middle of a line.
  if (head.length >= HEAD_BYTES && lines.length > 1) lines.pop();
  if (isChat(lines)) return { is: 'text', type: 'text/plain' };
  return (guessDelimiter(lines) !== undefined && tabular(lines)) || hasRowsOverLines(text)
    ? { is: 'table', type: 'text/csv' }
    : { is: 'text', type: 'text/plain' };
}

/** Type by content of a whole file: the list of a zip file is at its end. */
export async function recogniseFile(source: ByteSource): Promise<Recognised> {
  const head = await headOf(source, HEAD_BYTES);
  const recognised = recognise(head);
  if (typeof source !== 'string' || !MAY_BE_BOOK.has(recognised.is)) return recognised;
  const { bookForm } = await import('./table/sheet.js');
  const form = await bookForm(source);
  switch (form) {
    case 'xlsx':
    case 'ods':
    case 'xls':
      return { is: 'spreadsheet', type: SPREADSHEETS[form] };
    case 'json':
    case 'json-lines':
    case 'xml':
      return { is: 'records', type: RECORDS[form] };
    case 'pdf':
    case undefined:
      return recognised;
    default:
      return assertNever(form);
  }
}

const MAY_BE_BOOK: ReadonlySet<Recognised['is']> = new Set(['archive', 'unknown', 'table', 'text']);

function startsWith(head: Uint8Array, magic: Magic): boolean {
  return (
    magic.bytes.every((byte, i) => head[magic.at + i] === byte) &&
    (magic.and === undefined || textAt(head, magic.and.at, magic.and.text.length) === magic.and.text)
  );
}

function textAt(head: Uint8Array, at: number, length: number): string {
  return Buffer.from(head.subarray(at, at + length)).toString('latin1');
}

/**
 * A zip file of files (APPNOTE 4.3.7, or 4.3.16 when it is empty). Office documents are zip files too, but one
 * document each: their first entries identify them (ECMA-376 part 2, ODF 1.3 part 2 §3.3).
 */
function isArchive(head: Uint8Array): boolean {
  const mark = textAt(head, 0, 4);
  if (mark === 'PK\x05\x06') return true;
  if (mark !== 'PK\x03\x04') return false;
  const first = textAt(head, 30, 24);
  return !/^(?:\[Content_Types\]\.xml|_rels\/|docProps\/|word\/|xl\/|ppt\/|mimetypeapplication\/)/.test(
    first,
  );
}

/** `ftyp` box: size, 'ftyp', major brand, minor version, compatible brands (ISO/IEC 14496-12 §4.3). */
function heifType(head: Uint8Array): 'image/avif' | 'image/heic' | 'image/heif' | undefined {
  if (textAt(head, 4, 4) !== 'ftyp') return undefined;
  const size = Buffer.from(head.buffer, head.byteOffset, Math.min(4, head.length)).readUIntBE(
    0,
    Math.min(4, head.length),
  );
  // The file can state any size: no real box reaches further than this.
  const end = Math.min(size, head.length, 256);
  const brands = [textAt(head, 8, 4)];
  for (let at = 16; at + 4 <= end; at += 4) brands.push(textAt(head, at, 4));
  if (brands.some((brand) => AVIF_BRANDS.has(brand))) return 'image/avif';
  if (brands.some((brand) => HEIC_BRANDS.has(brand))) return 'image/heic';
  return brands.some((brand) => HEIF_BRANDS.has(brand)) ? 'image/heif' : undefined;
}

/**
 * Readers accept a header anywhere in the first 1,024 bytes, so a file with a few stray bytes in front is still a
 * PDF.
 */
function pdfWithPrefix(head: Uint8Array): boolean {
  return /%PDF-\d\.\d/.test(textAt(head, 0, 1024));
}

/**
 * Rows whose quoted cells go on over lines: cut at their line ends they look like anything. As many cells in each, and
 * one of them longer than a line, is a table.
 */
function hasRowsOverLines(text: string): boolean {
  if (!text.includes('"')) return false;
  return DELIMITERS.some((delimiter) => {
    const rows = rowsOfText(text, delimiter, 30).slice(0, -1);
    const width = rows[0]?.cells.length ?? 0;
    return (
      rows.length >= 2 &&
      width >= 2 &&
      rows.every(({ cells }) => cells.length === width) &&
      rows.some(({ cells }) => cells.some((cell) => cell.includes('\n')))
    );
  });
}

/** Prose has commas too: a table has a line with at least two cells and no cell as long as a sentence. */
function tabular(lines: readonly string[]): boolean {
  const delimiter = guessDelimiter(lines);
  if (delimiter === undefined || isProse(lines, delimiter)) return false;
  const cells = lines.slice(0, 50).flatMap((line) => line.split(delimiter));
  const long = cells.filter((cell) => cell.trim().length > 60 || /[a-z]{2,}[.!?] [A-Z]/.test(cell)).length;
  return long <= cells.length / 10 && lines.length > 1;
}

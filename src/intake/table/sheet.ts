import { assertNever, DossierError } from '../../core/model/error.js';
import { type ByteSource, headOf } from './bytes.js';
import { decode } from './encoding.js';
import type { RecordForm } from './records.js';
import { asSource, type SheetText } from './sheet-text.js';

export { asSource, type SheetText } from './sheet-text.js';

/** A file that holds tables in another form than delimited text. */
export type BookForm = 'xlsx' | 'ods' | 'xls' | 'pdf' | RecordForm;

/** A compound file ([MS-CFB] 2.2), and the name of the stream that makes it a spreadsheet ([MS-XLS] 2.1.2). */
const COMPOUND = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];
const WORKBOOK_STREAMS = ['Workbook', 'Book'].map((name) => Buffer.from(`${name}\0`, 'utf16le'));

/** The form of a file by its content; undefined for any other. */
export async function bookForm(path: string): Promise<BookForm | undefined> {
  const head = await headOf(path, 64 * 1024);
  const begins = (bytes: readonly number[]) => bytes.every((byte, i) => head[i] === byte);
  if (begins([0x50, 0x4b, 3, 4])) return (await import('./workbook.js')).packedBook(path);
  if (begins(COMPOUND)) return (await holdsWorkbook(path)) ? 'xls' : undefined;
  if (Buffer.from(head.subarray(0, 1024)).includes('%PDF-')) return 'pdf';
  const [first] = decode(head.subarray(0, 512)).trimStart();
  if (first !== '<' && first !== '{' && first !== '[') return undefined;
  return (await import('./records.js')).recordForm(decode(head));
}

/** The directory of a compound file may stand anywhere in it. */
async function holdsWorkbook(path: string): Promise<boolean> {
  const bytes = Buffer.from(await headOf(path, 64 * 1024 * 1024));
  return WORKBOOK_STREAMS.some((name) => bytes.includes(name));
}

/** All tables of a file in their order. Throws DossierError for one that is damaged, locked or larger than is read. */
export async function readSheets(path: string, fileName: string): Promise<SheetText[]> {
  const form = await bookForm(path);
  switch (form) {
    case 'xlsx':
    case 'ods':
      return (await import('./workbook.js')).readPackedBook(path, fileName, form);
    case 'xls':
      return (await import('./workbook.js')).readOldBook(path, fileName);
    case 'pdf':
      return (await import('./pdf-table.js')).readPdfTable(path, fileName);
    case 'json':
    case 'json-lines':
    case 'xml':
      return (await import('./records.js')).readRecords(path, fileName, form);
    case undefined:
      return [];
    default:
      return assertNever(form);
  }
}

/** The text of one sheet as something to read from. Throws DossierError as `readSheets`, and when the sheet is not there. */
export async function sheetText(source: ByteSource, name: string): Promise<ByteSource> {
  // A caller that hands over text has unpacked the sheet already.
  if (typeof source !== 'string') return source;
  const sheet = (await readSheets(source, source)).find((one) => one.name === name);
  if (sheet === undefined)
    throw new DossierError('unsupported-file', `there is no sheet "${name}"`, { where: { file: source } });
  return asSource(sheet);
}

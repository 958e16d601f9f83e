import { parse } from 'csv-parse';
import { DossierError } from '../../model/error.js';
import { type ByteSource, bytesOf } from './bytes.js';
import type { Delimiter } from './delimiter.js';
import { decoderOf, type Encoding } from './encoding.js';

export interface TableForm {
  encoding: Encoding;
  delimiter: Delimiter;
}

/** No table row is longer; a file without line ends must not fill the memory. */
const LONGEST_LINE = 1_000_000;

/**
 * Hands over each row of a delimited text with its line in the file, counted from 1. Blank lines are
 * skipped. A file without any quotation mark is split plainly, which is several times faster than a full
 * CSV parser; one with quotation marks goes through csv-parse.
 * `onRow` returns false to stop. Throws DossierError `unsupported-file` for a line that never ends or
 * quotation marks that do not close.
 */
export async function eachRow(
  source: ByteSource,
  form: TableForm,
  onRow: (cells: string[], line: number) => boolean | undefined,
): Promise<void> {
  if (await hasQuotes(source)) await quotedRows(source, form, onRow);
  else await plainRows(source, form, onRow);
}

async function hasQuotes(source: ByteSource): Promise<boolean> {
  for await (const chunk of bytesOf(source)) if (chunk.includes(0x22)) return true;
  return false;
}

async function plainRows(
  source: ByteSource,
  { encoding, delimiter }: TableForm,
  onRow: (cells: string[], line: number) => boolean | undefined,
): Promise<void> {
  const decoder = decoderOf(encoding);
  let rest = '';
  let line = 0;
  let going = true;
  const take = (text: string): void => {
    // A lone CR inside is a line end too.
    if (text.includes('\r')) for (const part of text.split('\r')) takeOne(part);
    else takeOne(text);
  };
  const takeOne = (text: string): void => {
    line += 1;
    if (going && text.trim() !== '' && onRow(text.split(delimiter), line) === false) going = false;
  };
  const lines = (text: string, last: boolean): string => {
    let start = 0;
    // CR alone ends a line only in files that have no LF; CR LF is one end.
    const alone = !text.includes('\n') && text.includes('\r');
    const mark = alone ? '\r' : '\n';
    for (;;) {
      const end = text.indexOf(mark, start);
      // A CR at the very end may be half of a CR LF.
      if (end < 0 || (alone && !last && end === text.length - 1)) break;
      take(text.slice(start, end > start && text.charCodeAt(end - 1) === 13 ? end - 1 : end));
      start = end + 1;
      if (!going) return '';
    }
    return text.slice(start);
  };
  for await (const chunk of bytesOf(source)) {
    rest = lines(rest + decoder.decode(chunk, { stream: true }), false);
    if (!going) return;
    if (rest.length > LONGEST_LINE) throw endless(line + 1);
  }
  rest = lines(rest + decoder.decode(), true);
  if (going && rest !== '') take(rest);
}

async function quotedRows(
  source: ByteSource,
  { encoding, delimiter }: TableForm,
  onRow: (cells: string[], line: number) => boolean | undefined,
): Promise<void> {
  const decoder = decoderOf(encoding);
  const parser = parse({
    delimiter,
    info: true,
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: true,
    max_record_size: LONGEST_LINE,
  });
  const feed = async (): Promise<void> => {
    for await (const chunk of bytesOf(source)) {
      if (parser.destroyed) return;
      if (!parser.write(decoder.decode(chunk, { stream: true })))
        await new Promise<void>((resume) => {
          parser.once('drain', resume);
          parser.once('close', resume);
        });
    }
    parser.end(decoder.decode());
  };
  const fed = feed();
  fed.catch((cause: unknown) => parser.destroy(cause instanceof Error ? cause : new Error(String(cause))));
  let before = 0;
  try {
    for await (const record of parser) {
      const { record: cells, info } = record as { record: string[]; info: { lines: number } };
      // `lines` is the line on which the record ends; a record with line ends inside begins earlier.
      const line = Math.max(before + 1, info.lines - cells.join('').split('\n').length + 1);
      before = info.lines;
      if (cells.every((cell) => cell.trim() === '')) continue;
      if (onRow(cells, line) === false) break;
    }
    await fed;
  } catch (cause) {
    const code = cause instanceof Error && 'code' in cause ? String(cause.code) : '';
    if (code === 'CSV_MAX_RECORD_SIZE') throw endless(before + 1);
    if (!code.startsWith('CSV_')) throw cause;
    throw new DossierError('unsupported-file', 'the quotation marks of this table do not match up', {
      where: { row: before + 1 },
      fix: 'open it in a spreadsheet and save it as CSV again',
      cause,
    });
  } finally {
    parser.destroy();
  }
}

function endless(row: number): DossierError {
  return new DossierError('unsupported-file', `a line longer than ${LONGEST_LINE} characters`, {
    where: { row },
  });
}

import { readFile, stat } from 'node:fs/promises';
import { parse } from 'csv-parse/sync';
import { DossierError } from '../../core/model/error.js';
import { guessDelimiter, linesOf } from './delimiter.js';
import { decode } from './encoding.js';

/** A table that people write, with a header that says what is in it. */
export interface WrittenTable {
  /** Headings in lower case, with dashes between their words. */
  headings: string[];
  rows: WrittenRow[];
}

export interface WrittenRow {
  /** Line in the file on which the row begins, counted from 1. */
  row: number;
  /** Trimmed text by heading; empty cells are left out. */
  cells: ReadonlyMap<string, string>;
}

const MOST_BYTES = 10 * 1024 * 1024;
const MOST_ROWS = 20_000;

/** Reads a table's headings alone, to see what the table is. */
export function headingsOf(text: string): string[] {
  const lines = linesOf(text);
  const delimiter = guessDelimiter(lines) ?? ',';
  const first = lines.find((line) => line.trim() !== '') ?? '';
  return first.split(delimiter).map((h) => plain(h.replaceAll('"', '')));
}

/** Reads a written table. Throws DossierError for one that is too large or whose quotation marks do not match. */
export async function readWrittenTable(path: string, fileName: string): Promise<WrittenTable> {
  const { size } = await stat(path);
  if (size > MOST_BYTES)
    throw new DossierError('file-too-large', `${size} bytes; at most ${MOST_BYTES} are read as a table`, {
      where: { file: fileName },
    });
  return parseWrittenTable(decode(await readFile(path)), fileName);
}

/** The same from text. */
export function parseWrittenTable(text: string, fileName: string): WrittenTable {
  const records = parseRecords(text, fileName);
  const [header, ...rest] = records;
  const headings = (header?.cells ?? []).map(plain);
  if (rest.length > MOST_ROWS)
    throw new DossierError('file-too-large', `${rest.length} rows; at most ${MOST_ROWS} are read`, {
      where: { file: fileName },
    });
  return {
    headings,
    rows: rest.flatMap(({ row, cells }) => {
      const named = new Map<string, string>();
      cells.forEach((cell, i) => {
        const heading = headings[i];
        if (heading !== undefined && cell.trim() !== '') named.set(heading, cell.trim());
      });
      return named.size === 0 ? [] : [{ row, cells: named }];
    }),
  };
}

/** `Set point` and `set_point` are `set-point`. */
function plain(heading: string): string {
  return heading
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_]+/g, '-');
}

function parseRecords(text: string, fileName: string): { row: number; cells: string[] }[] {
  // One kind of line end throughout, so that lines count as an editor counts them.
  const source = text.replaceAll(/\r\n?/g, '\n');
  const starts: { row: number; cells: string[] }[] = [];
  let line = 1;
  try {
    parse(source, {
      delimiter: guessDelimiter(linesOf(source)) ?? ',',
      bom: true,
      raw: true,
      relax_column_count: true,
      skip_empty_lines: false,
      on_record: (record: unknown) => {
        const { raw, record: cells } = record as { raw: string; record: string[] };
        if (cells.some((cell) => cell.trim() !== '')) starts.push({ row: line, cells });
        line += raw.split('\n').length - (raw.endsWith('\n') ? 1 : 0);
        return null;
      },
    });
  } catch (cause) {
    const message = cause instanceof Error ? cause.message : 'it cannot be read as CSV';
    throw new DossierError('unsupported-file', message, {
      where: { file: fileName, row: line },
      fix: 'open the file in a spreadsheet and save it as CSV again',
      cause,
    });
  }
  return starts;
}

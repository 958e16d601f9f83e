import { DossierError } from '../../core/model/error.js';
import { type ByteSource, bytesOf } from './bytes.js';
import { type Delimiter, OpenRecord, splitLine } from './delimiter.js';
import { decoderOf, type Encoding } from './encoding.js';

export interface TableForm {
  encoding: Encoding;
  delimiter: Delimiter;
}

/** No table row is longer; a file without line ends, or a quotation mark that is never closed, must not fill the memory. */
const LONGEST_ROW = 1_000_000;
const LONGEST_QUOTED = { lines: 500, characters: 100_000 };

/**
 * Hands over each row of a delimited text (RFC 4180 §2) with its line in the file, counted from 1: for long logs, where
 * a full CSV parser takes twenty times as long. Blank lines are skipped; a run of zero bytes is handed over as one.
 * `onRow` returns false to stop.
 * Throws DossierError `unsupported-file` for a line that never ends or a quotation mark that does not close.
 */
export async function eachRow(
  source: ByteSource,
  { encoding, delimiter }: TableForm,
  onRow: (cells: string[], line: number) => boolean,
): Promise<void> {
  const decoder = decoderOf(encoding);
  const rows = new RowCutter(delimiter, onRow);
  let rest = '';
  for await (const chunk of bytesOf(source)) {
    rest = rows.take(rest + shortZeros(decoder.decode(chunk, { stream: true })));
    if (rows.stopped) return;
    if (rest.length > LONGEST_ROW) {
      rest = shortZeros(rest);
      if (rest.length > LONGEST_ROW) throw endless(rows.line + 1, 'the line never ends');
    }
  }
  rest = rows.take(rest + decoder.decode());
  rows.end(rest);
}

/** A recorder that loses power leaves megabytes of zero bytes where the next rows would have come. */
function shortZeros(text: string): string {
  return text.includes('\0') ? text.replaceAll(/\0+/g, '\0') : text;
}

export interface RowOfText {
  /** Line on which the row begins, counted from 1. */
  line: number;
  cells: string[];
}

/** The first rows of a text that may end anywhere. Never throws: where quotation marks do not close, each line is a row. */
export function rowsOfText(text: string, delimiter: Delimiter, most: number): RowOfText[] {
  const rows: RowOfText[] = [];
  const keep = (cells: string[], line: number): boolean => rows.push({ line, cells }) < most;
  const byLines = (): RowOfText[] => {
    rows.length = 0;
    new RowCutter(delimiter, keep, true).take(`${text}\n`);
    return rows;
  };
  try {
    const cutter = new RowCutter(delimiter, keep);
    // What is still open at the end may be whole in the file.
    const rest = cutter.take(text);
    if (cutter.stopped || cutter.open) return rows.length > 1 ? rows : byLines();
    cutter.end(rest);
    return rows;
  } catch (error) {
    if (!(error instanceof DossierError)) throw error;
    return rows.length > 1 ? rows : byLines();
  }
}

/** Cuts text into lines and lines into cells; a quoted cell may hold line ends. */
class RowCutter {
  line = 0;
  stopped = false;
  /** A row whose quotation mark is still open, how much of it there is, and where it began. */
  #open: OpenRecord | undefined;
  #openLines = 0;
  #openLength = 0;
  #openAt = 0;

  constructor(
    readonly delimiter: Delimiter,
    readonly onRow: (cells: string[], line: number) => boolean,
    /** Whether a quotation mark that does not close within its line is no mark at all. */
    readonly byLines = false,
  ) {}

  /** A quoted cell began and has not ended. */
  get open(): boolean {
    return this.#open !== undefined;
  }

  /** Takes all whole lines and gives back the rest. */
  take(text: string): string {
    let start = 0;
    // CR alone ends lines in files that have no LF. At the very end it may be half of CR LF.
    const mark = text.includes('\n') ? '\n' : '\r';
    for (;;) {
      const end = text.indexOf(mark, start);
      if (end < 0 || this.stopped || (mark === '\r' && end === text.length - 1)) break;
      const stop = end > start && text.charCodeAt(end - 1) === 13 ? end - 1 : end;
      this.#lines(text.slice(start, stop));
      start = end + 1;
    }
    return text.slice(start);
  }

  end(rest: string): void {
    if (rest !== '') this.#lines(rest.endsWith('\r') ? rest.slice(0, -1) : rest);
    if (this.open && !this.stopped)
      throw endless(this.#openAt, 'a quotation mark is opened and never closed');
  }

  /** A lone CR within a line is a line end too. */
  #lines(text: string): void {
    if (text.includes('\r')) for (const part of text.split('\r')) this.#one(part);
    else this.#one(text);
  }

  #one(text: string): void {
    this.line += 1;
    if (this.stopped) return;
    if (this.#open !== undefined) {
      this.#goOn(this.#open, text);
      return;
    }
    if (isBlank(text)) return;
    if (this.byLines || !text.includes('"')) {
      if (!this.onRow(splitLine(text, this.delimiter), this.line)) this.stopped = true;
      return;
    }
    this.#openAt = this.line;
    this.#openLines = 0;
    this.#openLength = 0;
    this.#goOn(new OpenRecord(this.delimiter), text);
  }

  #goOn(record: OpenRecord, text: string): void {
    this.#openLines += 1;
    this.#openLength += text.length + 1;
    if (record.takes(text)) {
      this.#open = undefined;
      if (!this.onRow(record.fields, this.#openAt)) this.stopped = true;
      return;
    }
    this.#open = record;
    if (this.#openLength > LONGEST_QUOTED.characters || this.#openLines > LONGEST_QUOTED.lines)
      throw endless(this.#openAt, 'a quotation mark is opened and never closed');
  }
}

/** Most rows begin with a digit or a letter, and need no second look. */
function isBlank(text: string): boolean {
  return text.charCodeAt(0) > 32 && text.charCodeAt(0) < 128 ? false : text.trim() === '';
}

function endless(row: number, message: string): DossierError {
  return new DossierError('unsupported-file', message, {
    where: { row },
    fix: 'open the file in a spreadsheet and save it as CSV again',
  });
}

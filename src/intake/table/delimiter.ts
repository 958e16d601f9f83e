import type { LogMapping } from '../../core/model/evidence.js';

export type Delimiter = LogMapping['delimiter'];
export const DELIMITERS: readonly Delimiter[] = [',', ';', '\t', '|'];

/** Splits one line of CSV; quotes around a field are taken off, doubled quotes inside it are one (RFC 4180 §2). */
export function splitLine(line: string, delimiter: Delimiter): string[] {
  return splitRecord(line, delimiter) ?? line.split(delimiter);
}

/** The same; undefined when a quoted field is still open at the end, so that the next line belongs to it. */
function splitRecord(line: string, delimiter: Delimiter): string[] | undefined {
  if (!line.includes('"')) return line.split(delimiter);
  const record = new OpenRecord(delimiter);
  return record.takes(line) ? record.fields : undefined;
}

/** A record whose quoted field may go on over lines; each character is looked at once. */
export class OpenRecord {
  readonly fields: string[] = [];
  readonly #delimiter: Delimiter;
  #field = '';
  #quoted = false;
  // Kept instead of asked: a field of quotation marks would be looked through once for each of them.
  #blank = true;

  constructor(delimiter: Delimiter) {
    this.#delimiter = delimiter;
  }

  /** Takes the next line; true when the record ends with it. */
  takes(line: string): boolean {
    if (this.#quoted) this.#field += '\n';
    let field = this.#field;
    let quoted = this.#quoted;
    let blank = this.#blank;
    for (let i = 0; i < line.length; i++) {
      const c = line[i];
      if (quoted) {
        if (c !== '"') field += c;
        else if (line[i + 1] === '"') {
          field += '"';
          i += 1;
        } else {
          quoted = false;
          blank = field.trim() === '';
        }
      } else if (c === '"' && blank) {
        quoted = true;
        field = '';
      } else if (c === this.#delimiter) {
        this.fields.push(field);
        field = '';
        blank = true;
      } else {
        field += c;
        blank &&= c?.trim() === '';
      }
    }
    this.#field = field;
    this.#quoted = quoted;
    this.#blank = blank;
    if (!quoted) this.fields.push(field);
    return !quoted;
  }
}

/** Lines of a text as an editor counts them. The last is left out when it is empty. */
export function linesOf(text: string): string[] {
  const lines = text.split(/\r\n|\n|\r/);
  if (lines.at(-1) === '') lines.pop();
  return lines;
}

/**
 * The delimiter that cuts the most lines into the same number of columns, at least two.
 * Undefined when none does so for most of the lines.
 */
export function guessDelimiter(lines: readonly string[]): Delimiter | undefined {
  const full = lines.filter((line) => line.trim() !== '').slice(0, 200);
  let best: { delimiter: Delimiter; score: number } | undefined;
  for (const delimiter of DELIMITERS) {
    const counts = new Map<number, number>();
    for (const line of full) {
      const n = splitLine(line, delimiter).length;
      counts.set(n, (counts.get(n) ?? 0) + 1);
    }
    for (const [columns, rows] of counts) {
      if (columns < 2 || rows < full.length / 2) continue;
      const score = rows + Math.min(columns, 20) / 100;
      if (best === undefined || score > best.score) best = { delimiter, score };
    }
  }
  return best?.delimiter;
}

import { readDigits } from '../cells/numbers.js';

const SPACE = 32;
const QUOTE = 34;

/**
 * The cells of one line where they lie in the text of the file: for rows that are nothing but plain numbers and
 * words, which nearly all rows of a log are. Nothing is cut out of the text, so a long log leaves no rubbish.
 */
export class PlainCells {
  readonly #delimiter: number;
  readonly #decimal: number;
  /** Where each cell begins, and one past the delimiter that would end the last. */
  readonly #starts: Int32Array;
  #text = '';
  count = 0;

  /** @param most more cells than this are not looked at */
  constructor(form: { delimiter: string; decimal: '.' | ',' }, most: number) {
    this.#delimiter = form.delimiter.charCodeAt(0);
    this.#decimal = form.decimal.charCodeAt(0);
    this.#starts = new Int32Array(most + 1);
  }

  /** Finds the cells; false where a quotation mark or a control character wants a closer look, or cells are too many. */
  cut(text: string, start: number, end: number): boolean {
    this.#text = text;
    const starts = this.#starts;
    starts[0] = start;
    let count = 1;
    for (let i = start; i < end; i++) {
      const c = text.charCodeAt(i);
      if (c === this.#delimiter) {
        if (count >= starts.length - 1) return false;
        starts[count++] = i + 1;
      } else if (c < SPACE || c === QUOTE) return false;
    }
    starts[count] = end + 1;
    this.count = count;
    return true;
  }

  startOf(column: number): number {
    return this.#starts[column] ?? 0;
  }

  endOf(column: number): number {
    return (this.#starts[column + 1] ?? 0) - 1;
  }

  isEmpty(column: number): boolean {
    return this.startOf(column) === this.endOf(column);
  }

  /** Whether a cell is exactly this text. */
  says(column: number, words: string): boolean {
    const start = this.startOf(column);
    return this.endOf(column) - start === words.length && this.#text.startsWith(words, start);
  }

  /** A number of sign, digits and one decimal mark, the same as `readNumber` gives; NaN for all else. */
  number(column: number): number {
    const text = this.#text;
    let i = this.startOf(column);
    let end = this.endOf(column);
    while (i < end && text.charCodeAt(i) === SPACE) i += 1;
    while (end > i && text.charCodeAt(end - 1) === SPACE) end -= 1;
    const negative = text.charCodeAt(i) === 45;
    if (negative) i += 1;
    const value = readDigits(text, i, end, this.#decimal);
    return negative ? -value : value;
  }
}

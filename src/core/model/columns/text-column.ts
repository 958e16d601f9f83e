import type { ByteShelf } from './kept-blocks.js';
import type { NumberColumn } from './number-column.js';
import { NumberWriter } from './packed-numbers.js';

/** Texts in the order of a log's rows, read only; a list of strings is one. */
export interface TextColumn extends Iterable<string> {
  readonly length: number;
  at(index: number): string | undefined;
}

const LONGEST_TEXT = 200;
const MOST_WORDS = 10_000;

/** Texts as numbers of a list: a long log of few words stays small. */
class PackedTexts implements TextColumn {
  constructor(
    readonly codes: NumberColumn,
    readonly texts: readonly string[],
  ) {}

  get length(): number {
    return this.codes.length;
  }

  at(index: number): string | undefined {
    const code = this.codes.at(index);
    return code === undefined ? undefined : this.texts[code];
  }

  *[Symbol.iterator](): Generator<string> {
    for (const code of this.codes) yield this.texts[code] ?? '';
  }
}

/** Fills a column of texts row by row; control characters become marks, and what is too long is cut. */
export class TextWriter {
  readonly #codes: NumberWriter;
  readonly #texts: string[] = [];
  readonly #known = new Map<string, number>();
  #last = '';
  #lastCode = -1;

  /** @param shelf where blocks may lie besides memory */
  constructor(shelf?: ByteShelf) {
    this.#codes = new NumberWriter(shelf);
  }

  push(text: string): void {
    if (text !== this.#last || this.#lastCode < 0) {
      this.#lastCode = this.#codeOf(text);
      this.#last = this.#texts[this.#lastCode] ?? '';
    }
    this.#codes.push(this.#lastCode);
  }

  /** The text of the row before; undefined for the first. */
  get last(): string | undefined {
    return this.#lastCode < 0 ? undefined : this.#last;
  }

  /** The text of the row before once more. */
  pushLast(): void {
    this.#codes.push(this.#lastCode);
  }

  /** Empty where there is no such row. */
  at(index: number): string {
    return this.#texts[this.#codes.at(index)] ?? '';
  }

  set(index: number, text: string): void {
    this.#codes.set(index, this.#codeOf(text));
  }

  /** The column: the rows at these places in this order, or all as they stand. */
  finish(order?: Iterable<number>): TextColumn {
    return new PackedTexts(this.#codes.finish(order), this.#texts);
  }

  #codeOf(text: string): number {
    const short = text.length > LONGEST_TEXT ? text.slice(0, LONGEST_TEXT) : text;
    const code = this.#known.get(short);
    if (code !== undefined) return code;
    // A slice of a line keeps the whole chunk it came from alive; a copy does not.
    const own = Buffer.from(short, 'utf16le').toString('utf16le');
    this.#texts.push(own.replaceAll(/\p{Cc}/gu, '\ufffd'));
    if (this.#known.size < MOST_WORDS) this.#known.set(own, this.#texts.length - 1);
    return this.#texts.length - 1;
  }
}

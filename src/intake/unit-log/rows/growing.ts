type Numbers = Float64Array | Uint32Array;

const FIRST_ROOM = 1024;

/**
 * A column of numbers that grows as it fills. Where the number of rows can be foretold, `reserve` gives it room
 * at once: memory that is not yet written to costs nothing, and a long log never lies in memory twice.
 */
export class GrowingNumbers<T extends Numbers = Float64Array> {
  #items: T;
  #length = 0;

  constructor(readonly make: (length: number) => T) {
    this.#items = make(FIRST_ROOM);
  }

  static of(): GrowingNumbers<Float64Array> {
    return new GrowingNumbers((length) => new Float64Array(length));
  }

  static ofCounts(): GrowingNumbers<Uint32Array> {
    return new GrowingNumbers((length) => new Uint32Array(length));
  }

  push(value: number): void {
    if (this.#length === this.#items.length) this.reserve(Math.ceil(this.#length * 1.5));
    this.#items[this.#length++] = value;
  }

  reserve(room: number): void {
    if (room <= this.#items.length) return;
    const wider = this.make(room);
    wider.set(this.#items);
    this.#items = wider;
  }

  get length(): number {
    return this.#length;
  }

  at(index: number): number {
    return index < this.#length ? (this.#items[index] ?? Number.NaN) : Number.NaN;
  }

  set(index: number, value: number): void {
    if (index < this.#length) this.#items[index] = value;
  }

  /** The values at these places, in this order; all of them as they stand where no order is given. The column is empty afterwards. */
  pick(order?: Uint32Array): T {
    const items = this.#items;
    const length = this.#length;
    this.#items = this.make(0);
    this.#length = 0;
    if (order === undefined) return items.subarray(0, length) as T;
    const picked = this.make(order.length);
    for (let i = 0; i < order.length; i++) picked[i] = items[order[i] ?? 0] ?? Number.NaN;
    return picked;
  }
}

const LONGEST_TEXT = 200;
const MOST_WORDS = 10_000;

/** Texts of a column; equal texts are one string, so that a long log of few words stays small. */
export class GrowingTexts {
  readonly #codes = GrowingNumbers.ofCounts();
  readonly #texts: string[] = [];
  readonly #known = new Map<string, number>();
  #last = '';
  #lastCode = -1;

  push(text: string): void {
    if (text !== this.#last || this.#lastCode < 0) {
      this.#lastCode = this.#codeOf(text);
      this.#last = this.#texts[this.#lastCode] ?? '';
    }
    this.#codes.push(this.#lastCode);
  }

  reserve(room: number): void {
    this.#codes.reserve(room);
  }

  at(index: number): string {
    return this.#texts[this.#codes.at(index)] ?? '';
  }

  set(index: number, text: string): void {
    this.#codes.set(index, this.#codeOf(text));
  }

  pick(order?: Uint32Array): string[] {
    const codes = this.#codes.pick(order);
    const picked = new Array<string>(codes.length);
    for (let i = 0; i < codes.length; i++) picked[i] = this.#texts[codes[i] ?? 0] ?? '';
    return picked;
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

type Numbers = Float64Array | Uint32Array;

const BLOCK = 1 << 16;

/**
 * A column of numbers that grows by blocks, so that a long log never lies in memory twice: `pick` gives each
 * block up as soon as it is copied.
 */
export class GrowingNumbers<T extends Numbers = Float64Array> {
  #blocks: T[] = [];
  #length = 0;

  constructor(readonly make: (length: number) => T) {}

  static of(): GrowingNumbers<Float64Array> {
    return new GrowingNumbers((length) => new Float64Array(length));
  }

  static ofCounts(): GrowingNumbers<Uint32Array> {
    return new GrowingNumbers((length) => new Uint32Array(length));
  }

  push(value: number): void {
    const at = this.#length % BLOCK;
    if (at === 0) this.#blocks.push(this.make(BLOCK));
    const block = this.#blocks[this.#blocks.length - 1];
    if (block !== undefined) block[at] = value;
    this.#length += 1;
  }

  get length(): number {
    return this.#length;
  }

  at(index: number): number {
    return this.#blocks[Math.floor(index / BLOCK)]?.[index % BLOCK] ?? Number.NaN;
  }

  set(index: number, value: number): void {
    const block = this.#blocks[Math.floor(index / BLOCK)];
    if (block !== undefined && index < this.#length) block[index % BLOCK] = value;
  }

  /** The values at these places, in this order; all of them as they stand where no order is given. The column is empty afterwards. */
  pick(order?: Uint32Array): T {
    const picked = this.make(order?.length ?? this.#length);
    if (order === undefined) {
      for (let b = 0; b < this.#blocks.length; b++) {
        const block = this.#blocks[b];
        if (block !== undefined)
          picked.set(
            block.length + b * BLOCK > this.#length ? block.subarray(0, this.#length - b * BLOCK) : block,
            b * BLOCK,
          );
        this.#blocks[b] = this.make(0);
      }
    } else for (let i = 0; i < order.length; i++) picked[i] = this.at(order[i] ?? 0);
    this.#blocks = [];
    this.#length = 0;
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

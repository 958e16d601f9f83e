/** A number array that doubles as it fills: memory stays within twice of what the rows need. */
export class GrowingNumbers {
  #items = new Float64Array(1024);
  #length = 0;

  push(value: number): void {
    if (this.#length === this.#items.length) {
      const wider = new Float64Array(this.#items.length * 2);
      wider.set(this.#items);
      this.#items = wider;
    }
    this.#items[this.#length++] = value;
  }

  get length(): number {
    return this.#length;
  }

  at(index: number): number {
    return this.#items[index] ?? Number.NaN;
  }

  set(index: number, value: number): void {
    if (index < this.#length) this.#items[index] = value;
  }

  /** The values at these places, in this order. */
  pick(order: Uint32Array): Float64Array {
    const picked = new Float64Array(order.length);
    for (let i = 0; i < order.length; i++) picked[i] = this.#items[order[i] ?? 0] ?? Number.NaN;
    return picked;
  }
}

/** Texts of a column; equal texts are one string, so that a long log of few words stays small. */
export class GrowingTexts {
  readonly #items: string[] = [];
  readonly #known = new Map<string, string>();

  push(text: string): void {
    const short = text.length > 200 ? text.slice(0, 200) : text;
    let own = this.#known.get(short);
    if (own === undefined) {
      // A slice of a line keeps the whole chunk it came from alive; a copy does not.
      own = Buffer.from(short, 'utf16le').toString('utf16le');
      if (this.#known.size < 10_000) this.#known.set(own, own);
    }
    this.#items.push(own);
  }

  pick(order: Uint32Array): string[] {
    return Array.from(order, (i) => this.#items[i] ?? '');
  }
}

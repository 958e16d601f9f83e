import { type ByteShelf, KeptBlocks } from './kept-blocks.js';
import { unpackBlock, valueIn } from './number-block.js';
import { BLOCK, type NumberColumn, valuesOf } from './number-column.js';

/** A column in blocks of one to four bytes a value where the values allow it, without loss. */
export class PackedNumbers implements NumberColumn {
  readonly #blocks: KeptBlocks;

  constructor(
    blocks: KeptBlocks,
    readonly length: number,
  ) {
    this.#blocks = blocks;
  }

  static from(values: Iterable<number>, shelf?: ByteShelf): PackedNumbers {
    const writer = new NumberWriter(shelf);
    for (const value of values) writer.push(value);
    return writer.finish();
  }

  /** Where blocks of this column may lie besides memory. */
  get shelf(): ByteShelf | undefined {
    return this.#blocks.shelf;
  }

  at(index: number): number | undefined {
    const row = index < 0 ? this.length + index : index;
    const block = row >= 0 && row < this.length ? this.#blocks.at(Math.floor(row / BLOCK)) : undefined;
    return block === undefined ? undefined : valueIn(block, row % BLOCK);
  }

  read(from: number, into: Float64Array): number {
    const count = Math.max(0, Math.min(into.length, this.length - from));
    for (let done = 0; done < count; ) {
      const row = from + done;
      const block = this.#blocks.at(Math.floor(row / BLOCK));
      const part = Math.min(count - done, BLOCK - (row % BLOCK));
      if (block !== undefined) unpackBlock(block, row % BLOCK, part, into, done);
      done += part;
    }
    return count;
  }

  [Symbol.iterator](): Generator<number> {
    return valuesOf(this);
  }
}

/** Fills a column row by row; only the rows of the last block, and of one that is being changed, lie open. */
export class NumberWriter {
  #blocks: KeptBlocks;
  #last = new Float64Array(BLOCK);
  #filled = 0;
  /** The block that was changed last. */
  #open: { index: number; values: Float64Array } | undefined;

  /** @param shelf where blocks may lie besides memory */
  constructor(readonly shelf?: ByteShelf) {
    this.#blocks = new KeptBlocks(shelf);
  }

  get length(): number {
    return this.#blocks.count * BLOCK + this.#filled;
  }

  push(value: number): void {
    this.#last[this.#filled++] = value;
    if (this.#filled < BLOCK) return;
    this.#blocks.push(this.#last);
    this.#filled = 0;
  }

  /** NaN where there is no such row. */
  at(index: number): number {
    const block = Math.floor(index / BLOCK);
    if (index < 0 || index >= this.length) return Number.NaN;
    if (block === this.#blocks.count) return this.#last[index % BLOCK] ?? Number.NaN;
    if (block === this.#open?.index) return this.#open.values[index % BLOCK] ?? Number.NaN;
    const packed = this.#blocks.at(block);
    return packed === undefined ? Number.NaN : valueIn(packed, index % BLOCK);
  }

  set(index: number, value: number): void {
    if (index < 0 || index >= this.length) return;
    const block = Math.floor(index / BLOCK);
    if (block === this.#blocks.count) this.#last[index % BLOCK] = value;
    else this.#opened(block)[index % BLOCK] = value;
  }

  #opened(index: number): Float64Array {
    if (this.#open?.index === index) return this.#open.values;
    this.#close();
    const values = new Float64Array(BLOCK);
    const packed = this.#blocks.at(index);
    if (packed !== undefined) unpackBlock(packed, 0, BLOCK, values, 0);
    this.#open = { index, values };
    return values;
  }

  #close(): void {
    if (this.#open !== undefined) this.#blocks.replace(this.#open.index, this.#open.values);
    this.#open = undefined;
  }

  /**
   * The column: the rows at these places in this order, or all as they stand. The writer is empty afterwards.
   * @param order along the rows, forwards or backwards; a list may leap about
   */
  finish(order?: Iterable<number>): PackedNumbers {
    this.#close();
    const length = this.length;
    const blocks = this.#blocks;
    if (this.#filled > 0) blocks.push(this.#last.subarray(0, this.#filled));
    this.#blocks = new KeptBlocks(this.shelf);
    this.#filled = 0;
    if (order === undefined) return new PackedNumbers(blocks, length);
    const whole = new PackedNumbers(order instanceof Uint32Array ? blocks.inMemory() : blocks, length);
    for (const index of order) this.push(whole.at(index) ?? Number.NaN);
    return this.finish();
  }
}

/** Where the blocks of a column may lie besides memory: for columns that are made of it. */
export function shelfOf(column: NumberColumn): ByteShelf | undefined {
  return column instanceof PackedNumbers ? column.shelf : undefined;
}

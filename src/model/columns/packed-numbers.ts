import { type NumberBlock, packBlock, unpackBlock, valueIn } from './number-block.js';
import { BLOCK, type NumberColumn } from './number-column.js';

/** A column in blocks of one to four bytes a value where the values allow it, without loss. */
export class PackedNumbers implements NumberColumn {
  constructor(
    readonly blocks: readonly NumberBlock[],
    readonly length: number,
  ) {}

  static from(values: Iterable<number>): PackedNumbers {
    const writer = new NumberWriter();
    for (const value of values) writer.push(value);
    return writer.finish();
  }

  at(index: number): number | undefined {
    const row = index < 0 ? this.length + index : index;
    const block = row >= 0 && row < this.length ? this.blocks[Math.floor(row / BLOCK)] : undefined;
    return block === undefined ? undefined : valueIn(block, row % BLOCK);
  }

  read(from: number, into: Float64Array): number {
    const count = Math.max(0, Math.min(into.length, this.length - from));
    for (let done = 0; done < count; ) {
      const row = from + done;
      const block = this.blocks[Math.floor(row / BLOCK)];
      const part = Math.min(count - done, BLOCK - (row % BLOCK));
      if (block !== undefined) unpackBlock(block, row % BLOCK, part, into, done);
      done += part;
    }
    return count;
  }

  *[Symbol.iterator](): Generator<number> {
    const values = new Float64Array(BLOCK);
    for (let from = 0; from < this.length; from += BLOCK) {
      const count = this.read(from, values);
      for (let i = 0; i < count; i++) yield values[i] as number;
    }
  }
}

/** Fills a column row by row; only the rows of the last block, and of one that is being changed, lie open. */
export class NumberWriter {
  #blocks: NumberBlock[] = [];
  #last = new Float64Array(BLOCK);
  #filled = 0;
  /** The block that was changed last. */
  #open: { index: number; values: Float64Array } | undefined;

  get length(): number {
    return this.#blocks.length * BLOCK + this.#filled;
  }

  push(value: number): void {
    this.#last[this.#filled++] = value;
    if (this.#filled < BLOCK) return;
    this.#blocks.push(packBlock(this.#last));
    this.#filled = 0;
  }

  /** NaN where there is no such row. */
  at(index: number): number {
    const block = Math.floor(index / BLOCK);
    if (index < 0 || index >= this.length) return Number.NaN;
    if (block === this.#blocks.length) return this.#last[index % BLOCK] ?? Number.NaN;
    if (block === this.#open?.index) return this.#open.values[index % BLOCK] ?? Number.NaN;
    const packed = this.#blocks[block];
    return packed === undefined ? Number.NaN : valueIn(packed, index % BLOCK);
  }

  set(index: number, value: number): void {
    if (index < 0 || index >= this.length) return;
    const block = Math.floor(index / BLOCK);
    if (block === this.#blocks.length) this.#last[index % BLOCK] = value;
    else this.#opened(block)[index % BLOCK] = value;
  }

  #opened(index: number): Float64Array {
    if (this.#open?.index === index) return this.#open.values;
    this.#close();
    const values = new Float64Array(BLOCK);
    const packed = this.#blocks[index];
    if (packed !== undefined) unpackBlock(packed, 0, BLOCK, values, 0);
    this.#open = { index, values };
    return values;
  }

  #close(): void {
    if (this.#open !== undefined) this.#blocks[this.#open.index] = packBlock(this.#open.values);
    this.#open = undefined;
  }

  /** The column: the rows at these places in this order, or all as they stand. The writer is empty afterwards. */
  finish(order?: Uint32Array): PackedNumbers {
    this.#close();
    const length = this.length;
    const blocks = this.#blocks;
    if (this.#filled > 0) blocks.push(packBlock(this.#last.subarray(0, this.#filled)));
    this.#blocks = [];
    this.#filled = 0;
    const whole = new PackedNumbers(blocks, length);
    if (order === undefined) return whole;
    for (const index of order) this.push(whole.at(index) ?? Number.NaN);
    return this.finish();
  }
}

/** The column with some of its rows not known. */
export function withoutRows(column: NumberColumn, rows: Iterable<number>): NumberColumn {
  const writer = new NumberWriter();
  for (const value of column) writer.push(value);
  for (const row of rows) writer.set(row, Number.NaN);
  return writer.finish();
}

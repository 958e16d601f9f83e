import { type Form, type NumberBlock, packBlock } from './number-block.js';

/** Keeps bytes outside the memory of the program and gives them back. */
export interface ByteShelf {
  /** Where the bytes lie from now on; undefined when they are to stay in memory. */
  put(bytes: Uint8Array): number | undefined;
  /** Fills `into` with the bytes that lie there. */
  get(at: number, into: Uint8Array): void;
}

/** A block whose array lies on a shelf. */
interface Shelved {
  is: 'shelved';
  at: number;
  length: number;
  bytesEach: number;
  /** As in the block itself; without a form the values are as they are. */
  form?: Form;
  base: number;
}

type KeptBlock = NumberBlock | Shelved;

const sizeOf = ({ length, bytesEach }: Shelved): number => length * bytesEach;

/**
 * The blocks of one column, those on the shelf that it takes. One block is read back at a time and holds until the
 * next one is: a column is read along its rows.
 */
export class KeptBlocks {
  #kept: KeptBlock[] = [];
  #near = -1;
  #nearBlock: NumberBlock | undefined;
  #room = new ArrayBuffer(0);

  constructor(readonly shelf?: ByteShelf) {}

  get count(): number {
    return this.#kept.length;
  }

  push(values: Float64Array): void {
    this.#kept.push(this.#keep(packBlock(values)));
  }

  replace(index: number, values: Float64Array): void {
    this.#kept[index] = this.#keep(packBlock(values));
    if (index === this.#near) this.#near = -1;
  }

  /** Good until another block of this column is asked for. */
  at(index: number): NumberBlock | undefined {
    const kept = this.#kept[index];
    if (kept?.is !== 'shelved') return kept;
    if (index === this.#near) return this.#nearBlock;
    this.#near = index;
    if (this.#room.byteLength < sizeOf(kept)) this.#room = new ArrayBuffer(sizeOf(kept));
    this.#nearBlock = this.#fetch(kept, this.#room);
    return this.#nearBlock;
  }

  /** The same blocks, all in memory: for reading rows that lie far apart one after the other. */
  inMemory(): KeptBlocks {
    const blocks = new KeptBlocks();
    blocks.#kept = this.#kept.map((kept) =>
      kept.is === 'shelved' ? this.#fetch(kept, new ArrayBuffer(sizeOf(kept))) : kept,
    );
    return blocks;
  }

  #keep(block: NumberBlock): KeptBlock {
    if (block.is === 'even') return block;
    const array = block.is === 'offsets' ? block.offsets : block.values;
    const at = this.shelf?.put(new Uint8Array(array.buffer, array.byteOffset, array.byteLength));
    if (at === undefined) return block;
    const shelved = { is: 'shelved', at, length: array.length, bytesEach: array.BYTES_PER_ELEMENT } as const;
    return block.is === 'offsets'
      ? { ...shelved, form: block.form, base: block.base }
      : { ...shelved, base: 0 };
  }

  #fetch({ at, length, bytesEach, form, base }: Shelved, buffer: ArrayBuffer): NumberBlock {
    this.shelf?.get(at, new Uint8Array(buffer, 0, length * bytesEach));
    if (form === undefined) return { is: 'as-they-are', values: new Float64Array(buffer, 0, length) };
    const Offsets = bytesEach === 1 ? Uint8Array : bytesEach === 2 ? Uint16Array : Uint32Array;
    return { is: 'offsets', form, base, offsets: new Offsets(buffer, 0, length) };
  }
}

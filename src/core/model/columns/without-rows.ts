import { type NumberColumn, readColumn, valuesOf } from './number-column.js';

/** The column with some of its rows not known. */
export function withoutRows(column: NumberColumn, rows: readonly number[]): NumberColumn {
  return new WithoutRows(column, rows);
}

class WithoutRows implements NumberColumn {
  readonly #column: NumberColumn;
  /** In ascending order. */
  readonly #rows: Uint32Array;

  constructor(column: NumberColumn, rows: readonly number[]) {
    this.#column = column;
    this.#rows = Uint32Array.from(rows).sort();
  }

  get length(): number {
    return this.#column.length;
  }

  at(index: number): number | undefined {
    const value = this.#column.at(index);
    if (value === undefined) return undefined;
    const row = index < 0 ? this.length + index : index;
    return this.#rows[this.#firstFrom(row)] === row ? Number.NaN : value;
  }

  read(from: number, into: Float64Array): number {
    const count = readColumn(this.#column, from, into);
    const rows = this.#rows;
    for (let i = this.#firstFrom(from); (rows[i] ?? Number.POSITIVE_INFINITY) < from + count; i++)
      into[(rows[i] as number) - from] = Number.NaN;
    return count;
  }

  [Symbol.iterator](): Generator<number> {
    return valuesOf(this);
  }

  #firstFrom(row: number): number {
    let [low, high] = [0, this.#rows.length];
    while (low < high) {
      const middle = (low + high) >>> 1;
      if ((this.#rows[middle] as number) < row) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}

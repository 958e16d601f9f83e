/** Numbers in the order of a log's rows, read only. A Float64Array is one; `PackedNumbers` takes less room. */
export interface NumberColumn extends Iterable<number> {
  readonly length: number;
  /** As the method of an array: −1 is the last. */
  at(index: number): number | undefined;
  /** Writes the values from row `from` on into `into`, as many as fit and are there; gives back how many. */
  read?(from: number, into: Float64Array): number;
}

/** Rows that columns are packed and read by. */
export const BLOCK = 4096;

/** Writes the values of any column from row `from` on into `into`; gives back how many. */
export function readColumn(column: NumberColumn, from: number, into: Float64Array): number {
  if (column instanceof Float64Array) {
    const part = column.subarray(from, from + into.length);
    into.set(part);
    return part.length;
  }
  if (column.read !== undefined) return column.read(from, into);
  const count = Math.max(0, Math.min(into.length, column.length - from));
  for (let i = 0; i < count; i++) into[i] = column.at(from + i) ?? Number.NaN;
  return count;
}

/** The values of a column one by one, read block by block. */
export function* valuesOf(column: NumberColumn): Generator<number> {
  const values = new Float64Array(Math.min(BLOCK, column.length));
  for (let from = 0; from < column.length; from += BLOCK) {
    const count = readColumn(column, from, values);
    for (let i = 0; i < count; i++) yield values[i] as number;
  }
}

/** Hands over columns of one length block by block; the arrays are the same ones each time. */
export function eachBlock(
  columns: readonly NumberColumn[],
  onBlock: (values: readonly Float64Array[], from: number, count: number) => void,
): void {
  const length = columns[0]?.length ?? 0;
  const values = columns.map(() => new Float64Array(Math.min(BLOCK, length)));
  for (let from = 0; from < length; from += BLOCK) {
    const count = Math.min(BLOCK, length - from);
    columns.forEach((column, i) => {
      const block = values[i] as Float64Array;
      // A column that is shorter than the others has no values there.
      block.fill(Number.NaN, readColumn(column, from, block));
    });
    onBlock(values, from, count);
  }
}

import { operationIn } from '../../../core/model/operation.js';

/** Fewer cells show no column of operation. */
const LEAST_CELLS = 5;

/**
 * The one column whose cells all say what a unit does, such as cool, null and defrost, whatever its heading; at least
 * two of them must stand in it. Undefined where there is none, or more than one.
 */
export function operationColumn(
  sample: readonly (readonly string[])[],
  isFree: (column: number) => boolean,
): number | undefined {
  const width = Math.max(0, ...sample.slice(0, LEAST_CELLS).map((row) => row.length));
  const [only, other] = Array.from({ length: width }, (_, column) => column).filter(
    (column) => isFree(column) && saysOperation(sample, column),
  );
  return other === undefined ? only : undefined;
}

function saysOperation(sample: readonly (readonly string[])[], column: number): boolean {
  const kinds = new Set<string>();
  let filled = 0;
  for (const row of sample) {
    const cell = (row[column] ?? '').trim();
    if (cell === '') continue;
    const is = operationIn(cell);
    if (is === undefined) return false;
    kinds.add(is);
    filled += 1;
  }
  return filled >= LEAST_CELLS && kinds.size >= 2;
}

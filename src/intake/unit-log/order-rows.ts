import type { GrowingNumbers } from './growing.js';

/** A row whose wall time happened twice; `index` is its place in the file. */
export interface FoldedRow {
  index: number;
  earlier: number;
  later: number;
}

/**
 * Decides by the neighbours which of two moments each folded row means, and writes it to `times`: read in
 * the direction in which the log runs, a row may not go back behind the one before it.
 */
export function resolveFolds(
  times: GrowingNumbers,
  folded: readonly FoldedRow[],
): { index: number; which: 'earlier' | 'later' }[] {
  const backwards = times.length > 1 && times.at(times.length - 1) < times.at(0);
  const inOrder = backwards ? folded.toReversed() : folded;
  const resolved = inOrder.map(({ index, earlier, later }) => {
    const before = backwards ? index + 1 : index - 1;
    const which = before >= 0 && before < times.length && times.at(before) >= earlier ? 'later' : 'earlier';
    times.set(index, which === 'later' ? later : earlier);
    return { index, which } as const;
  });
  return backwards ? resolved.reverse() : resolved;
}

/** The rows in ascending time, each time once (the row that comes first in the file), and those that repeat one. */
export function sortedOnce(times: GrowingNumbers): { order: Uint32Array; repeated: number[] } {
  const order = new Uint32Array(times.length);
  let sorted = true;
  for (let i = 0; i < order.length; i++) {
    order[i] = i;
    if (i > 0 && times.at(i) < times.at(i - 1)) sorted = false;
  }
  if (!sorted) order.sort((a, b) => times.at(a) - times.at(b) || a - b);
  const repeated: number[] = [];
  let kept = 0;
  for (const index of order) {
    const before = order[kept - 1];
    if (kept > 0 && before !== undefined && times.at(before) === times.at(index)) repeated.push(index);
    else order[kept++] = index;
  }
  return { order: order.slice(0, kept), repeated };
}

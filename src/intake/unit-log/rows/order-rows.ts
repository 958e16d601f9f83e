import type { NumberWriter } from '../../../model/columns/packed-numbers.js';

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
  times: NumberWriter,
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

/**
 * The places of the rows in ascending time, each time once (the row that comes first in the file); undefined
 * when they stand so already. Every row that repeats a time is told with the row that keeps its place.
 */
export function sortedOnce(
  written: NumberWriter,
  onRepeat: (index: number, kept: number) => void,
): Uint32Array | undefined {
  let up = true;
  let down = true;
  for (let i = 1; i < written.length && (up || down); i++) {
    const step = written.at(i) - written.at(i - 1);
    if (step <= 0) up = false;
    if (step >= 0) down = false;
  }
  if (up) return undefined;
  const times = Float64Array.from({ length: written.length }, (_, i) => written.at(i));
  const order = new Uint32Array(times.length);
  for (let i = 0; i < order.length; i++) order[i] = down ? order.length - 1 - i : i;
  if (down) return order;
  order.sort((a, b) => (times[a] ?? 0) - (times[b] ?? 0) || a - b);
  let kept = 0;
  for (const index of order) {
    const before = order[kept - 1];
    if (before !== undefined && times[before] === times[index]) onRepeat(index, before);
    else order[kept++] = index;
  }
  return order.slice(0, kept);
}

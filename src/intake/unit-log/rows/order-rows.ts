import { NumberWriter } from '../../../core/model/columns/packed-numbers.js';

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
 * Only of a file whose times go back and forth it is a list: a log that runs one way is read along its rows.
 */
export function sortedOnce(
  written: NumberWriter,
  onRepeat: (index: number, kept: number) => void,
): Iterable<number> | undefined {
  const runs = directionOf(written);
  if (runs === 'up') return undefined;
  return runs === 'to-and-fro' ? sorted(written, onRepeat) : oneWay(written, runs === 'not-up', onRepeat);
}

function directionOf(written: NumberWriter): 'up' | 'not-down' | 'not-up' | 'to-and-fro' {
  let [up, same, down] = [false, false, false];
  let before = written.at(0);
  for (let i = 1; i < written.length && !(up && down); i++) {
    const at = written.at(i);
    if (at > before) up = true;
    else if (at < before) down = true;
    else same = true;
    before = at;
  }
  if (up && down) return 'to-and-fro';
  if (down) return 'not-up';
  return same ? 'not-down' : 'up';
}

/** Along the rows, forwards or backwards, without those that repeat a time. */
function oneWay(
  written: NumberWriter,
  backwards: boolean,
  onRepeat: (index: number, kept: number) => void,
): Iterable<number> {
  const { length } = written;
  const row = (place: number) => (backwards ? length - 1 - place : place);
  const left = new NumberWriter(written.shelf);
  for (let place = 0; place < length; ) {
    let last = place;
    while (last + 1 < length && written.at(row(last + 1)) === written.at(row(place))) last += 1;
    const kept = Math.min(row(place), row(last));
    for (let i = kept + 1; i <= Math.max(row(place), row(last)); i++) onRepeat(i, kept);
    for (; place <= last; place++) if (row(place) !== kept) left.push(row(place));
  }
  const leftOut = left.finish();
  return {
    *[Symbol.iterator]() {
      let next = 0;
      for (let place = 0; place < length; place++)
        if (row(place) === leftOut.at(next)) next += 1;
        else yield row(place);
    },
  };
}

function sorted(written: NumberWriter, onRepeat: (index: number, kept: number) => void): Uint32Array {
  const times = Float64Array.from({ length: written.length }, (_, i) => written.at(i));
  const order = Uint32Array.from(times.keys());
  order.sort((a, b) => (times[a] ?? 0) - (times[b] ?? 0) || a - b);
  let kept = 0;
  for (const index of order) {
    const before = order[kept - 1];
    if (before !== undefined && times[before] === times[index]) onRepeat(index, before);
    else order[kept++] = index;
  }
  return order.slice(0, kept);
}

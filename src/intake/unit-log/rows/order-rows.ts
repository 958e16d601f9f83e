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
  times: number[],
  folded: readonly FoldedRow[],
): { index: number; which: 'earlier' | 'later' }[] {
  const backwards = (times.at(-1) ?? 0) < (times[0] ?? 0);
  const inOrder = backwards ? folded.toReversed() : folded;
  const resolved = inOrder.map(({ index, earlier, later }) => {
    const before = times[backwards ? index + 1 : index - 1];
    const which = before !== undefined && before >= earlier ? 'later' : 'earlier';
    times[index] = which === 'later' ? later : earlier;
    return { index, which } as const;
  });
  return backwards ? resolved.reverse() : resolved;
}

/**
 * The places of the rows in ascending time, each time once (the row that comes first in the file). Every row that
 * repeats a time is told with the row that keeps its place.
 */
export function sortedOnce(
  times: readonly number[],
  onRepeat: (index: number, kept: number) => void,
): number[] {
  const order = times.map((_, index) => index).sort((a, b) => (times[a] ?? 0) - (times[b] ?? 0));
  let before = -1;
  return order.filter((index) => {
    const repeats = times[before] === times[index];
    if (repeats) onRepeat(index, before);
    else before = index;
    return !repeats;
  });
}

/** The least step back that is told: clocks that are set by a network are put back by less. */
const STEP_BACK_MS = 1_000;

/**
 * The places in the file at which a log steps back in time, read in the direction in
 * which most of its rows run. Rows that repeat another are passed over: a download may hold a stretch twice.
 */
export function stepsBack(
  times: readonly number[],
  repeats: ReadonlySet<number>,
): { index: number; from: number; to: number }[] {
  const steps: { index: number; from: number; to: number }[] = [];
  let before: number | undefined;
  let down = 0;
  let moves = 0;
  times.forEach((at, index) => {
    if (repeats.has(index)) return;
    const from = before ?? at;
    const step = at - from;
    before = at;
    if (step === 0) return;
    moves += 1;
    if (step < 0) down += 1;
    if (Math.abs(step) >= STEP_BACK_MS) steps.push({ index, from, to: at });
  });
  const sign = down > moves / 2 ? 1 : -1;
  return steps.filter(({ from, to }) => (to - from) * sign > 0);
}

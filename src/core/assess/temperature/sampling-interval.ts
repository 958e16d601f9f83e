import { eachBlock, type NumberColumn } from '../../model/columns/number-column.js';

/** Samples farther apart than this many median steps are not joined. */
const STEPS = 3;
/** But half an hour is always joined. */
const LEAST_SECONDS = 30 * 60;

type Steps = { medianStepSeconds: number; gapLimitSeconds: number };

/** A column does not change, and many ask about the same one. */
const known = new WeakMap<NumberColumn, Steps>();

/** Median time between neighbouring rows and the longest step over which they are joined: max(3 × median, 30 min). */
export function gapLimit(times: NumberColumn): Steps {
  const found = known.get(times);
  if (found !== undefined) return found;
  const medianStepSeconds = medianStep(times) / 1000;
  const steps = { medianStepSeconds, gapLimitSeconds: Math.max(STEPS * medianStepSeconds, LEAST_SECONDS) };
  known.set(times, steps);
  return steps;
}

/** Milliseconds; 0 with fewer than two rows. Logs have few different steps in long runs, so runs are counted, not rows sorted. */
function medianStep(times: NumberColumn): number {
  const counts = new Map<number, number>();
  let step = Number.NaN;
  let run = 0;
  let before = Number.NaN;
  eachBlock([times], ([block = new Float64Array()], from, count) => {
    for (let i = 0; i < count; i++) {
      const at = block[i] as number;
      const next = at - before;
      before = at;
      if (from + i === 0) continue;
      if (next !== step) {
        if (run > 0) counts.set(step, (counts.get(step) ?? 0) + run);
        step = next;
        run = 0;
      }
      run++;
    }
  });
  if (run === 0) return 0;
  counts.set(step, (counts.get(step) ?? 0) + run);
  const sorted = [...counts].sort(([a], [b]) => a - b);
  const total = times.length - 1;
  return (nth(sorted, (total - 1) >>> 1) + nth(sorted, total >>> 1)) / 2;
}

/** The step at an index of the sorted list that the counts stand for. */
function nth(sorted: readonly (readonly [step: number, count: number])[], index: number): number {
  let before = 0;
  for (const [step, count] of sorted) {
    before += count;
    if (index < before) return step;
  }
  return 0;
}

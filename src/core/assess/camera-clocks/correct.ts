import type { ClockPoint } from '../../model/time.js';
import { shownAt } from './points.js';

export interface Correction {
  /** Seconds to add to what the clock said. */
  addSeconds: number;
  uncertaintySeconds: number;
  /** Ledger entry of the comparison used; between two comparisons, of the nearer one. */
  seq: number;
}

/**
 * The correction of a clock reading: interpolated in a straight line between two comparisons; before the first and
 * after the last comparison it stays constant, since nothing shows how the clock continued.
 * @param points comparisons in the order of time, as `cameraPoints` and `logPoints` give them
 * @param clock what the clock said, milliseconds UTC
 */
export function correctionAt(points: readonly ClockPoint[], clock: number): Correction | undefined {
  const next = points.findIndex((point) => shownAt(point) >= clock);
  const after = next < 0 ? undefined : points[next];
  const before = next < 0 ? points.at(-1) : points[next - 1];
  if (before === undefined || after === undefined) {
    const only = before ?? after;
    return only === undefined
      ? undefined
      : { addSeconds: only.addSeconds, uncertaintySeconds: only.uncertaintySeconds, seq: only.seq };
  }
  const share = (clock - shownAt(before)) / (shownAt(after) - shownAt(before));
  return {
    addSeconds: before.addSeconds + share * (after.addSeconds - before.addSeconds),
    uncertaintySeconds: Math.max(before.uncertaintySeconds, after.uncertaintySeconds),
    seq: share < 0.5 ? before.seq : after.seq,
  };
}

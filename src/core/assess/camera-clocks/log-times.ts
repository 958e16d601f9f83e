import type { ClockPoint } from '../../model/time.js';
import type { UnitLog } from '../../model/unit-log.js';
import { correctionAt } from './correct.js';
import { median } from './statistics.js';

/** A log whose times are corrected by the comparisons of its clock. The order of the rows stays. */
export function correctLog<L extends UnitLog>(log: L, points: readonly ClockPoint[]): L {
  if (points.length === 0) return log;
  return {
    ...log,
    times: log.times.map((clock) =>
      Math.round(clock + (correctionAt(points, clock)?.addSeconds ?? 0) * 1000),
    ),
    addedSeconds: log.addedSeconds + median(points.map(({ addSeconds }) => addSeconds)),
    clock: points,
  };
}

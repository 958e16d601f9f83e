import { NumberWriter, shelfOf } from '../../model/columns/packed-numbers.js';
import type { ClockPoint } from '../../model/time.js';
import type { UnitLog } from '../../model/unit-log.js';
import { correctionAt } from './correct.js';
import { clockAt } from './points.js';
import { median } from './statistics.js';

/** A log read by its own clock, with the times that the comparisons make of it. The order of the rows stays. */
export function correctLog<L extends UnitLog>(log: L, points: readonly ClockPoint[]): L {
  if (points.length === 0) return log;
  const times = new NumberWriter(shelfOf(log.times));
  const [first] = points;
  const last = points.at(-1);
  for (const clock of log.times) {
    // Most rows lie before the first comparison or after the last.
    const flat =
      first !== undefined && clock <= clockAt(first)
        ? first
        : last !== undefined && clock >= clockAt(last)
          ? last
          : correctionAt(points, clock);
    times.push(Math.round(clock + (flat?.addSeconds ?? 0) * 1000));
  }
  return {
    ...log,
    times: times.finish(),
    addedSeconds: log.addedSeconds + median(points.map(({ addSeconds }) => addSeconds)),
    clock: points,
  };
}

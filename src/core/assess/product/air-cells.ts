import type { Channel } from '../../model/evidence.js';
import type { TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { type SegmentSink, walkSegments } from '../temperature/segments.js';

/** Cells are no longer than this, which is short beside the shortest time constant, and no more than so many. */
const LONGEST_CELL = 15 * 60_000;
const MOST_CELLS = 3000;
const FEWEST_CELLS = 48;

/** A window in equal cells. */
export interface Cells {
  window: TimeRange;
  count: number;
  /** Length of one, seconds. */
  seconds: number;
}

export function cellsOf(window: TimeRange): Cells {
  const length = window.to - window.from;
  const count = Math.min(MOST_CELLS, Math.max(FEWEST_CELLS, Math.ceil(length / LONGEST_CELL)));
  return { window, count, seconds: length / count / 1000 };
}

/**
 * Mean air of each cell, °C: exact for the straight lines between samples. Over unknown time the air goes straight to
 * the next sample; before the first and after the last it stays.
 */
export function airInCells(
  log: UnitLog,
  channel: Channel,
  { window, count }: Cells,
  gapLimitSeconds: number,
): Float64Array {
  const means = new Float64Array(count);
  const length = (window.to - window.from) / count;
  let [lastAt, lastAir] = [window.from, Number.NaN];
  const add = (t0: number, v0: number, t1: number, v1: number) => {
    const slope = t1 === t0 ? 0 : (v1 - v0) / (t1 - t0);
    // Counted, not divided anew: rounding could find the cell before at its very end.
    let cell = Math.max(0, Math.min(count - 1, Math.floor((t0 - window.from) / length)));
    for (let from = t0; from < t1; cell += 1) {
      const to = cell >= count - 1 ? t1 : Math.min(t1, window.from + (cell + 1) * length);
      if (to <= from) continue;
      const middle = v0 + slope * ((from + to) / 2 - t0);
      means[cell] = (means[cell] ?? 0) + (middle * (to - from)) / length;
      from = to;
    }
  };
  const bridge = (to: number, air: number) => {
    if (to > lastAt) add(lastAt, Number.isNaN(lastAir) ? air : lastAir, to, air);
  };
  const sink: SegmentSink = {
    segment(t0, v0, t1, v1) {
      bridge(t0, v0);
      add(t0, v0, t1, v1);
      [lastAt, lastAir] = [t1, v1];
    },
    isolatedSample(t, v) {
      bridge(t, v);
      [lastAt, lastAir] = [t, v];
    },
    unknown() {},
  };
  walkSegments(log.times, log.channels[channel] ?? new Float64Array(), window, gapLimitSeconds * 1000, sink);
  if (lastAt < window.to && !Number.isNaN(lastAir)) add(lastAt, lastAir, window.to, lastAir);
  return means;
}

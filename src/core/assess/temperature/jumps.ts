import type { Channel } from '../../model/evidence.js';
import type { Jump, TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { PROBES } from './channels.js';

/** Air in a loaded box does not go this far from both its neighbours and back within two steps. Kelvin; convention of this project. */
export const JUMP_KELVIN = 15;
/** The neighbours of a jump agree within this, kelvin. */
const NEIGHBOURS_AGREE = 5;
/** And are no farther from it than this, milliseconds: over longer steps much can happen. */
const NEIGHBOURS_WITHIN = 20 * 60_000;

/** A defrost can heat the air at the sensor this fast: what the log itself calls one is no fault. */
const DEFROST = /defrost|^on$|^yes$|^1$|^true$|^active$/i;

const HELD: readonly Channel[] = ['return-air', 'supply-air', ...PROBES, 'ambient'];

export interface CleanLog {
  /** The same log, with jumps as unknown values; the very same object when there are none. */
  log: UnitLog;
  jumps: Jump[];
}

/**
 * Leaves out single samples that no air can have given: more than 15 K from both neighbours on the same side, while
 * these agree within 5 K and lie within 20 minutes. Set points and rows in a logged defrost are never left out.
 * Every jump is listed with its row, so that a reader can put it back.
 */
export function withoutJumps(log: UnitLog): CleanLog {
  const jumps: Jump[] = [];
  const channels = { ...log.channels };
  for (const channel of HELD) {
    const values = log.channels[channel];
    if (values === undefined) continue;
    const rows = jumpRows(log, values);
    if (rows.length === 0) continue;
    const kept = values.slice();
    for (const { index, kelvin } of rows) {
      jumps.push({
        channel,
        at: log.times[index] as number,
        row: log.rows[index] as number,
        celsius: values[index] as number,
        kelvin,
      });
      kept[index] = Number.NaN;
    }
    channels[channel] = kept;
  }
  if (jumps.length === 0) return { log, jumps };
  return { log: { ...log, channels }, jumps: jumps.sort((a, b) => a.at - b.at) };
}

/** Jumps within a window. */
export function jumpsIn(jumps: readonly Jump[], { from, to }: TimeRange): Jump[] {
  return jumps.filter((jump) => jump.at >= from && jump.at <= to);
}

function jumpRows(log: UnitLog, values: Float64Array): { index: number; kelvin: number }[] {
  const found: { index: number; kelvin: number }[] = [];
  // The two samples before, by row and value.
  let [before, here] = [-1, -1];
  let [a, b] = [Number.NaN, Number.NaN];
  values.forEach((after, next) => {
    if (Number.isNaN(after)) return;
    const fromBoth = Math.min(Math.abs(b - a), Math.abs(b - after));
    if (fromBoth > JUMP_KELVIN && Math.abs(after - a) <= NEIGHBOURS_AGREE) {
      const rows = [before, here, next] as const;
      if (nearInTime(log, rows) && !rows.some((row) => defrosts(log, row)))
        found.push({ index: here, kelvin: fromBoth });
    }
    before = here;
    here = next;
    a = b;
    b = after;
  });
  return found;
}

function nearInTime({ times }: UnitLog, [before, here, next]: readonly [number, number, number]): boolean {
  const at = times[here] as number;
  return (
    at - (times[before] as number) <= NEIGHBOURS_WITHIN && (times[next] as number) - at <= NEIGHBOURS_WITHIN
  );
}

function defrosts(log: UnitLog, row: number): boolean {
  return (
    DEFROST.test(log.states.defrost?.[row]?.trim() ?? '') ||
    (log.states.mode?.[row]?.toLowerCase().includes('defrost') ?? false)
  );
}

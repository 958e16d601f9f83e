import type { Channel } from '../../model/evidence.js';
import { operationIn } from '../../model/operation.js';
import type { Jump, TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { PROBES } from './channels.js';

/**
 * Air in a loaded trailer does not move this far from both neighbours and back within two steps. Kelvin; convention
 * of this project.
 */
export const JUMP_KELVIN = 15;
/** The neighbours of a jump agree within this, kelvin. */
const NEIGHBOURS_AGREE = 5;
/** The neighbours are no farther away than this, milliseconds: over longer steps the air can change. */
const NEIGHBOURS_WITHIN = 20 * 60_000;

/** A defrost can heat the sensor's air this fast: a value in a logged defrost is no fault. */
const DEFROST = /defrost|^on$|^yes$|^1$|^true$|^active$/i;

const HELD: readonly Channel[] = ['return-air', 'supply-air', ...PROBES, 'ambient'];

export interface CleanLog {
  /** The log with jumps as unknown values; the same object when there are none. */
  log: UnitLog;
  jumps: Jump[];
}

/**
 * Excludes single samples that are physically implausible: more than 15 K from both neighbours on the same side,
 * while these agree within 5 K and are within 20 minutes. Set points and rows in a logged defrost are never
 * excluded. Every jump is listed with its row, so that a reader can put it back.
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
  // Row and value of the two samples before.
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
    (log.states.mode?.[row]?.toLowerCase().includes('defrost') ?? false) ||
    operationIn(log.states.operation?.[row] ?? '') === 'defrost'
  );
}

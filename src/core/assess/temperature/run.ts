import type { Line } from '../../model/delivery.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { RunMode, RunModeResult, TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { firstIndexFrom } from './segments.js';

/**
 * Usual swing of the controlled air to either side of the set point, kelvin, outside defrosts and open doors.
 * Common practice, no source: a continuous unit throttles around the set point, a start-stop unit lets the air rise
 * before it starts again.
 */
export const USUAL_SWING = { continuous: 1.5, 'start-stop': 4 } as const;

/** Run mode instructed by the lines, run mode logged and its runs, and the usual swing of that mode. */
export function runModeOf(
  log: UnitLog,
  lines: readonly Line[],
  window: TimeRange,
  gapLimitSeconds: number,
): RunModeResult | undefined {
  const asks = [...new Set(lines.flatMap((line) => line.instruction?.run ?? []))];
  const asked = asks.length === 1 ? asks[0] : undefined;
  const runs = modeRuns(log, window, gapLimitSeconds);
  const seconds = (mode: RunMode) =>
    runs.filter((run) => run.mode === mode).reduce((sum, { from, to }) => sum + to - from, 0) / 1000;
  const logged =
    runs.length === 0
      ? undefined
      : seconds('continuous') >= seconds('start-stop')
        ? 'continuous'
        : 'start-stop';
  const mode = logged ?? asked;
  if (mode === undefined) return undefined;
  const other = asked === 'continuous' ? 'start-stop' : 'continuous';
  return {
    ...omitUndefined({
      asked,
      logged,
      runs: runs.length === 0 ? undefined : runs,
      otherSeconds: asked === undefined || runs.length === 0 ? undefined : seconds(other),
    }),
    usualSwingKelvin: USUAL_SWING[mode],
  };
}

/**
 * The run modes that the log states over the window, in runs. A row's mode holds until the next row that states one;
 * rows of a defrost, or that state none, end no run. A gap does.
 */
function modeRuns(
  log: UnitLog,
  window: TimeRange,
  gapLimitSeconds: number,
): (TimeRange & { mode: RunMode })[] {
  if (log.states.mode === undefined && log.states.operation === undefined) return [];
  const known = new Map<string, RunMode | undefined>();
  const read = (text: string) => {
    if (!known.has(text)) known.set(text, readMode(text));
    return known.get(text);
  };
  const runs: (TimeRange & { mode: RunMode })[] = [];
  let open: (TimeRange & { mode: RunMode }) | undefined;
  let last = Number.NaN;
  for (let i = Math.max(0, firstIndexFrom(log.times, window.from) - 1); i < log.times.length; i++) {
    const at = log.times[i] as number;
    if (at > window.to) break;
    const bridged = at - last <= gapLimitSeconds * 1000;
    if (open !== undefined && bridged) open.to = at;
    if (!bridged) open = undefined;
    last = at;
    const mode = read(log.states.mode?.[i] ?? '') ?? read(log.states.operation?.[i] ?? '');
    if (mode === undefined || mode === open?.mode) continue;
    open = { from: at, to: at, mode };
    runs.push(open);
  }
  return runs.flatMap((run) => {
    const from = Math.max(run.from, window.from);
    return run.to > from ? [{ ...run, from }] : [];
  });
}

function readMode(text: string): RunMode | undefined {
  const plain = text.toLowerCase();
  if (plain.includes('contin')) return 'continuous';
  return /start.?stop|stop.?start|cycl|on.?off/.test(plain) && !/off.?cycl|cycl\w*.?off/.test(plain)
    ? 'start-stop'
    : undefined;
}

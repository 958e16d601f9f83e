import type { Band, ExcursionCause, TimeRange, TransitWindow } from '../../model/results.js';
import { ROUNDING } from '../bands.js';
import type { Outside } from './excursion-list.js';
import type { RecordedDoor } from './recorded-doors.js';
import { type LoggedState, SAME_SET_POINT } from './states.js';

const MINUTE = 60_000;
/** Longest delay from an event to an excursion that it explains. Convention of this project. */
const REACH = 15 * MINUTE;
/** Longest recovery after an event's end, or the event's own length if that is longer. */
const RECOVERY = 60 * MINUTE;
/**
 * A trailer loaded with its doors open is warm at first: a pull-down is inferred when the air is back in range
 * within this time.
 */
const PULL_DOWN = 4 * 60 * MINUTE;
/** A pull-down begins when the doors close, or at most this much later. */
const PULL_DOWN_START = 30 * MINUTE;

/** Events that can explain an excursion, by kind, in order of time. */
export interface Explanations {
  logged: LoggedState[];
  /** Runs of logged set points. */
  setPoints: readonly (TimeRange & { celsius: number })[];
  band: Pick<Band, 'low' | 'high'>;
  custody: TransitWindow;
  stepSeconds: number;
  /** Doors recorded as opened, until recorded as closed. */
  doors?: readonly RecordedDoor[];
}

/**
 * Finds the cause of excursions. `logged` means that the event is in the log and the excursion fits it in time:
 * begins during it or shortly after, and ends soon after. An event long past does not explain an excursion that
 * continues. Doors that people recorded count as logged, and the evidence is named. A pull-down is never logged,
 * only inferred.
 */
export function causeFinder(given: Explanations): (one: Outside) => ExcursionCause {
  const of = (is: LoggedState['is']) => given.logged.filter((event) => event.is === is);
  const opened = of('door-open');
  const off = of('unit-off');
  const defrosts = of('defrost');
  const changes = setPointEvents(given.setPoints, given.band);
  const before = given.stepSeconds * 1000;
  // Doors open and a unit off for loading precede a pull-down; they are not its cause.
  const loading = given.custody.from.at + before;
  const recorded = given.doors ?? [];
  const later = {
    opened: opened.filter((event) => event.from > loading),
    off: off.filter((event) => event.from > loading),
    recorded: recorded.filter((event) => event.from > loading),
  };
  return (one) => {
    const pullDown = isPullDown(one, given.custody);
    const counted = pullDown ? later : { opened, off, recorded };
    if (explains(counted.opened, one, before)) return { is: 'door-open', how: 'logged' };
    if (explains(counted.off, one, before)) return { is: 'unit-off', how: 'logged' };
    if (explains(defrosts, one, before)) return { is: 'defrost', how: 'logged' };
    const door = counted.recorded.find((event) => explains([event], one, before));
    if (door !== undefined) return { is: 'door-open', how: 'logged', evidence: [...door.evidence] };
    if (explains(changes[one.side], one, before)) return { is: 'set-point-change', how: 'logged' };
    return pullDown ? { is: 'pull-down', how: 'inferred' } : { is: 'unexplained' };
  };
}

/**
 * Whether the latest event that began by the excursion's start fits it. The row before an event may hide the
 * event's start.
 */
function explains(events: readonly TimeRange[], one: Outside, stepBefore: number): boolean {
  const event = lastFrom(events, one.from + stepBefore);
  if (event === undefined || one.from > event.to + REACH) return false;
  return one.to <= event.to + Math.max(RECOVERY, event.to - event.from);
}

/** The last span that starts at or before a time; spans are sorted by start. */
function lastFrom(spans: readonly TimeRange[], at: number): TimeRange | undefined {
  let low = 0;
  let high = spans.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((spans[middle]?.from ?? 0) <= at) low = middle + 1;
    else high = middle;
  }
  return spans[low - 1];
}

/** Times at which the logged set point was out of range, and instants at which it changed within the range. */
function setPointEvents(
  runs: readonly (TimeRange & { celsius: number })[],
  band: Pick<Band, 'low' | 'high'>,
): Record<Outside['side'], TimeRange[]> {
  const above: TimeRange[] = [];
  const below: TimeRange[] = [];
  runs.forEach((run, index) => {
    // The same set point after a data gap is no change.
    const earlier = runs[index - 1];
    const changed = earlier !== undefined && Math.abs(earlier.celsius - run.celsius) > SAME_SET_POINT;
    if (run.celsius > band.high + ROUNDING) above.push(run);
    else if (changed) above.push({ from: run.from, to: run.from });
    if (run.celsius < band.low - ROUNDING) below.push(run);
    else if (changed) below.push({ from: run.from, to: run.from });
  });
  return { above, below };
}

function isPullDown(one: Outside, custody: TransitWindow): boolean {
  const { at, basis } = custody.from;
  if (one.side !== 'above' || (basis !== 'doors-closed' && basis !== 'departed')) return false;
  return one.from <= at + PULL_DOWN_START && one.to <= at + PULL_DOWN && !one.cutBy.includes('gap-after');
}

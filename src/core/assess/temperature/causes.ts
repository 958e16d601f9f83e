import { omitUndefined } from '../../model/omit-undefined.js';
import type {
  Band,
  ExcursionCause,
  ExcursionHeat,
  LoggedState,
  RunModeResult,
  TimeRange,
  TransitWindow,
} from '../../model/results.js';
import { ROUNDING } from '../bands.js';
import type { Outside } from './excursion-list.js';
import type { RecordedDoor } from './recorded-doors.js';
import { USUAL_SWING } from './run.js';
import { eventsOf, SAME_SET_POINT } from './states.js';

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

/** A defrost ends by its own clock within this; a longer one is no normal operation. Common practice, no source. */
const LONGEST_DEFROST = 60 * MINUTE;
/** An off cycle of a start-stop unit is over within this where the log shows no period. Common practice, no source. */
const LONGEST_CYCLE = 60 * MINUTE;

/** Events that can explain an excursion, by kind, in order of time. */
export interface Explanations {
  logged: LoggedState[];
  /** Runs of logged set points. */
  setPoints: readonly (TimeRange & { celsius: number })[];
  band: Pick<Band, 'low' | 'high' | 'setPoint'>;
  custody: TransitWindow;
  stepSeconds: number;
  /** Doors recorded as opened, until recorded as closed. */
  doors?: readonly RecordedDoor[];
  /** Alarms in the log's own column. */
  alarms?: readonly TimeRange[];
  run?: RunModeResult | undefined;
  /** Median length of the cycles of the judged air. */
  periodSeconds?: number | undefined;
}

/**
 * Finds the cause of excursions. `logged` means that the event is in the log and the excursion fits it in time:
 * begins during it or shortly after, and ends soon after. An event long past does not explain an excursion that
 * continues. Doors that people recorded count as logged, and the evidence is named. What the carrier answers for goes
 * before what units do by themselves, except that air warmed by an open door is that of the door.
 */
export function causeFinder(
  given: Explanations,
): (one: Outside, shows?: ExcursionHeat['shows']) => ExcursionCause {
  const of = (is: LoggedState['is']) => given.logged.filter((event) => event.is === is);
  const before = given.stepSeconds * 1000;
  const opened = of('door-open');
  const off = eventsOf(of('unit-off'));
  const defrosts = of('defrost').filter(({ from, to }) => to - from <= LONGEST_DEFROST + before);
  const changes = setPointEvents(given.setPoints, given.band);
  // Doors open and a unit off for loading precede a pull-down; they are not its cause.
  const loading = given.custody.from.at + before;
  const recorded = given.doors ?? [];
  const later = {
    opened: opened.filter((event) => event.from > loading),
    off: off.filter((event) => event.from > loading),
    recorded: recorded.filter((event) => event.from > loading),
  };
  const swing = swingFinder(given);
  return (one, shows) => {
    const pullDown = isPullDown(one, given.custody);
    const counted = pullDown ? later : { opened, off, recorded };
    if (explains(changes[one.side].away, one, before)) return { is: 'set-point-change', how: 'logged' };
    const state =
      stateCause(counted.opened, one, before) ??
      stateCause(counted.off, one, before) ??
      stateCause(defrosts, one, before);
    if (state !== undefined) return state;
    const door = counted.recorded.find((event) => explains([event], one, before));
    if (door !== undefined) return { is: 'door-open', how: 'logged', evidence: [...door.evidence] };
    if (explains(changes[one.side].moved, one, before)) return { is: 'set-point-change', how: 'logged' };
    if (pullDown) return { is: 'pull-down', how: 'inferred' };
    const swung = swing(one);
    if (swung !== undefined) return swung;
    if (explains(given.alarms ?? [], one, before)) return { is: 'alarm', how: 'logged' };
    return shows === 'capacity-fell' ? { is: 'capacity-loss', how: 'inferred' } : { is: 'unexplained' };
  };
}

function stateCause(
  states: readonly LoggedState[],
  one: Outside,
  stepBefore: number,
): ExcursionCause | undefined {
  const state = lastFrom(states, one.from + stepBefore);
  if (state === undefined || !explains([state], one, stepBefore)) return undefined;
  const oneRow = state.rows === 1 ? (true as const) : undefined;
  return { is: state.is, how: 'logged', ...omitUndefined({ oneRow }) };
}

/**
 * Air that swings as a start-stop unit lets it: within its usual swing about the set point, and back within a cycle.
 * Where continuous running was instructed, the mode is what moved the air.
 */
function swingFinder({
  run,
  setPoints,
  band,
  periodSeconds,
}: Explanations): (one: Outside) => ExcursionCause | undefined {
  const longest = periodSeconds === undefined ? LONGEST_CYCLE : periodSeconds * 1000;
  return (one) => {
    const mode = run?.runs?.find(({ from, to }) => from <= one.from && to >= one.from)?.mode ?? run?.logged;
    const how = mode === undefined ? 'inferred' : 'logged';
    if ((mode ?? run?.asked) !== 'start-stop' || one.to - one.from > longest) return undefined;
    const held = lastFrom(setPoints, one.from)?.celsius ?? band.setPoint;
    if (Math.abs(one.peak - held) > USUAL_SWING['start-stop'] + ROUNDING) return undefined;
    return { is: run?.asked === 'continuous' ? 'mode-change' : 'cycling', how };
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
function lastFrom<S extends TimeRange>(spans: readonly S[], at: number): S | undefined {
  let low = 0;
  let high = spans.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((spans[middle]?.from ?? 0) <= at) low = middle + 1;
    else high = middle;
  }
  return spans[low - 1];
}

interface SetPointEvents {
  /** Times at which the logged set point was out of range on that side. */
  away: TimeRange[];
  /** Instants at which it changed within the range. */
  moved: TimeRange[];
}

function setPointEvents(
  runs: readonly (TimeRange & { celsius: number })[],
  band: Pick<Band, 'low' | 'high'>,
): Record<Outside['side'], SetPointEvents> {
  const above: SetPointEvents = { away: [], moved: [] };
  const below: SetPointEvents = { away: [], moved: [] };
  runs.forEach((run, index) => {
    // The same set point after a data gap is no change.
    const earlier = runs[index - 1];
    const changed = earlier !== undefined && Math.abs(earlier.celsius - run.celsius) > SAME_SET_POINT;
    if (run.celsius > band.high + ROUNDING) above.away.push(run);
    else if (changed) above.moved.push({ from: run.from, to: run.from });
    if (run.celsius < band.low - ROUNDING) below.away.push(run);
    else if (changed) below.moved.push({ from: run.from, to: run.from });
  });
  return { above, below };
}

function isPullDown(one: Outside, custody: TransitWindow): boolean {
  const { at, basis } = custody.from;
  if (one.side !== 'above' || (basis !== 'doors-closed' && basis !== 'departed')) return false;
  return one.from <= at + PULL_DOWN_START && one.to <= at + PULL_DOWN && !one.cutBy.includes('gap-after');
}

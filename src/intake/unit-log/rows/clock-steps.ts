/** A clock that was set in the middle of a log, by the order of its rows. */
export interface FoundStep {
  /** Place in the file of the first row after it, in the direction in which the log runs. */
  index: number;
  /** The last time before it and the first after it, milliseconds. */
  from: number;
  to: number;
  /** What the clock was put forward by; negative where it was put back. */
  seconds: number;
  uncertaintySeconds: number;
}

/** A clock is set by more than this; a network sets it by less. Milliseconds. */
const LEAST_STEP = 60_000;
/** Rows that run on before and after: fewer are stray rows. */
const LEAST_ROWS = 3;
/** A log whose times turn back oftener is of several instruments, or of a clock of twelve hours. */
const MOST_STEPS = 2;

/**
 * Finds where the clock of a log was put back: its times turn back against the direction of the log, and run on from
 * there in their usual steps. Put forward it leaves a gap like any other, which the order of rows can't tell; only
 * where the times jump on again to where they had been, it is told. Rows that hold a stretch twice are no step, and
 * times that begin anew where the log began are of another instrument.
 * @param sameRow whether two rows have the same values
 */
export function clockSteps(
  times: readonly number[],
  sameRow: (index: number, other: number) => boolean,
): FoundStep[] {
  const places = inTheirDirection(times);
  const at = (place: number) => times[places[place] ?? 0] ?? 0;
  const step = medianStep(places.map((_, place) => at(place)));
  if (step <= 0) return [];
  const turns: { place: number; back: boolean }[] = [];
  let most = Number.NEGATIVE_INFINITY;
  for (let place = 1; place < places.length; place++) {
    const [before, here] = [at(place - 1), at(place)];
    most = Math.max(most, before);
    if (here - before <= -LEAST_STEP) turns.push({ place, back: true });
    // On again from a time before the latest to one beyond it, farther than a step.
    else if (before < most && here > most && here - before > Math.max(3 * step, LEAST_STEP))
      turns.push({ place, back: false });
  }
  if (turns.length === 0 || turns.length > 2 * MOST_STEPS) return [];
  const ends = [0, ...turns.map(({ place }) => place), places.length];
  const lasting = turns.filter(
    ({ place }, i) =>
      place - (ends[i] ?? 0) >= LEAST_ROWS && (ends[i + 2] ?? places.length) - place >= LEAST_ROWS,
  );
  if (lasting.length > MOST_STEPS) return [];
  return lasting
    .filter(
      ({ place, back }) =>
        !back || (at(place) > at(0) + LEAST_ROWS * step && !isSecondCopy(places, at, place, sameRow)),
    )
    .map(({ place }) => ({
      index: places[place] ?? 0,
      from: at(place - 1),
      to: at(place),
      seconds: (at(place) - at(place - 1) - step) / 1000,
      uncertaintySeconds: step / 1000,
    }));
}

/** Whether most rows of a file are older than the one above. */
export function runsBackwards(times: readonly number[]): boolean {
  let down = 0;
  let moves = 0;
  for (let i = 1; i < times.length; i++) {
    const move = (times[i] ?? 0) - (times[i - 1] ?? 0);
    if (move === 0) continue;
    moves += 1;
    if (move < 0) down += 1;
  }
  return down > moves / 2;
}

/** Places of the rows from the oldest on: a log that runs backwards is read from its end. */
function inTheirDirection(times: readonly number[]): number[] {
  const places = times.map((_, index) => index);
  return runsBackwards(times) ? places.reverse() : places;
}

function medianStep(times: readonly number[]): number {
  const steps = new Float64Array(Math.max(0, times.length - 1));
  for (let i = 0; i < steps.length; i++) steps[i] = (times[i + 1] ?? 0) - (times[i] ?? 0);
  steps.sort();
  return steps[steps.length >>> 1] ?? 0;
}

/**
 * The rows after a turn are those before it once more: they share their instants, and all their values. A clock that
 * was put back in air that never changed looks the same, and costs as little.
 */
function isSecondCopy(
  places: readonly number[],
  at: (place: number) => number,
  turn: number,
  sameRow: (index: number, other: number) => boolean,
): boolean {
  const latest = at(turn - 1);
  let [first, second] = [turn - 1, turn];
  while (first > 0 && at(first - 1) >= at(turn)) first -= 1;
  let shared = 0;
  for (; second < places.length && at(second) <= latest; second++) {
    while (first < turn && at(first) < at(second)) first += 1;
    if (first >= turn || at(first) !== at(second)) continue;
    shared += 1;
    if (!sameRow(places[first] ?? 0, places[second] ?? 0)) return false;
  }
  return shared > 0;
}

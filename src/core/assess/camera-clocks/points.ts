import type { EvidenceId } from '../../model/evidence.js';
import type { RecordState } from '../../model/state.js';
import { type ClockPoint, milliseconds } from '../../model/time.js';
import type { ClockShift } from '../../model/unit-log.js';

type Comparison = RecordState['clocks'][number];

/** Comparisons of a clock that are current: not replaced by name, and not repeated for the same instant. */
export function currentComparisons(
  clocks: readonly Comparison[],
  whose: (one: Comparison) => boolean,
): Comparison[] {
  const own = clocks.filter(whose);
  const replaced = new Set(own.flatMap((one) => one.replaces ?? []));
  return own.filter(
    (one) => !replaced.has(one.seq) && !own.some((later) => later.seq > one.seq && later.at === one.at),
  );
}

/** Comparisons of one camera's clock, in the order of time. */
export function cameraPoints(clocks: readonly Comparison[], camera: string): ClockPoint[] {
  return toPoints(
    currentComparisons(clocks, ({ clock }) => clock.is === 'camera' && clock.camera === camera),
  );
}

/**
 * Comparisons of a unit log's clock, in the order of time; those that name no log apply to every log.
 * @param before earlier readings of the same file, for which comparisons may have been made
 */
export function logPoints(
  clocks: readonly Comparison[],
  log: EvidenceId,
  before: readonly EvidenceId[] = [],
): ClockPoint[] {
  return toPoints(
    currentComparisons(
      clocks,
      ({ clock, rows }) =>
        clock.is === 'unit-log' &&
        rows === undefined &&
        (clock.evidence === undefined || clock.evidence === log || before.includes(clock.evidence)),
    ),
  );
}

/** The parts of a unit log whose clock a person said to be wrong, of each part the last word. */
export function logShifts(
  clocks: readonly Comparison[],
  log: EvidenceId,
  before: readonly EvidenceId[] = [],
): ClockShift[] {
  const shifts = new Map<string, ClockShift>();
  for (const { clock, rows, addSeconds, seq } of clocks) {
    if (clock.is !== 'unit-log' || clock.evidence === undefined || rows === undefined) continue;
    if (clock.evidence === log || before.includes(clock.evidence))
      shifts.set(JSON.stringify(rows), { rows, addSeconds, seq });
  }
  return [...shifts.values()];
}

function toPoints(comparisons: readonly Comparison[]): ClockPoint[] {
  const points = comparisons
    .map(({ at, addSeconds, uncertaintySeconds, seq }) => ({
      at: milliseconds(at),
      addSeconds,
      uncertaintySeconds,
      seq,
    }))
    .sort((a, b) => a.at - b.at || a.seq - b.seq);
  // A clock that was put back between two comparisons shows some times twice, and no straight line leads through
  // both; the later comparison is left out where its clock time is not later.
  const rising: ClockPoint[] = [];
  for (const point of points) {
    const last = rising.at(-1);
    if (last === undefined || shownAt(point) > shownAt(last)) rising.push(point);
  }
  return rising;
}

/** Clock time shown at a comparison, milliseconds UTC. */
export function shownAt({ at, addSeconds }: ClockPoint): number {
  return at - addSeconds * 1000;
}

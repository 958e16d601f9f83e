import { plannedTime } from '../model/planned-time.js';
import type { TransitWindow, WindowBound } from '../model/results.js';
import { firstLoading, lastUnloading, type MilestoneEvent, type Milestones } from './milestones.js';

/** What bounds the start, best first; within one of them the last before departure, for doors are closed again. */
const START = ['doors-closed', 'departed', 'loading-ended', 'bill-signed'] as const;
/** What bounds the end, best first; within one of them the first after the start. */
const END = [
  'doors-opened',
  'arrived',
  'unloading-began',
  'receipt-signed',
  'unloaded',
  'refused',
  'accepted',
] as const;

/**
 * The transit window of a delivery: from the doors closed at the first loading stop to the doors opened at the last
 * unloading stop. Where an event is missing the next best stands in, last the planned time, and the bound says so.
 * Undefined when nothing bounds one of the ends, or when the ends contradict each other: rows of a log bound nothing.
 */
export function transitWindowOf(milestones: Milestones): TransitWindow | undefined {
  const first = firstLoading(milestones.stops)?.id;
  const last = lastUnloading(milestones.stops)?.id;
  return first === undefined || last === undefined
    ? undefined
    : transitWindowBetween(milestones, first, last);
}

/** The transit window between any two stops: of one leg, or of one line. */
export function transitWindowBetween(
  milestones: Milestones,
  first: string,
  last: string,
): TransitWindow | undefined {
  const from = startOf(milestones, first) ?? planned(milestones, first);
  if (from === undefined) return undefined;
  const to = endOf(milestones, last, from.at) ?? plannedEnd(milestones, last);
  return to === undefined || to.at <= from.at ? undefined : { from, to };
}

/** The start of a window where the record shows it; a plan shows nothing. */
export function shownStartOf(milestones: Milestones): number | undefined {
  const first = firstLoading(milestones.stops)?.id;
  return first === undefined ? undefined : startOf(milestones, first)?.at;
}

type Shown = Pick<MilestoneEvent, 'stop' | 'at' | 'evidence'> & {
  event: MilestoneEvent['event'] | 'bill-signed' | 'receipt-signed';
};

/** Uncertainty of a time, seconds, from which it bounds no window: of some events only the day is known. */
const ONLY_THE_DAY = 4 * 3600;

const shownAt = ({ events, signatures }: Milestones, stop: string): Shown[] =>
  [...events, ...signatures]
    .filter((one) => one.stop === stop && one.uncertaintySeconds < ONLY_THE_DAY)
    .sort((a, b) => a.at - b.at);

function startOf(milestones: Milestones, stop: string): WindowBound | undefined {
  const here = shownAt(milestones, stop);
  const left = here.find((one) => one.event === 'departed');
  for (const basis of START) {
    const last = here.findLast((one) => one.event === basis && (left === undefined || one.at <= left.at));
    if (last !== undefined) return { at: last.at, basis, evidence: last.evidence };
  }
  return undefined;
}

function endOf(milestones: Milestones, stop: string, after: number): WindowBound | undefined {
  const here = shownAt(milestones, stop).filter((one) => one.at > after);
  for (const basis of END) {
    const first = here.find((one) => one.event === basis);
    if (first !== undefined) return { at: first.at, basis, evidence: first.evidence };
  }
  return undefined;
}

function planned({ stops }: Milestones, id: string): WindowBound | undefined {
  const stop = stops.find((one) => one.id === id);
  const at = stop && plannedTime(stop);
  return at === undefined ? undefined : { at, basis: 'planned' };
}

/** A planned end that has not come yet bounds nothing: the window then reaches to the time that is asked about. */
function plannedEnd(milestones: Milestones, id: string): WindowBound | undefined {
  const bound = planned(milestones, id);
  return bound !== undefined && bound.at > milestones.now
    ? { at: milestones.now, basis: 'under-way' }
    : bound;
}

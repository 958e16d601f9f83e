import type { Stop } from '../model/delivery.js';
import type { EventName, EvidenceId } from '../model/evidence.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { Milestone, Stage } from '../model/rule-set.js';
import type { ItemOf, RecordState } from '../model/state.js';
import { knownMilliseconds } from '../model/time.js';

export type StopSide = Stop['does'];

/** One event with a known time, assigned to a stop. */
export interface MilestoneEvent {
  event: EventName;
  stop: string;
  side: StopSide;
  at: number;
  uncertaintySeconds: number;
  evidence: EvidenceId;
}

/** The course of events at a stop; a known later event shows that the earlier ones are past. */
const COURSE: Record<StopSide, readonly EventName[]> = {
  load: ['arrived', 'doors-opened', 'loading-began', 'loading-ended', 'doors-closed', 'departed'],
  unload: [
    'notice-of-arrival',
    'arrived',
    'doors-opened',
    'unloading-began',
    'inspection-requested',
    'inspected',
    'refused',
    'unloaded',
  ],
};

const NATURAL_SIDE: Partial<Record<EventName, StopSide>> = {
  'loading-began': 'load',
  'loading-ended': 'load',
  'doors-closed': 'load',
  departed: 'load',
  'notice-of-arrival': 'unload',
  'unloading-began': 'unload',
  unloaded: 'unload',
  refused: 'unload',
  'inspection-requested': 'unload',
  inspected: 'unload',
};

/** Events that may not happen: a later event does not show that they are past. */
const MAY_NOT_HAPPEN: ReadonlySet<Milestone> = new Set([
  'stopped',
  'resumed',
  'notice-of-arrival',
  'inspection-requested',
  'inspected',
  'refused',
]);

const OVER: readonly EventName[] = ['unloaded', 'refused'];

/** The known events and the stops of a delivery. */
export interface Milestones {
  events: readonly MilestoneEvent[];
  stops: readonly Stop[];
}

/**
 * Events of the record with a known time, each assigned to a stop: its own, or where none is stated the first
 * loading stop for loading events and the last unloading stop for the others. An arrival or door opening without a
 * stop is at loading until the doors were closed there or the truck departed. Events after `now` (milliseconds) are
 * ignored.
 */
export function readMilestones(state: RecordState, now: number): Milestones {
  const { stops } = state.delivery;
  const events = state.evidence.filter((item): item is ItemOf<'event'> => item.kind === 'event');
  const leaving = events
    .filter((item) => item.event === 'doors-closed' || item.event === 'departed')
    .map((item) => knownMilliseconds(item.time))
    .filter((at) => at !== undefined);
  const left = Math.min(...leaving);
  const placed: MilestoneEvent[] = [];
  for (const item of events) {
    const at = knownMilliseconds(item.time);
    if (at === undefined || at > now || item.time.is !== 'known') continue;
    const side = NATURAL_SIDE[item.event] ?? (at <= left ? 'load' : 'unload');
    const stated = stops.find((stop) => stop.id === item.place?.stop);
    const stop = stated ?? (side === 'load' ? firstLoading(stops) : lastUnloading(stops));
    if (stop === undefined) continue;
    placed.push({
      event: item.event,
      stop: stop.id,
      side: stop.does,
      at,
      uncertaintySeconds: item.time.uncertaintySeconds,
      evidence: item.evidence,
    });
  }
  return { events: placed.sort((a, b) => a.at - b.at), stops };
}

export const firstLoading = (stops: readonly Stop[]) => stops.find((stop) => stop.does === 'load');
export const lastUnloading = (stops: readonly Stop[]) => stops.findLast((stop) => stop.does === 'unload');

/** Side of a milestone: by its own nature, else by the evidence's place, else by the rule's stage. */
export function sideOfMilestone(moment: Milestone, at: StopSide | undefined, stage: Stage): StopSide {
  if (moment === 'delivery-over') return 'unload';
  return (
    at ?? NATURAL_SIDE[moment] ?? (stage === 'before-loading' || stage === 'loading' ? 'load' : 'unload')
  );
}

/** The time of a milestone at one stop, or of the event that bounds it. */
export interface KnownMilestone {
  at: number;
  /** Absent when the event itself is recorded; else the neighbouring event used instead. */
  standIn?: EventName;
  evidence: EvidenceId;
  uncertaintySeconds: number;
}

const names = (moment: Milestone): readonly EventName[] => (moment === 'delivery-over' ? OVER : [moment]);

function fromEvent(found: MilestoneEvent, standIn?: EventName): KnownMilestone {
  return {
    at: found.at,
    evidence: found.evidence,
    uncertaintySeconds: found.uncertaintySeconds,
    ...omitUndefined({ standIn }),
  };
}

/** Position of an event in the whole course of the delivery: stops in the order of the bill, then the course at each. */
function rank(milestones: Milestones, stop: string, event: EventName): number {
  const index = milestones.stops.findIndex((one) => one.id === stop);
  const side = milestones.stops[index]?.does;
  if (side === undefined) return -1;
  const within = COURSE[side].indexOf(event);
  return within < 0 ? -1 : index * 100 + within;
}

function rankOf(milestones: Milestones, stop: string, moment: Milestone): number {
  return Math.max(...names(moment).map((event) => rank(milestones, stop, event)));
}

/** The last time of a milestone at a stop. */
export function lastTimeOf(
  milestones: Milestones,
  stop: string,
  moment: Milestone,
): KnownMilestone | undefined {
  const found = milestones.events.findLast((one) => one.stop === stop && names(moment).includes(one.event));
  return found === undefined ? undefined : fromEvent(found);
}

/**
 * The latest time at which a milestone was past: its event, or the earliest recorded event after it in the course
 * of the delivery. Undefined when nothing shows that it is past.
 */
export function latestTimeOf(
  milestones: Milestones,
  stop: string,
  moment: Milestone,
): KnownMilestone | undefined {
  const exact = lastTimeOf(milestones, stop, moment);
  if (exact !== undefined) return exact;
  if (MAY_NOT_HAPPEN.has(moment)) return undefined;
  const own = rankOf(milestones, stop, moment);
  if (own < 0) return undefined;
  const later = milestones.events.find((one) => rank(milestones, one.stop, one.event) > own);
  return later === undefined ? undefined : fromEvent(later, later.event);
}

/** The earliest time of a milestone: its first event, or the latest recorded event before it. */
export function earliestTimeOf(
  milestones: Milestones,
  stop: string,
  moment: Milestone,
): KnownMilestone | undefined {
  const first = milestones.events.find((one) => one.stop === stop && names(moment).includes(one.event));
  if (first !== undefined) return fromEvent(first);
  const own = rankOf(milestones, stop, moment);
  const earlier = milestones.events.findLast((one) => {
    const place = rank(milestones, one.stop, one.event);
    return place >= 0 && place < own;
  });
  return earlier === undefined ? undefined : fromEvent(earlier, earlier.event);
}

/** Stops of one side, in the order of the bill. */
export function stopsOf(milestones: Milestones, side: StopSide): readonly Stop[] {
  return milestones.stops.filter((stop) => stop.does === side);
}

/** Whether a milestone happened at any stop of its side. */
export function hasHappened(milestones: Milestones, moment: Milestone): boolean {
  return milestones.events.some((one) => names(moment).includes(one.event));
}

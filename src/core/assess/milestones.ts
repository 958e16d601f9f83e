import type { Stop } from '../model/delivery.js';
import type { EvidenceId } from '../model/evidence.js';
import type { MilestoneName } from '../model/milestone.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { Milestone, Stage } from '../model/rule-set.js';
import type { EvidenceItem, RecordState } from '../model/state.js';
import { type EventTime, milliseconds } from '../model/time.js';
import { mayNotHappen } from './may-not-happen.js';
import { isClosedAgain, placeAfterLoading, type UnplacedEvent } from './unplaced-events.js';

export type StopSide = Stop['does'];

/** One event or outcome with a known time, assigned to a stop. */
export interface MilestoneEvent {
  event: MilestoneName;
  stop: string;
  side: StopSide;
  /** The line that it names; else it is of the whole stop. */
  line?: string;
  at: number;
  uncertaintySeconds: number;
  evidence: EvidenceId;
}

/** The course of events at a stop; a known later event shows that the earlier ones are past. */
const COURSE: Record<StopSide, readonly MilestoneName[]> = {
  load: [
    'arrived',
    'doors-opened',
    'loading-began',
    'loading-ended',
    'doors-closed',
    'picked-up',
    'departed',
  ],
  unload: [
    'notice-of-arrival',
    'arrived',
    'doors-opened',
    'unloading-began',
    'inspection-requested',
    'inspection-unavailable',
    'inspected',
    'diverted',
    'refused',
    'jointly-checked',
    'accepted',
    'unloaded',
    'disposed',
  ],
};

const NATURAL_SIDE: Partial<Record<MilestoneName, StopSide>> = {
  'loading-began': 'load',
  'loading-ended': 'load',
  'doors-closed': 'load',
  departed: 'load',
  'picked-up': 'load',
  'notice-of-arrival': 'unload',
  'unloading-began': 'unload',
  unloaded: 'unload',
  refused: 'unload',
  accepted: 'unload',
  'inspection-requested': 'unload',
  inspected: 'unload',
  'inspection-unavailable': 'unload',
  diverted: 'unload',
  'jointly-checked': 'unload',
  disposed: 'unload',
};

const OVER: readonly MilestoneName[] = ['unloaded', 'refused', 'accepted'];

/** A signature on a bill of lading or a receipt, with the time that a person stated for it. */
export interface Signature {
  event: 'bill-signed' | 'receipt-signed';
  stop: string;
  at: number;
  uncertaintySeconds: number;
  evidence: EvidenceId;
}

/** What is known of when things happened, by stop. */
export interface Milestones {
  events: readonly MilestoneEvent[];
  /** Events between stops: what happened on the way. */
  onTheWay: readonly Omit<MilestoneEvent, 'stop' | 'side'>[];
  signatures: readonly Signature[];
  stops: readonly Stop[];
  /** The time that is asked about, milliseconds since 1970 UTC; nothing later has happened. */
  now: number;
}

/**
 * Events and outcomes of the record with a known time, each put to a stop: its own, or where none is stated the first
 * loading stop for what happens at loading and the last unloading stop for the rest. An arrival or opening of
 * doors without a stop is at loading until the doors were closed there or the truck left; after that
 * `placeAfterLoading` says whether it was at a stop or on the way. What is said to happen after `now`
 * (milliseconds) has not happened.
 */
export function readMilestones(state: RecordState, now: number): Milestones {
  const { stops, lines } = state.delivery;
  const deliveredAt = (line: string | undefined) => lines.find(({ id }) => id === line)?.to;
  const isDrop = (id: string | undefined) => stops.some((stop) => stop.id === id && stop.does === 'unload');
  const told = state.evidence.flatMap((item) =>
    momentsOf(item, isDrop).map((moment) => ({ item, ...moment })),
  );
  const happened = told.flatMap(({ item, event, time }): UnplacedEvent[] => {
    if (time.is !== 'known') return [];
    const at = milliseconds(time.instant);
    const { evidence, line } = item;
    const own = item.place?.stop ?? (item.kind === 'outcome' ? deliveredAt(line) : undefined);
    const stop = stops.find(({ id }) => id === own);
    const { uncertaintySeconds } = time;
    return at > now ? [] : [{ event, at, evidence, uncertaintySeconds, ...omitUndefined({ stop, line }) }];
  });
  happened.sort((a, b) => a.at - b.at);
  const leaving = happened.filter(({ event }) => event === 'doors-closed' || event === 'departed');
  const left = leaving[0]?.at ?? Number.POSITIVE_INFINITY;
  const events: MilestoneEvent[] = [];
  const onTheWay: Milestones['onTheWay'][number][] = [];
  for (const item of happened) {
    const { stop: stated, ...event } = item;
    const stop = stated ?? stopOf(item, happened, left, stops);
    if (stop === 'on-the-way') onTheWay.push(event);
    else if (stop !== undefined) events.push({ ...event, stop: stop.id, side: stop.does });
  }
  return { events, onTheWay, signatures: signaturesOf(state, now), stops, now };
}

interface Moment {
  event: MilestoneName;
  time: EventTime;
}

/** The moments that an item tells of: an event its own, a certificate of a first inspection at a drop when it was asked for and made. */
function momentsOf(item: EvidenceItem, isDrop: (stop: string | undefined) => boolean): Moment[] {
  const { time } = item;
  switch (item.kind) {
    case 'event':
      return [{ event: item.event, time }];
    case 'outcome':
      return [{ event: item.outcome === 'refused' ? 'refused' : 'accepted', time }];
    case 'inspection': {
      const { place, appeal, defects, total, requestedAt, ended } = item;
      if (!isDrop(place?.stop) || appeal === true || (defects.length === 0 && total === undefined)) return [];
      return [
        ...(requestedAt === undefined ? [] : [{ event: 'inspection-requested', time: requestedAt } as const]),
        { event: 'inspected', time: ended ?? time },
      ];
    }
    default:
      return [];
  }
}

function stopOf(
  item: UnplacedEvent,
  happened: readonly UnplacedEvent[],
  left: number,
  stops: readonly Stop[],
): Stop | 'on-the-way' | undefined {
  const side = NATURAL_SIDE[item.event];
  if (side === 'unload') return lastUnloading(stops);
  if (side === 'load' || item.at <= left)
    return item.at > left && isClosedAgain(item, happened, left) ? 'on-the-way' : firstLoading(stops);
  const bounds = item.event === 'doors-opened' || item.event === 'arrived';
  return bounds ? placeAfterLoading(item, happened, stops) : lastUnloading(stops);
}

/** Signatures whose time a person stated: a file's own time does not say when somebody signed. */
function signaturesOf({ evidence, delivery: { stops } }: RecordState, now: number): Signature[] {
  return evidence.flatMap((item): Signature[] => {
    if (!('subject' in item) || item.time.is !== 'known' || item.time.basis !== 'typed') return [];
    const is = item.subject?.is;
    if (is !== 'bill-of-lading' && is !== 'proof-of-delivery') return [];
    const stated = stops.find(({ id }) => id === item.place?.stop);
    const stop = stated ?? (is === 'bill-of-lading' ? firstLoading(stops) : lastUnloading(stops));
    const at = milliseconds(item.time.instant);
    if (stop === undefined || at > now) return [];
    const event = stop.does === 'load' ? 'bill-signed' : 'receipt-signed';
    const { uncertaintySeconds } = item.time;
    return [{ event, stop: stop.id, at, uncertaintySeconds, evidence: item.evidence }];
  });
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
  standIn?: MilestoneName;
  evidence: EvidenceId;
  uncertaintySeconds: number;
}

const names = (moment: Milestone): readonly MilestoneName[] => (moment === 'delivery-over' ? OVER : [moment]);

function fromEvent(found: MilestoneEvent, standIn?: MilestoneName): KnownMilestone {
  return {
    at: found.at,
    evidence: found.evidence,
    uncertaintySeconds: found.uncertaintySeconds,
    ...omitUndefined({ standIn }),
  };
}

/** Position of an event in the whole course of the delivery: stops in the order of the bill, then the course at each. */
function rank(milestones: Milestones, stop: string, event: MilestoneName): number {
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
  if (mayNotHappen(moment)) return undefined;
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

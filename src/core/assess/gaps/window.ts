import type { Line } from '../../model/delivery.js';
import type { WithinWindow } from '../../model/milestone.js';
import type { RejectedEvidence, Shortfall } from '../../model/results.js';
import type { Milestone, MilestoneOffset } from '../../model/rule-set.js';
import type { EvidenceItem } from '../../model/state.js';
import { knownMilliseconds } from '../../model/time.js';
import { mayNotHappen } from '../may-not-happen.js';
import {
  earliestTimeOf,
  type KnownMilestone,
  lastTimeOf,
  latestTimeOf,
  type StopSide,
  sideOfMilestone,
  stopsOf,
} from '../milestones.js';
import type { RuleContext, Scope } from './context.js';
import { shortfall } from './shortfalls.js';

/** Where and when evidence must be to count. */
export interface EvidenceWindow {
  at?: 'loading-stop' | 'unloading-stop' | undefined;
  after?: MilestoneOffset | undefined;
  before?: MilestoneOffset | undefined;
  within?: WithinWindow | undefined;
}
export type WindowContext = Pick<RuleContext, 'milestones' | 'stage'> & {
  scope?: Scope;
  lines?: readonly Line[];
};

export const sideAt = (at: EvidenceWindow['at']): StopSide | undefined =>
  at === undefined ? undefined : at === 'loading-stop' ? 'load' : 'unload';

/** The stop of a line on one side. */
export const stopOfLine = (line: Line | undefined, side: StopSide) =>
  side === 'load' ? line?.from : line?.to;

/** One end of a window in time. */
export interface WindowEnd {
  /** Milliseconds since 1970 UTC. */
  at: number;
  uncertaintySeconds: number;
}

/** The ends of a window for evidence at one stop. An end that nothing in the record shows is open. */
export interface WindowEnds {
  after?: WindowEnd;
  before?: WindowEnd;
  /** Events that replace unrecorded ones. */
  notes: Shortfall[];
}

/**
 * The ends of a window by the record. Milestones are those of the evidence's own stop where it is of the right
 * side, else of the rule's stop, else of the line's, else of the first stop of that side (after) or the last
 * (before); what does not happen everywhere is looked for where it happened, first to a line of the rule. An unrecorded milestone is bounded by its nearest recorded neighbour in the course of the delivery; the
 * far end of a `within` window then stays open.
 */
export function windowEnds(
  context: WindowContext,
  window: EvidenceWindow,
  stop: string | undefined,
  line: Line | undefined,
): WindowEnds {
  const ends: WindowEnds = { notes: [] };
  const find = (moment: Milestone, end: 'after' | 'before') => {
    const at = stopFor(context, window, moment, end, stop, line);
    if (at === undefined) return undefined;
    const known =
      end === 'after'
        ? earliestTimeOf(context.milestones, at, moment)
        : latestTimeOf(context.milestones, at, moment);
    for (const note of substituteEventNote(moment, known)) ends.notes.push(note);
    return known;
  };
  const { after, before, within } = window;
  if (after !== undefined) narrow(ends, 'after', find(after.moment, 'after'), after.seconds);
  if (before !== undefined) narrow(ends, 'before', find(before.moment, 'before'), before.seconds);
  if (within !== undefined) {
    const near = within.side === 'after' ? 'after' : 'before';
    const known = find(within.moment, near);
    narrow(ends, near, known, 0);
    if (known?.standIn === undefined)
      narrow(
        ends,
        near === 'after' ? 'before' : 'after',
        known,
        near === 'after' ? within.seconds : -within.seconds,
      );
  }
  return ends;
}

function stopFor(
  context: WindowContext,
  window: EvidenceWindow,
  moment: Milestone,
  end: 'after' | 'before',
  own: string | undefined,
  line: Line | undefined,
): string | undefined {
  const side = sideOfMilestone(moment, sideAt(window.at), context.stage);
  const all = stopsOf(context.milestones, side);
  const happened = mayNotHappen(moment)
    ? all.filter(({ id }) => lastTimeOf(context.milestones, id, moment) !== undefined)
    : [];
  const handled = happened.filter(({ id }) => context.lines?.some((one) => stopOfLine(one, side) === id));
  const stops = [handled, happened, all].find((list) => list.length > 0) ?? all;
  const wanted = [own, context.scope?.stop?.id, stopOfLine(line ?? context.scope?.line, side)];
  return (
    wanted.find((id) => all.some((one) => one.id === id)) ?? (end === 'after' ? stops[0] : stops.at(-1))?.id
  );
}

function narrow(
  ends: WindowEnds,
  end: 'after' | 'before',
  known: KnownMilestone | undefined,
  seconds: number,
): void {
  if (known === undefined) return;
  const at = known.at + seconds * 1000;
  const had = ends[end];
  if (had !== undefined && (end === 'after' ? had.at >= at : had.at <= at)) return;
  ends[end] = { at, uncertaintySeconds: known.uncertaintySeconds };
}

/** A note that a neighbouring event replaces an unrecorded milestone. */
export function substituteEventNote(moment: Milestone, known: KnownMilestone | undefined): Shortfall[] {
  return known?.standIn === undefined ? [] : [shortfall('stands-in', { moment, standIn: known.standIn })];
}

/**
 * Why evidence is outside the window; undefined when it is inside. Stated uncertainties are allowed for.
 * @param at its known time, milliseconds since 1970 UTC
 */
export function outsideReason(
  ends: WindowEnds,
  item: Pick<EvidenceItem, 'time'>,
  at: number | undefined,
): RejectedEvidence['why'] | undefined {
  if (ends.after === undefined && ends.before === undefined) return undefined;
  if (at === undefined || item.time.is !== 'known') return 'no-time';
  const own = item.time.uncertaintySeconds;
  const room = (end: WindowEnd) => (own + end.uncertaintySeconds) * 1000;
  if (ends.after !== undefined && at + room(ends.after) < ends.after.at) return 'too-early';
  if (ends.before !== undefined && at - room(ends.before) > ends.before.at) return 'too-late';
  return undefined;
}

/** Whether evidence is later than the instant of assessment, so that it did not exist yet. */
export function isInFuture(
  context: Pick<RuleContext, 'now'>,
  item: Pick<EvidenceItem, 'time'>,
  at = knownMilliseconds(item.time),
): boolean {
  if (at === undefined || item.time.is !== 'known') return false;
  return at - item.time.uncertaintySeconds * 1000 > context.now;
}

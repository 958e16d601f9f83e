import type { Line, Stop } from '../../model/delivery.js';
import type { EvidenceId } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { RejectedEvidence, Shortfall } from '../../model/results.js';
import type { EvidenceItem } from '../../model/state.js';
import { stopsOf } from '../milestones.js';
import { lineOfEvidence } from '../pulps.js';
import type { RuleContext } from './context.js';
import { shortfall, shortfallKey } from './shortfalls.js';
import { type NeedVerdict, union } from './verdict.js';
import {
  type EvidenceWindow,
  isInFuture,
  outsideReason,
  sideAt,
  stopOfLine,
  type WindowEnds,
  windowEnds,
} from './window.js';

export interface CountNeed extends EvidenceWindow {
  atLeast: number;
  per: 'delivery' | 'line' | 'stop';
}

/** Evidence that can meet a need, and why an item does not count. */
export interface EvidenceQuery<T extends EvidenceItem> {
  candidates: readonly T[];
  /** Undefined for an item that counts. */
  rejectionReason?(item: T): RejectedEvidence['why'] | undefined;
  /** Name of the evidence in the labels' group `asked`; several with commas between them. */
  thing: string;
}

/** One count to be reached: of the delivery, a line or a stop. */
export interface CountGroup<T extends EvidenceItem> {
  line?: Line;
  stop?: Stop;
  counted: T[];
  rejected: RejectedEvidence[];
  notes: Shortfall[];
}

/** Flags of a file that proves nothing. */
const USELESS = ['picture-unreadable', 'encrypted', 'damaged', 'empty-file', 'unknown-type'] as const;

/**
 * Sorts the evidence of one kind into counts. Withheld evidence does not count, because a reader of the
 * dossier can't see it.
 */
export function groupsFor<T extends EvidenceItem>(
  context: RuleContext,
  need: CountNeed,
  ask: EvidenceQuery<T>,
): CountGroup<T>[] {
  const groups = emptyGroups<T>(context, need);
  for (const group of groups) {
    const ends = endsByStop(context, need, group.line);
    for (const item of ask.candidates) {
      const why = missOf(context, need, ask, group, item, ends);
      if (why === 'other') continue;
      if (why === undefined) group.counted.push(item);
      else group.rejected.push({ evidence: item.evidence, why });
    }
  }
  return groups;
}

/** The window's ends, computed once for each stop that evidence names. */
function endsByStop(context: RuleContext, need: CountNeed, line: Line | undefined) {
  const found = new Map<string | undefined, WindowEnds>();
  return (stop: string | undefined): WindowEnds => {
    const had = found.get(stop);
    if (had !== undefined) return had;
    const ends = windowEnds(context, need, stop, line);
    found.set(stop, ends);
    return ends;
  };
}

function emptyGroups<T extends EvidenceItem>(context: RuleContext, need: CountNeed): CountGroup<T>[] {
  const { scope } = context;
  const side = sideAt(need.at) ?? scope.stop?.does;
  const make = (line: Line | undefined, stop: Stop | undefined): CountGroup<T> => ({
    ...omitUndefined({ line, stop }),
    counted: [],
    rejected: [],
    notes: [],
  });
  const stopAt = (line: Line | undefined) =>
    line === undefined || side === undefined
      ? undefined
      : context.state.delivery.stops.find((one) => one.id === stopOfLine(line, side));
  if (need.per === 'line') {
    const lines = scope.line === undefined ? context.lines : [scope.line];
    return lines
      .filter((line) => scope.stop === undefined || stopOfLine(line, scope.stop.does) === scope.stop.id)
      .map((line) => make(line, stopAt(line)));
  }
  if (need.per === 'stop' && scope.stop === undefined)
    return (side === undefined ? context.state.delivery.stops : stopsOf(context.milestones, side)).map(
      (stop) => make(undefined, stop),
    );
  const here = scope.stop === undefined || scope.stop.does === side ? scope.stop : undefined;
  return [make(scope.line, here ?? stopAt(scope.line))];
}

/** Why an item does not count in a group; `other` when it plainly belongs to another group. */
function missOf<T extends EvidenceItem>(
  context: RuleContext,
  need: CountNeed,
  ask: EvidenceQuery<T>,
  group: CountGroup<T>,
  item: T,
  endsAt: (stop: string | undefined) => WindowEnds,
): RejectedEvidence['why'] | 'other' | undefined {
  const stop = context.state.delivery.stops.find((one) => one.id === stopIdOf(context, item));
  const elsewhere = wrongLine(context, need, group, item) ?? wrongStop(need, group, stop);
  if (elsewhere !== undefined) return elsewhere;
  const ends = endsAt(stop?.id);
  const why =
    outsideReason(ends, item, context.evidence.timeOf(item)) ??
    (isInFuture(context, item, context.evidence.timeOf(item)) ? 'too-late' : undefined) ??
    missOfItem(item) ??
    ask.rejectionReason?.(item);
  if (why === undefined)
    for (const note of ends.notes) if (!group.notes.includes(note)) group.notes.push(note);
  return why;
}

/** Evidence of one product (a pulp, a photo) must name the line; a call or document may concern all lines. */
function wrongLine(
  context: RuleContext,
  need: CountNeed,
  group: { line?: Line },
  item: EvidenceItem,
): RejectedEvidence['why'] | 'other' | undefined {
  if (group.line === undefined) return undefined;
  const line = lineOfEvidence(item, context.state.delivery.lines);
  if (line === group.line) return undefined;
  if (line !== undefined) return 'other';
  if (item.line !== undefined) return 'wrong-line';
  return need.per === 'line' || item.kind === 'pulp' || item.kind === 'photo' ? 'no-line' : undefined;
}

function wrongStop(
  need: CountNeed,
  group: { line?: Line; stop?: Stop },
  stop: Stop | undefined,
): RejectedEvidence['why'] | 'other' | undefined {
  const side = sideAt(need.at);
  const mustSay = side !== undefined || need.per === 'stop';
  if (stop === undefined) return mustSay ? 'no-stop' : undefined;
  if (side !== undefined && stop.does !== side) return 'wrong-stop';
  if (group.stop === undefined || stop.id === group.stop.id) return undefined;
  if (!mustSay) return stop.does === group.stop.does ? 'other' : undefined;
  return group.line === undefined ? 'other' : 'wrong-stop';
}

function missOfItem(item: EvidenceItem): RejectedEvidence['why'] | undefined {
  if (item.withheld !== undefined) return 'withheld';
  if (!('flags' in item)) return undefined;
  return USELESS.find((name) => item.flags.some((flag) => flag.is === name));
}

/** An event without a stop is at the stop that its kind implies; other evidence is where it says. */
function stopIdOf(context: RuleContext, item: EvidenceItem): string | undefined {
  if (item.kind !== 'event' || item.place?.stop !== undefined) return item.place?.stop;
  return context.milestones.events.find((one) => one.evidence === item.evidence)?.stop;
}

/** The verdict over all counts, with the shortfalls of each. `extra` adds shortfalls of a group. */
export function verdictOf<T extends EvidenceItem>(
  groups: readonly CountGroup<T>[],
  need: Pick<CountNeed, 'atLeast' | 'per'>,
  ask: Pick<EvidenceQuery<T>, 'thing'>,
  extra: (group: CountGroup<T>) => Shortfall[] = () => [],
): NeedVerdict {
  const lacking = groups.flatMap((group) => [...countShortfall(group, need, ask.thing), ...extra(group)]);
  const counted = [...new Set(groups.flatMap((group) => group.counted.map((item) => item.evidence)))];
  return {
    outcome: lacking.length === 0 ? 'met' : counted.length > 0 ? 'short' : 'missing',
    counted,
    rejected: rejectedEvidence(groups, counted),
    against: [],
    lacking,
    notes: [
      ...qualityNotes(groups.flatMap((group) => group.counted)),
      ...union(
        groups.map((group) => group.notes),
        shortfallKey,
      ),
    ],
  };
}

function rejectedEvidence(
  groups: readonly { rejected: RejectedEvidence[] }[],
  counted: readonly EvidenceId[],
): RejectedEvidence[] {
  const isCounted = new Set(counted);
  const [only] = groups;
  // Within one group each item is listed once.
  if (groups.length === 1 && only !== undefined) return only.rejected;
  return union(
    groups.map((group) => group.rejected),
    (miss) => `${miss.evidence} ${miss.why}`,
  ).filter((miss) => !isCounted.has(miss.evidence));
}

/** The shortfall of a count; it names the line or stop only where the need is evaluated for each. */
function countShortfall(
  group: { line?: Line; stop?: Stop; counted: readonly unknown[] },
  { atLeast: need, per }: Pick<CountNeed, 'atLeast' | 'per'>,
  thing: string,
): Shortfall[] {
  const have = group.counted.length;
  if (have >= need) return [];
  const of = per === 'line' ? { line: group.line } : per === 'stop' ? { stop: group.stop } : {};
  return [
    have === 0 ? shortfall('none', { thing, need }, of) : shortfall('too-few', { thing, have, need }, of),
  ];
}

/** Notes on counted items: a subject nobody has confirmed, a picture hard to read. */
function qualityNotes(items: readonly EvidenceItem[]): Shortfall[] {
  const filed = [...new Set(items)].filter((item) => item.kind === 'photo' || item.kind === 'document');
  const proposed = filed.filter((item) => item.subject?.sure === 'proposed').length;
  const poor = filed.filter((item) =>
    item.flags.some((flag) => ['dark', 'blurred', 'tiny', 'edited'].includes(flag.is)),
  ).length;
  return [
    ...(proposed > 0 ? [shortfall('subject-proposed', { count: proposed })] : []),
    ...(poor > 0 ? [shortfall('hard-to-read', { count: poor })] : []),
  ];
}

import type { Line, Stop } from '../../model/delivery.js';
import type { EvidenceId } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { Lack, NearMiss } from '../../model/results.js';
import type { EvidenceItem } from '../../model/state.js';
import { stopsOf } from '../milestones.js';
import { lineOf } from '../pulps.js';
import type { RuleContext } from './context.js';
import { lack, sameLack } from './shortfalls.js';
import { type NeedVerdict, union } from './verdict.js';
import { type Ends, endOf, endsOf, isAhead, outsideOf, sideAt, type Window } from './window.js';

export interface Amount extends Window {
  atLeast: number;
  per: 'delivery' | 'line' | 'stop';
}

/** What is asked for: the evidence of its kind, and why one that is nearly right does not count. */
export interface Ask<T extends EvidenceItem> {
  among: readonly T[];
  /** Undefined when it counts. */
  miss?(item: T): NearMiss['why'] | undefined;
  /** Name of the thing in the labels' group `asked`; several with commas between them. */
  thing: string;
}

/** One count that must be reached: of the delivery, a line or a stop. */
export interface Group<T extends EvidenceItem> {
  line?: Line;
  stop?: Stop;
  counted: T[];
  nearly: NearMiss[];
  notes: Lack[];
}

/** Flags with which a file can show nothing. */
const USELESS = ['picture-unreadable', 'encrypted', 'damaged', 'empty-file', 'unknown-type'] as const;

/**
 * Sorts the evidence of one kind into counts. Withheld evidence does not count, because a reader of the
 * dossier can't see it.
 */
export function groupsFor<T extends EvidenceItem>(
  context: RuleContext,
  need: Amount,
  ask: Ask<T>,
): Group<T>[] {
  const groups = emptyGroups<T>(context, need);
  for (const group of groups) {
    const ends = endsByStop(context, need, group.line);
    for (const item of ask.among) {
      const why = missOf(context, need, ask, group, item, ends);
      if (why === 'other') continue;
      if (why === undefined) group.counted.push(item);
      else group.nearly.push({ evidence: item.evidence, why });
    }
  }
  return groups;
}

/** The window's ends, looked up once for each stop that evidence names. */
function endsByStop(context: RuleContext, need: Amount, line: Line | undefined) {
  const found = new Map<string | undefined, Ends>();
  return (stop: string | undefined): Ends => {
    const had = found.get(stop);
    if (had !== undefined) return had;
    const ends = endsOf(context, need, stop, line);
    found.set(stop, ends);
    return ends;
  };
}

function emptyGroups<T extends EvidenceItem>(context: RuleContext, need: Amount): Group<T>[] {
  const { scope } = context;
  const side = sideAt(need.at) ?? scope.stop?.does;
  const make = (line: Line | undefined, stop: Stop | undefined): Group<T> => ({
    ...omitUndefined({ line, stop }),
    counted: [],
    nearly: [],
    notes: [],
  });
  const stopAt = (line: Line | undefined) =>
    line === undefined || side === undefined
      ? undefined
      : context.state.delivery.stops.find((one) => one.id === endOf(line, side));
  if (need.per === 'line') {
    const lines = scope.line === undefined ? context.lines : [scope.line];
    return lines
      .filter((line) => scope.stop === undefined || endOf(line, scope.stop.does) === scope.stop.id)
      .map((line) => make(line, stopAt(line)));
  }
  if (need.per === 'stop' && scope.stop === undefined)
    return (side === undefined ? context.state.delivery.stops : stopsOf(context.moments, side)).map((stop) =>
      make(undefined, stop),
    );
  const here = scope.stop === undefined || scope.stop.does === side ? scope.stop : undefined;
  return [make(scope.line, here ?? stopAt(scope.line))];
}

/** Why an item does not count in a group; `other` when it plainly belongs to another group. */
function missOf<T extends EvidenceItem>(
  context: RuleContext,
  need: Amount,
  ask: Ask<T>,
  group: Group<T>,
  item: T,
  endsAt: (stop: string | undefined) => Ends,
): NearMiss['why'] | 'other' | undefined {
  const stop = context.state.delivery.stops.find((one) => one.id === stopIdOf(context, item));
  const elsewhere = wrongLine(context, need, group, item) ?? wrongStop(need, group, stop);
  if (elsewhere !== undefined) return elsewhere;
  const ends = endsAt(stop?.id);
  const why =
    outsideOf(ends, item, context.evidence.timeOf(item)) ??
    (isAhead(context, item, context.evidence.timeOf(item)) ? 'too-late' : undefined) ??
    missOfItem(item) ??
    ask.miss?.(item);
  if (why === undefined)
    for (const note of ends.notes) if (!group.notes.includes(note)) group.notes.push(note);
  return why;
}

/** What shows one product (a pulp, a photo) must name the line; a call or a paper may be about all of them. */
function wrongLine(
  context: RuleContext,
  need: Amount,
  group: { line?: Line },
  item: EvidenceItem,
): NearMiss['why'] | 'other' | undefined {
  if (group.line === undefined) return undefined;
  const line = lineOf(item, context.state.delivery.lines);
  if (line === group.line) return undefined;
  if (line !== undefined) return 'other';
  if (item.line !== undefined) return 'wrong-line';
  return need.per === 'line' || item.kind === 'pulp' || item.kind === 'photo' ? 'no-line' : undefined;
}

function wrongStop(
  need: Amount,
  group: { line?: Line; stop?: Stop },
  stop: Stop | undefined,
): NearMiss['why'] | 'other' | undefined {
  const side = sideAt(need.at);
  const mustSay = side !== undefined || need.per === 'stop';
  if (stop === undefined) return mustSay ? 'no-stop' : undefined;
  if (side !== undefined && stop.does !== side) return 'wrong-stop';
  if (group.stop === undefined || stop.id === group.stop.id) return undefined;
  if (!mustSay) return stop.does === group.stop.does ? 'other' : undefined;
  return group.line === undefined ? 'other' : 'wrong-stop';
}

function missOfItem(item: EvidenceItem): NearMiss['why'] | undefined {
  if (item.withheld !== undefined) return 'withheld';
  if (!('flags' in item)) return undefined;
  return USELESS.find((name) => item.flags.some((flag) => flag.is === name));
}

/** An event without a stop is at the stop that its kind says; other evidence is where it says it is. */
function stopIdOf(context: RuleContext, item: EvidenceItem): string | undefined {
  if (item.kind !== 'event' || item.place?.stop !== undefined) return item.place?.stop;
  return context.moments.events.find((one) => one.evidence === item.evidence)?.stop;
}

/** The verdict over all counts, with what each lacks. `extra` names further lacks of a group. */
export function verdictOf<T extends EvidenceItem>(
  groups: readonly Group<T>[],
  need: Pick<Amount, 'atLeast' | 'per'>,
  ask: Pick<Ask<T>, 'thing'>,
  extra: (group: Group<T>) => Lack[] = () => [],
): NeedVerdict {
  const lacking = groups.flatMap((group) => [...amountLack(group, need, ask.thing), ...extra(group)]);
  const counted = [...new Set(groups.flatMap((group) => group.counted.map((item) => item.evidence)))];
  return {
    outcome: lacking.length === 0 ? 'met' : counted.length > 0 ? 'short' : 'missing',
    counted,
    nearly: nearlyOf(groups, counted),
    against: [],
    lacking,
    notes: [
      ...qualityNotes(groups.flatMap((group) => group.counted)),
      ...union(
        groups.map((group) => group.notes),
        sameLack,
      ),
    ],
  };
}

function nearlyOf(groups: readonly { nearly: NearMiss[] }[], counted: readonly EvidenceId[]): NearMiss[] {
  const isCounted = new Set(counted);
  const [only] = groups;
  // In one group each piece of evidence stands once.
  if (groups.length === 1 && only !== undefined) return only.nearly;
  return union(
    groups.map((group) => group.nearly),
    (miss) => `${miss.evidence} ${miss.why}`,
  ).filter((miss) => !isCounted.has(miss.evidence));
}

/** What a count falls short of; it names the line or stop only where the need itself is held against each. */
function amountLack(
  group: { line?: Line; stop?: Stop; counted: readonly unknown[] },
  { atLeast: need, per }: Pick<Amount, 'atLeast' | 'per'>,
  thing: string,
): Lack[] {
  const have = group.counted.length;
  if (have >= need) return [];
  const of = per === 'line' ? { line: group.line } : per === 'stop' ? { stop: group.stop } : {};
  return [have === 0 ? lack('none', { thing, need }, of) : lack('too-few', { thing, have, need }, of)];
}

/** What counts, but a reader should know of: a subject nobody has confirmed, a picture hard to read. */
function qualityNotes(items: readonly EvidenceItem[]): Lack[] {
  const filed = [...new Set(items)].filter((item) => item.kind === 'photo' || item.kind === 'document');
  const proposed = filed.filter((item) => item.subject?.sure === 'proposed').length;
  const poor = filed.filter((item) =>
    item.flags.some((flag) => ['dark', 'blurred', 'tiny', 'edited'].includes(flag.is)),
  ).length;
  return [
    ...(proposed > 0 ? [lack('subject-proposed', { count: proposed })] : []),
    ...(poor > 0 ? [lack('hard-to-read', { count: poor })] : []),
  ];
}

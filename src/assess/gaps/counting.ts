import type { Line, Stop } from '../../model/delivery.js';
import type { EvidenceId } from '../../model/evidence.js';
import type { NearMiss } from '../../model/results.js';
import type { EvidenceItem } from '../../model/state.js';
import { stopsOf } from '../moments.js';
import { lineOf } from '../pulps.js';
import type { RuleContext } from './context.js';
import type { NeedVerdict } from './verdict.js';
import { endsOf, outsideOf, sideAt, type Window } from './window.js';

export interface Amount extends Window {
  atLeast: number;
  per: 'delivery' | 'line' | 'stop';
}

/** What is asked for: which evidence is of the kind at all, and why one that is nearly does not count. */
export interface Ask<T extends EvidenceItem> {
  is(item: EvidenceItem): item is T;
  /** Undefined when it counts. */
  miss?(item: T): NearMiss['why'] | undefined;
  one: string;
  many: string;
}

/** One count that must be reached: of the delivery, a line or a stop. */
export interface Group<T extends EvidenceItem> {
  line?: Line;
  stop?: Stop;
  counted: T[];
  nearly: NearMiss[];
  notes: string[];
}

/** Flags with which a file can show nothing. */
const USELESS = ['picture-unreadable', 'encrypted', 'empty-file', 'unknown-type'] as const;

/**
 * Sorts the evidence of one kind into counts. Withheld evidence does not count, because a reader of the
 * dossier can't see it.
 */
export function groupsFor<T extends EvidenceItem>(
  context: RuleContext,
  need: Amount,
  ask: Ask<T>,
): Group<T>[] {
  const candidates = context.state.evidence.filter((item): item is T => ask.is(item));
  const groups = emptyGroups<T>(context, need);
  for (const group of groups)
    for (const item of candidates) {
      const why = missOf(context, need, ask, group, item);
      if (why === 'other') continue;
      if (why === undefined) group.counted.push(item);
      else group.nearly.push({ evidence: item.evidence, why });
    }
  return groups;
}

function emptyGroups<T extends EvidenceItem>(context: RuleContext, need: Amount): Group<T>[] {
  const { lines, stops } = context.state.delivery;
  const side = sideAt(need.at);
  const make = (part: { line?: Line; stop?: Stop }): Group<T> => ({
    ...part,
    counted: [],
    nearly: [],
    notes: [],
  });
  if (need.per === 'line')
    return lines.map((line) => {
      const id = side === undefined ? undefined : side === 'load' ? line.from : line.to;
      const stop = stops.find((one) => one.id === id);
      return make(stop === undefined ? { line } : { line, stop });
    });
  if (need.per === 'stop')
    return (side === undefined ? stops : stopsOf(context.moments, side)).map((stop) => make({ stop }));
  return [make({})];
}

/** Why an item does not count in a group; `other` when it plainly belongs to another group. */
function missOf<T extends EvidenceItem>(
  context: RuleContext,
  need: Amount,
  ask: Ask<T>,
  group: Group<T>,
  item: T,
): NearMiss['why'] | 'other' | undefined {
  const { lines, stops } = context.state.delivery;
  const side = sideAt(need.at);
  if (need.per === 'line') {
    const line = lineOf(item, lines);
    if (line === undefined) return item.line === undefined ? 'no-line' : 'wrong-line';
    if (line !== group.line) return 'other';
  }
  const stop = stops.find((one) => one.id === stopIdOf(context, item));
  if (side !== undefined || need.per === 'stop') {
    if (stop === undefined) return 'no-stop';
    if (side !== undefined && stop.does !== side) return 'wrong-stop';
    if (group.stop !== undefined && stop.id !== group.stop.id)
      return need.per === 'stop' ? 'other' : 'wrong-stop';
  }
  const ends = endsOf(context, need, stop?.id, group.line);
  const outside = outsideOf(ends, item);
  if (outside !== undefined) return outside;
  const why = missOfItem(item) ?? ask.miss?.(item);
  if (why === undefined)
    for (const note of ends.notes) if (!group.notes.includes(note)) group.notes.push(note);
  return why;
}

function missOfItem(item: EvidenceItem): NearMiss['why'] | undefined {
  if (item.withheld !== undefined) return 'withheld';
  if (!('flags' in item)) return undefined;
  return USELESS.find((name) => item.flags.some((flag) => flag.is === name));
}

/** An event without a stop is at the stop that its kind says; other evidence is where it says it is. */
function stopIdOf(context: RuleContext, item: EvidenceItem): string | undefined {
  if (item.kind !== 'event') return item.place?.stop;
  return context.moments.events.find((one) => one.evidence === item.evidence)?.stop ?? item.place?.stop;
}

/** The verdict over all counts, with what each lacks in words. `extra` names further lacks of a group. */
export function verdictOf<T extends EvidenceItem>(
  groups: readonly Group<T>[],
  need: Amount,
  ask: Pick<Ask<T>, 'one' | 'many'>,
  extra: (group: Group<T>) => string[] = () => [],
): NeedVerdict {
  const lacking: string[] = [];
  let met = true;
  for (const group of groups) {
    const lacks = [
      ...(group.counted.length < need.atLeast ? [amountWords(group.counted.length, need.atLeast, ask)] : []),
      ...extra(group),
    ];
    if (lacks.length > 0) met = false;
    for (const words of lacks) lacking.push(`${groupWords(group, need)}${words}`);
  }
  const counted = [...new Set(groups.flatMap((group) => group.counted.map((item) => item.evidence)))];
  return {
    outcome: met ? 'met' : counted.length > 0 ? 'short' : 'missing',
    counted,
    nearly: nearlyOf(groups, counted),
    against: [],
    lacking: [...lacking, ...qualityNotes(groups.flatMap((group) => group.counted)), ...notesOf(groups)],
  };
}

const notesOf = (groups: readonly { notes: string[] }[]) => [
  ...new Set(groups.flatMap((group) => group.notes)),
];

function nearlyOf(groups: readonly { nearly: NearMiss[] }[], counted: readonly EvidenceId[]): NearMiss[] {
  const found = new Map<string, NearMiss>();
  for (const miss of groups.flatMap((group) => group.nearly))
    if (!counted.includes(miss.evidence)) found.set(`${miss.evidence} ${miss.why}`, miss);
  return [...found.values()];
}

function amountWords(have: number, need: number, ask: { one: string; many: string }): string {
  if (have === 0) return need === 1 ? `no ${ask.one}` : `no ${ask.many}, ${need} needed`;
  return `${have} of ${need} ${ask.many}`;
}

function groupWords(group: { line?: Line; stop?: Stop }, need: Amount): string {
  if (need.per === 'line' && group.line !== undefined) return `${group.line.name ?? group.line.id}: `;
  if (need.per === 'stop' && group.stop !== undefined) return `${group.stop.id}: `;
  return '';
}

/** What counts, but a reader should know of: a subject nobody has confirmed, a picture hard to read. */
function qualityNotes(items: readonly EvidenceItem[]): string[] {
  const filed = [...new Set(items)].filter((item) => 'subject' in item || 'flags' in item);
  const proposed = filed.filter((item) => 'subject' in item && item.subject?.sure === 'proposed').length;
  const poor = filed.filter(
    (item) =>
      'flags' in item && item.flags.some((flag) => ['dark', 'blurred', 'tiny', 'edited'].includes(flag.is)),
  ).length;
  return [
    ...(proposed > 0
      ? [`the subject of ${proposed} ${proposed === 1 ? 'file' : 'files'} is only proposed`]
      : []),
    ...(poor > 0
      ? [`${poor} ${poor === 1 ? 'picture is' : 'pictures are'} dark, blurred, tiny or edited`]
      : []),
  ];
}

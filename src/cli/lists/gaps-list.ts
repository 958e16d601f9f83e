import {
  closingMilestone,
  type GapWording,
  shortfallText,
  substituteText,
} from '../../compose/view/gap-words.js';
import { moreUrgent } from '../../core/assess/gaps/closable.js';
import { isOpen } from '../../core/assess/gaps/gaps.js';
import type { Delivery } from '../../core/model/delivery.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { GapOutcome, GapPart, GapResult } from '../../core/model/results.js';
import { type RuleConflict, type Stage, stage as stages } from '../../core/model/rule-set.js';
import { milliseconds, type Zone } from '../../core/model/time.js';
import type { Output } from '../output.js';
import { printWrapped } from '../print.js';
import { rowPrinter } from '../table.js';
import { formatDeadlineTime } from './deadline-words.js';

export interface ListOptions {
  /** Also rules that are met, not yet due or not applicable. */
  all: boolean;
  /** Also why each rule matters, what it helps to prove, and its basis. */
  why: boolean;
}
type Delivered = Pick<Delivery, 'stops'>;

const MOST_DECISIVE = 12;

/**
 * Missing evidence: at most a dozen requirements on which a dispute turns, then the others by stage. Most urgent first:
 * what, until when, how. Lost evidence comes last.
 */
export function printGaps(
  output: Output,
  gaps: readonly GapResult[],
  wording: GapWording,
  delivery: Delivered,
  options: ListOptions,
): void {
  const shown = gaps
    .filter((gap) => options.all || isOpen(gap))
    .sort((a, b) => Number(!isOpen(a)) - Number(!isOpen(b)) || moreUrgent(a.closable, b.closable));
  const first = shown.filter((gap) => isOpen(gap) && gap.weight === 'decisive').slice(0, MOST_DECISIVE);
  const print = (title: string, of: readonly GapResult[]): void => {
    if (of.length === 0) return;
    output.line(output.style('bold', title));
    for (const gap of of) printGap(output, gap, wording, delivery, options);
    output.line();
  };
  print(wording.labels('sub.decisive-gaps'), first);
  const rest = shown.filter((gap) => !first.includes(gap));
  for (const name of stages.options)
    print(
      wording.labels(`stage.${name}`),
      rest.filter((gap) => gap.stage === name),
    );
  output.line(summary(gaps));
}

/** Where the sets that are named together say different things, and which of them counts. */
export function printRuleConflicts(output: Output, conflicts: readonly RuleConflict[]): void {
  if (conflicts.length === 0) return;
  output.line();
  output.line(output.style('bold', 'Where the rule sets differ'));
  for (const { title, rule, field, sets, counts } of conflicts) {
    const what = rule === undefined ? 'Tolerance' : `${title ?? rule} [${rule}], ${field}`;
    printWrapped(output, `${what}: ${sets.join(' and ')}; ${counts} counts.`, {
      mark: '  ',
      further: '    ',
    });
  }
}

function summary(gaps: readonly GapResult[]): string {
  const count = (outcome: GapOutcome) => gaps.filter((gap) => gap.outcome === outcome).length;
  const open = gaps.filter(isOpen);
  const lost = open.filter((gap) => gap.closable.is === 'lost').length;
  const beyond = lost === 0 ? '' : ` (${lost} can no longer be obtained)`;
  return `${open.length} open${beyond}, ${count('met')} met, ${count('not-yet-due')} not yet due.`;
}

function printGap(
  output: Output,
  gap: GapResult,
  wording: GapWording,
  delivery: Delivered,
  { why }: ListOptions,
): void {
  const { labels } = wording;
  const say = (text: string, dim = false) =>
    printWrapped(output, text, { mark: '    ', style: (line) => (dim ? output.style('dim', line) : line) });
  const colour = !isOpen(gap) ? 'green' : gap.outcome === 'contradicted' ? 'red' : 'yellow';
  printWrapped(output, `${labels(`outcome.${gap.outcome}`).toUpperCase()} ${gap.title}`, {
    mark: '  ',
    further: '    ',
    style: (line, i) => (i === 0 ? output.style(colour, line) : line),
  });
  if (isOpen(gap)) {
    for (const line of shortfallLines(gap, wording)) say(line);
    say(closes(gap, wording, delivery));
    for (const due of gap.due ?? []) say(dueLine(due));
    if (gap.closable.is === 'lost') for (const line of insteadOf(gap, wording)) say(line);
    else say(`How: ${gap.how}`);
    for (const line of rejectedLine(gap, wording)) say(line);
  }
  if (!why) return;
  for (const note of gap.notes)
    say(`${shortfallText(wording, note)}.`.replace(/^./u, (first) => first.toUpperCase()));
  say(`Why: ${gap.why}`);
  say(`Helps to show: ${gap.proves.map((one) => labels(`element.${one}`)).join(', ')}`, true);
  say(
    `Weight: ${labels(`rule-weight.${gap.weight}`)}${gap.weightWhy === undefined ? '' : `. ${gap.weightWhy}`}`,
    true,
  );
  say(`Basis: ${gap.basis} [${gap.rule}]`, true);
}

/** Shortfalls of a rule; a part that is lost while others are not says so. */
function shortfallLines(gap: GapResult, wording: GapWording): string[] {
  const parts = gap.parts?.filter(isOpen) ?? [];
  const mixed = gap.closable.is !== 'lost' && parts.some((part) => part.closable.is === 'lost');
  if (!mixed) return gap.lacking.map((lack) => shortfallText(wording, lack));
  const tail = (part: GapPart) =>
    part.closable.is === 'lost'
      ? ` (${wording.labels('closable.lost')} ${closingMilestone(wording, part.closable) ?? ''})`
      : '';
  return parts.flatMap((part) =>
    part.lacking.map((lack) => {
      const { line = lack.line, stop = lack.stop } = part;
      const placed = {
        ...lack,
        ...omitUndefined({ line, stop }),
      };
      return `${shortfallText(wording, placed)}${tail(part)}`;
    }),
  );
}

/** Until when evidence is obtainable, with the stop's name where there are several and the time where it is known. */
function closes({ closable }: GapResult, wording: GapWording, { stops }: Delivered): string {
  if (closable.is === 'now') return 'Obtainable now.';
  const stop = stops.find((one) => one.id === closable.stop);
  const where = stop === undefined || stops.length < 3 ? '' : ` (${wording.names.stop(stop.id)})`;
  const zone: Zone | undefined = stop?.zone ?? stops[0]?.zone;
  const at =
    closable.at === undefined || zone === undefined
      ? ''
      : `, ${wording.format.time(milliseconds(closable.at), zone)}`;
  const moment = `${closingMilestone(wording, closable) ?? ''}${where}${at}`;
  return closable.is === 'until' ? `Obtainable until: ${moment}` : `No longer obtainable since: ${moment}`;
}

/** When it is due for a claim, where the rule behind the deadline applies. */
function dueLine({ claim, at, state, source }: NonNullable<GapResult['due']>[number]): string {
  const by = formatDeadlineTime(at, { language: 'en' });
  return `${state === 'overdue' ? 'Overdue since' : 'Due by'}: ${by}, claim ${claim}, where ${source} applies`;
}

/** The best substitute on file, or accepted substitutes that could be requested. */
function insteadOf(gap: GapResult, wording: GapWording): string[] {
  const [best] = gap.substitutes;
  if (best !== undefined)
    return [
      `Substitute on file: ${substituteText(wording, best.what)} (${best.evidence.slice(0, 4).join(', ')})`,
    ];
  const wanted = gap.wanted.map((what) => substituteText(wording, what));
  return wanted.length === 0 ? [] : [`Accepted substitutes: ${wanted.join(', ')}`];
}

const MOST_REJECTED = 3;
/** Reasons that can seldom be corrected: the evidence belongs elsewhere. */
const ELSEWHERE: ReadonlySet<string> = new Set(['wrong-stop', 'wrong-line', 'wrong-source', 'other-subject']);

/**
 * Evidence that was not accepted and why: correctable reasons first; evidence that belongs elsewhere only when
 * nothing counts.
 */
function rejectedLine(gap: GapResult, { labels }: GapWording): string[] {
  const misses = gap.nearly
    .filter((miss) => gap.counted.length === 0 || !ELSEWHERE.has(miss.why))
    .sort((a, b) => Number(ELSEWHERE.has(a.why)) - Number(ELSEWHERE.has(b.why)));
  const said = misses
    .slice(0, MOST_REJECTED)
    .map((miss) => `${miss.evidence} (${labels.find(`near.${miss.why}`) ?? labels(`flag.${miss.why}`)})`);
  const rest = misses.length - said.length;
  return said.length === 0 ? [] : [`Not accepted: ${said.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`];
}

const COUNT = 4;

/**
 * A table over several deliveries whose rows come one by one: how much is open, how much of it is lost, and what closes
 * next.
 */
export function gapTable(output: Output, nameWidth: number) {
  const head = ['delivery', 'open', 'lost', 'met', 'closes next'];
  const print = rowPrinter(output, [nameWidth, COUNT, COUNT, COUNT], head);
  return {
    row(name: string, gaps: readonly GapResult[], wording: GapWording): void {
      const open = gaps.filter(isOpen);
      const lost = open.filter((gap) => gap.closable.is === 'lost').length;
      const next = open
        .filter((gap) => gap.closable.is === 'until')
        .sort((a, b) => order(a.stage) - order(b.stage) || moreUrgent(a.closable, b.closable))[0];
      const closing =
        next === undefined ? '' : `${next.title} (until ${closingMilestone(wording, next.closable) ?? ''})`;
      const met = gaps.filter((gap) => gap.outcome === 'met').length;
      print([name, String(open.length), String(lost), String(met), closing]);
    },
    refused(name: string): void {
      print([name, '-', '-', '-', 'could not be read']);
    },
  };
}

const order = (stage: Stage) => stages.options.indexOf(stage);

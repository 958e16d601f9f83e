import type { GapResult } from '../../core/model/results.js';
import { ruleWeight, stage } from '../../core/model/rule-set.js';
import { type Block, type Cell, type Inline, plain, type Section, text } from '../../core/words/blocks.js';
import { cell, exhibitLinks, type View } from './context.js';
import { closingMilestone, shortfallText, substituteText } from './gap-words.js';
import { column } from './tables.js';

const OPEN = new Set<GapResult['outcome']>(['short', 'missing', 'contradicted']);

/** Whether a requirement applies and is not met. */
export const isOpen = ({ outcome }: Pick<GapResult, 'outcome'>): boolean => OPEN.has(outcome);

/** Count of rules that are due, met, open, and lost. */
export function missingCounts(view: View): { due: number; met: number; open: number; lost: number } {
  const due = view.input.assessment.gaps.filter((gap) => gap.outcome === 'met' || isOpen(gap));
  const open = due.filter(isOpen);
  return {
    due: due.length,
    met: due.length - open.length,
    open: open.length,
    lost: open.filter((gap) => gap.closable.is === 'lost').length,
  };
}

/** Lost evidence and contradictions weigh more than evidence that is still obtainable. */
const rank = (gap: GapResult): number =>
  gap.outcome === 'contradicted' ? 0 : gap.closable.is === 'lost' ? 1 : gap.closable.is === 'until' ? 2 : 3;

const weightOf = (gap: GapResult): number => ruleWeight.options.indexOf(gap.weight);

/** The weightiest open requirements, decisive ones first; equals in the order of the rule set. */
export function heaviestGaps(view: View, most: number): GapResult[] {
  return view.input.assessment.gaps
    .filter(isOpen)
    .sort((a, b) => weightOf(a) - weightOf(b) || rank(a) - rank(b))
    .slice(0, most);
}

/** One open requirement in a line that stands alone: what, its shortfalls, until when, and its exhibits. */
export function missingLine(view: View, gap: GapResult): Inline[] {
  const { labels } = view;
  const lacks = gap.lacking.map((lack) => shortfallText(view, lack));
  const links = exhibitLinks(view, [...new Set([...gap.against, ...gap.counted])], 4);
  const state =
    gap.closable.is === 'now'
      ? labels('cover.can-be-got')
      : gap.closable.is === 'lost'
        ? labels('cover.lost')
        : `${labels('cover.can-be-got-until')} ${closingMilestone(view, gap.closable) ?? ''}`;
  return [
    { is: 'strong', of: plain(gap.title) },
    text(`: ${[lacks.join(', ') || labels(`outcome.${gap.outcome}`), state].join('; ')}`),
    ...(links.length === 0 ? [] : [text(' ('), ...links, text(')')]),
    text('.'),
  ];
}

/** Every open requirement, decisive ones first, the others by stage: why it matters, how to get it, until when. */
export function missingSection(view: View): Section {
  const { labels, words } = view;
  const { gaps, ruleSet } = view.input.assessment;
  const open = gaps.filter(isOpen);
  const blocks: Block[] = [
    ...words.blocks('sections/missing', {
      title: ruleSet.title,
      name: ruleSet.name,
      version: ruleSet.version,
      ...missingCounts(view),
    }),
  ];
  if (open.length === 0) blocks.push({ is: 'none', of: plain(labels('none.missing')) });
  const isDecisive = (gap: GapResult) => gap.weight === 'decisive';
  const groups: [heading: string, of: GapResult[]][] = [
    [labels('sub.decisive-gaps'), open.filter(isDecisive)],
    ...stage.options.map((name): [string, GapResult[]] => [
      labels(`stage.${name}`),
      open.filter((gap) => gap.stage === name && !isDecisive(gap)).sort((a, b) => weightOf(a) - weightOf(b)),
    ]),
  ];
  for (const [heading, here] of groups) {
    if (here.length === 0) continue;
    blocks.push({ is: 'heading', level: 2, text: heading });
    blocks.push({
      is: 'table',
      columns: [
        column(view, 'requirement', 2.6),
        column(view, 'state', 1.3),
        column(view, 'why-how', 4.4),
        column(view, 'until', 1.7),
      ],
      rows: here.map((gap) => gapRow(view, gap)),
    });
  }
  blocks.push(...offBlocks(view));
  return { id: 'missing', title: labels('section.missing'), blocks };
}

function gapRow(view: View, gap: GapResult): Cell[] {
  const { labels } = view;
  const against = exhibitLinks(view, gap.against, 4);
  const counted = exhibitLinks(view, gap.counted, 4);
  const state = labels(`outcome.${gap.outcome}`);
  const instead = gap.substitutes.flatMap((s) => s.evidence);
  const wanted = gap.closable.is === 'lost' && instead.length === 0 ? gap.wanted : [];
  const lacks = [...gap.lacking, ...gap.notes].map((lack) => shortfallText(view, lack));
  return [
    [{ is: 'strong', of: plain(gap.title) }, text(lacks.length === 0 ? '' : `: ${lacks.join('; ')}.`)],
    gap.outcome === 'contradicted'
      ? { is: 'alert', of: [text(state), ...(against.length === 0 ? [] : [text(' '), ...against])] }
      : [
          text(state),
          ...(counted.length === 0
            ? []
            : [text(` (${labels('column.counted').toLowerCase()} `), ...counted, text(')')]),
        ],
    [
      text(`${gap.why} `),
      { is: 'emphasis', of: plain(gap.how) },
      ...(instead.length === 0
        ? []
        : [text(` (${labels('column.instead')} `), ...exhibitLinks(view, instead, 4), text(')')]),
      ...(wanted.length === 0
        ? []
        : [
            text(
              ` (${labels('column.stand-in')}: ${wanted.map((what) => substituteText(view, what)).join(', ')})`,
            ),
          ]),
    ],
    cell(closable(view, gap)),
  ];
}

function closable(view: View, gap: GapResult): string {
  const { labels, format, names } = view;
  const state = gap.closable;
  if (state.is === 'now') return labels('closable.now');
  const at = state.at === undefined ? '' : `, ${format.time(Date.parse(state.at), view.zoneOf(state.stop))}`;
  const several = view.input.state.delivery.stops.length > 2 && state.stop !== undefined;
  const where = several ? `, ${names.stop(state.stop ?? '')}` : '';
  return `${labels(`closable.${state.is}`)} ${closingMilestone(view, state) ?? ''}${where}${at}`;
}

/**
 * Rules of the set that are switched off for this delivery, each with the reason, so that a reader sees what was
 * not required.
 */
function offBlocks(view: View): Block[] {
  const { labels } = view;
  const off = view.input.assessment.ruleSet.origin?.off ?? [];
  const changed = view.input.assessment.ruleSet.origin?.changed ?? [];
  const conflicts = view.input.assessment.ruleSet.origin?.conflicts ?? [];
  return [
    ...(off.length === 0
      ? []
      : [
          { is: 'heading' as const, level: 2 as const, text: labels('sub.rules-off') },
          {
            is: 'table' as const,
            columns: [column(view, 'requirement', 3), column(view, 'reason', 5), column(view, 'by-set', 2)],
            rows: byReason(off).map(({ titles, why, by }) => [cell(titles.join('; ')), cell(why), cell(by)]),
          },
        ]),
    ...(changed.length === 0
      ? []
      : [
          { is: 'heading' as const, level: 2 as const, text: labels('sub.rules-changed') },
          {
            is: 'table' as const,
            columns: [column(view, 'requirement', 3), column(view, 'what', 5), column(view, 'by-set', 2)],
            rows: changed.map((one): Cell[] => [
              cell(one.title),
              [{ is: 'code', text: one.fields.join(', ') }],
              cell(one.by),
            ]),
          },
        ]),
    ...(conflicts.length === 0
      ? []
      : [
          { is: 'heading' as const, level: 2 as const, text: labels('sub.rules-conflict') },
          {
            is: 'table' as const,
            columns: [
              column(view, 'requirement', 3),
              column(view, 'what', 2),
              column(view, 'between', 3),
              column(view, 'counts', 2),
            ],
            rows: conflicts.map((one): Cell[] => [
              cell(one.title ?? ''),
              [{ is: 'code', text: one.field }],
              cell(one.sets.join(', ')),
              cell(one.counts),
            ]),
          },
        ]),
  ];
}

/** Rules that are off for one reason of one set stand in one row. */
function byReason(off: readonly { title: string; why: string; by: string }[]) {
  const rows = new Map<string, { titles: string[]; why: string; by: string }>();
  for (const { title, why, by } of off) {
    const row = rows.get(`${by} ${why}`) ?? { titles: [], why, by };
    row.titles.push(title);
    rows.set(`${by} ${why}`, row);
  }
  return [...rows.values()];
}

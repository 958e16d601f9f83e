import type { LogOverlap, RowDisagreement } from '../../../core/assess/logs/join.js';
import type { EvidenceId } from '../../../core/model/evidence.js';
import { type Block, type Cell, type Inline, plain, text } from '../../../core/words/blocks.js';
import { cell, exhibitLinks, type View } from '../context.js';
import { column } from '../tables.js';

/** Disagreeing rows that are listed; all are counted, and the tool's temperatures file has the rest. */
const MOST_SHOWN = 12;

/** Overlapping logs: which of them are one, and where downloads of one instrument differ. */
export function overlapBlocks(view: View): Block[] {
  const { overlaps } = view.input;
  if (overlaps === undefined || overlaps.overlaps.length === 0) return [];
  return [
    { is: 'heading', level: 2, text: view.labels('sub.overlaps') },
    overlapTable(view, overlaps.overlaps),
    ...disagreements(view, overlaps.disagreements, overlaps.disagreementCount),
  ];
}

function overlapTable(view: View, overlaps: readonly LogOverlap[]): Block {
  const { labels, format, startZone } = view;
  return {
    is: 'table',
    columns: [
      column(view, 'logs', 1.2),
      column(view, 'from', 2.6),
      column(view, 'to', 2.6),
      column(view, 'shared-rows', 1.3, 'right'),
      column(view, 'agreeing-rows', 1.3, 'right'),
      column(view, 'taken-as', 2.2),
    ],
    rows: overlaps.map(({ logs, span, sharedRows, agreeingRows, joined }): Cell[] => [
      exhibitLinks(view, logs),
      cell(format.time(span.from, startZone)),
      cell(format.time(span.to, startZone)),
      cell(format.number(sharedRows)),
      cell(format.number(agreeingRows)),
      cell(labels(joined ? 'overlap.one-log' : 'overlap.side-by-side')),
    ]),
  };
}

function disagreements(view: View, all: readonly RowDisagreement[], count: number): Block[] {
  const { labels, format, startZone } = view;
  if (count === 0) return [];
  const shown = all.slice(0, MOST_SHOWN);
  return [
    ...view.words.blocks('sections/disagreements', { count, most: mostKelvin(all) }),
    {
      is: 'table',
      columns: [
        column(view, 'time', 2.6),
        column(view, 'counts', 1.4),
        column(view, 'other-row', 1.4),
        column(view, 'what', 5),
      ],
      rows: shown.map(({ at, counts, other, differences }): Cell[] => [
        cell(format.time(at, startZone)),
        rowOf(view, counts),
        rowOf(view, other),
        cell(
          differences
            .map((one) =>
              one.is === 'channel'
                ? `${labels(`channel.${one.channel}`)}: ${format.temperature(one.first)} / ${format.temperature(one.second)}, ${labels('column.size').toLowerCase()} ${format.difference(Math.abs(one.first - one.second))}`
                : `${labels(`state.${one.state}`)}: “${one.first}” / “${one.second}”`,
            )
            .join('; '),
        ),
      ]),
    },
    ...(count > shown.length
      ? [
          {
            is: 'paragraph' as const,
            of: plain(labels('exhibit.more').replace('N', format.number(count - shown.length))),
          },
        ]
      : []),
  ];
}

/** Largest temperature difference of two rows; absent where they differ in words only. */
function mostKelvin(all: readonly RowDisagreement[]): { is: 'difference'; kelvin: number } | undefined {
  const apart = all.flatMap(({ differences }) =>
    differences.flatMap((one) => (one.is === 'channel' ? [Math.abs(one.first - one.second)] : [])),
  );
  return apart.length === 0
    ? undefined
    : { is: 'difference', kelvin: apart.reduce((a, b) => Math.max(a, b)) };
}

function rowOf(view: View, { log, row }: { log: EvidenceId; row: number }): Inline[] {
  return [...exhibitLinks(view, [log]), text(`, ${view.labels('source.row')} ${row}`)];
}

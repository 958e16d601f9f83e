import type { LineMargin } from '../../model/results.js';
import { type Block, type Cell, type Column, plain } from '../blocks.js';
import { cell, type View } from './context.js';
import { column } from './tables.js';

/** How far the air stayed from what harms each line by published values, with their sources. */
export function marginBlocks(view: View): Block[] {
  const { labels, words } = view;
  const margins = view.input.assessment.margins ?? [];
  if (margins.length === 0) return [];
  return [
    { is: 'heading', level: 2, text: labels('sub.margins') },
    ...words.blocks('sections/margins'),
    ...freezing(view, margins),
    ...ranges(view, margins),
    ...chilling(view, margins),
    ...life(view, margins),
  ];
}

/** Source, and that a value was not read in it where that is so. */
export const sourceWords = (view: View, { source, fromMemory }: { source: string; fromMemory: boolean }) =>
  fromMemory && !/from memory/i.test(source)
    ? `${view.said('source', source)} (${view.labels('source.from-memory')})`
    : view.said('source', source);

const goods = (view: View, one: LineMargin) => {
  const line = view.names.line(one.line);
  const name = view.said('goods', one.produce.name);
  return line === name ? line : `${line} (${name})`;
};

function freezing(view: View, margins: readonly LineMargin[]): Block[] {
  const { format, labels } = view;
  const rows = margins.flatMap((one) =>
    (one.freezing?.channels ?? []).map((air, i): Cell[] => [
      cell(i === 0 ? goods(view, one) : ''),
      cell(
        i === 0
          ? (one.freezing?.points ?? [])
              .map((point) => `${format.temperature(point.celsius)}: ${sourceWords(view, point)}`)
              .join('; ')
          : '',
      ),
      cell(labels(`channel.${air.channel}`)),
      cell(format.temperature(air.lowest.value)),
      air.margin < 0
        ? { is: 'alert', of: plain(format.signed(air.margin)) }
        : cell(format.signed(air.margin)),
      cell(air.belowSeconds === 0 ? '–' : format.duration(air.belowSeconds)),
    ]),
  );
  return titled(
    view,
    'margin.freezing',
    [
      column(view, 'line', 2),
      column(view, 'freezing-points', 4),
      column(view, 'channel', 1.2),
      column(view, 'lowest', 1.6, 'right'),
      column(view, 'margin', 1.7, 'right'),
      column(view, 'below', 1, 'right'),
    ],
    rows,
  );
}

function ranges(view: View, margins: readonly LineMargin[]): Block[] {
  const { format, labels } = view;
  return titled(
    view,
    'margin.range',
    [
      column(view, 'line', 2),
      column(view, 'published', 2.2),
      column(view, 'channel', 1.1),
      column(view, 'above', 1, 'right'),
      column(view, 'below', 1, 'right'),
      column(view, 'degree-hours-above', 1.8, 'right'),
      column(view, 'source', 3),
    ],
    margins.map((one): Cell[] => [
      cell(goods(view, one)),
      cell(`${format.temperature(one.range.low)} – ${format.temperature(one.range.high)}`),
      cell(labels(`channel.${one.range.channel}`)),
      cell(one.range.aboveSeconds === 0 ? '–' : format.duration(one.range.aboveSeconds)),
      cell(one.range.belowSeconds === 0 ? '–' : format.duration(one.range.belowSeconds)),
      cell(format.degreeHours(one.range.kelvinHoursAbove)),
      cell(sourceWords(view, one.range)),
    ]),
  );
}

function chilling(view: View, margins: readonly LineMargin[]): Block[] {
  const { format, labels } = view;
  const rows = margins.flatMap((one): Cell[][] => {
    const { chilling: cold } = one;
    if (cold === undefined) return [];
    const within = cold.is === 'band' ? cold.insideSeconds : cold.belowHighSeconds;
    return [
      [
        cell(goods(view, one)),
        cell(
          cold.low === cold.high
            ? format.temperature(cold.high)
            : `${format.temperature(cold.low)} – ${format.temperature(cold.high)}`,
        ),
        cell(labels(`chilling.${cold.is}`)),
        cell(labels(`channel.${cold.channel}`)),
        within > 0 ? { is: 'alert', of: plain(format.duration(within)) } : cell('–'),
        cell(sourceWords(view, cold)),
      ],
    ];
  });
  return titled(
    view,
    'margin.chilling',
    [
      column(view, 'line', 2),
      column(view, 'threshold', 2.2),
      column(view, 'what', 1.8),
      column(view, 'channel', 1.1),
      column(view, 'length', 1.2, 'right'),
      column(view, 'source', 3),
    ],
    rows,
  );
}

function life(view: View, margins: readonly LineMargin[]): Block[] {
  const { format } = view;
  const rows = margins.flatMap((one): Cell[][] =>
    one.life === undefined
      ? []
      : [
          [
            cell(goods(view, one)),
            cell(format.temperature(one.life.reference)),
            cell(format.duration(one.life.knownSeconds)),
            cell(format.duration(one.life.equivalentSeconds)),
            cell(one.life.extrapolatedSeconds === 0 ? '–' : format.duration(one.life.extrapolatedSeconds)),
            cell(sourceWords(view, one.life)),
          ],
        ],
  );
  return titled(
    view,
    'margin.life',
    [
      column(view, 'line', 2),
      column(view, 'reference', 1.7, 'right'),
      column(view, 'known', 1.2, 'right'),
      column(view, 'equivalent', 1.4, 'right'),
      column(view, 'extrapolated', 1.6, 'right'),
      column(view, 'source', 3),
    ],
    rows,
  );
}

function titled(view: View, title: string, columns: Column[], rows: Cell[][]): Block[] {
  if (rows.length === 0) return [];
  return [
    { is: 'heading', level: 3, text: view.labels(title) },
    { is: 'table', columns, rows },
  ];
}

import type { LineMargin } from '../../core/model/results.js';
import { type Block, plain } from '../../core/words/blocks.js';
import type { View } from './context.js';
import { formatRange } from './range.js';
import { type Table, tableOf } from './tables.js';

/** Margins of the air to published limits of each line, with sources. */
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

/** The source, and a note where the value was not read in it. */
export const sourceText = (view: View, { source, fromMemory }: { source: string; fromMemory: boolean }) =>
  fromMemory && !/from memory/i.test(source)
    ? `${view.remark('source', source)} (${view.labels('source.from-memory')})`
    : view.remark('source', source);

const goods = (view: View, one: LineMargin) => {
  const line = view.names.line(one.line);
  const name = view.remark('goods', one.produce.name);
  return line === name ? line : `${line} (${name})`;
};

function freezing(view: View, margins: readonly LineMargin[]): Block[] {
  const { format, labels } = view;
  const channels = margins.flatMap((one) =>
    (one.freezing?.channels ?? []).map((air, i) => ({ one, air, first: i === 0 })),
  );
  return titled(
    view,
    'margin.freezing',
    tableOf(view, channels, [
      ['line', 2, ({ one, first }) => (first ? goods(view, one) : '')],
      [
        'freezing-points',
        4,
        ({ one, first }) =>
          first
            ? (one.freezing?.points ?? [])
                .map((point) => `${format.temperature(point.celsius)}: ${sourceText(view, point)}`)
                .join('; ')
            : '',
      ],
      ['channel', 1.2, ({ air }) => labels(`channel.${air.channel}`)],
      ['lowest', 1.6, ({ air }) => format.temperature(air.lowest.value), 'right'],
      [
        'margin',
        1.7,
        ({ air }) =>
          air.margin < 0 ? { is: 'alert', of: plain(format.signed(air.margin)) } : format.signed(air.margin),
        'right',
      ],
      ['below', 1, ({ air }) => lasting(view, air.belowSeconds), 'right'],
    ]),
  );
}

function ranges(view: View, margins: readonly LineMargin[]): Block[] {
  const { format, labels } = view;
  return titled(
    view,
    'margin.range',
    tableOf(view, margins, [
      ['line', 2, (one) => goods(view, one)],
      ['published', 2.2, ({ range }) => formatRange(view, range)],
      ['channel', 1.1, ({ range }) => labels(`channel.${range.channel}`)],
      ['above', 1, ({ range }) => lasting(view, range.aboveSeconds), 'right'],
      ['below', 1, ({ range }) => lasting(view, range.belowSeconds), 'right'],
      ['degree-hours-above', 1.8, ({ range }) => format.degreeHours(range.kelvinHoursAbove), 'right'],
      ['source', 3, ({ range }) => sourceText(view, range)],
    ]),
  );
}

function chilling(view: View, margins: readonly LineMargin[]): Block[] {
  const { format, labels } = view;
  const known = margins.flatMap((one) => (one.chilling === undefined ? [] : [{ one, cold: one.chilling }]));
  return titled(
    view,
    'margin.chilling',
    tableOf(view, known, [
      ['line', 2, ({ one }) => goods(view, one)],
      [
        'threshold',
        2.2,
        ({ cold }) => (cold.low === cold.high ? format.temperature(cold.high) : formatRange(view, cold)),
      ],
      ['what', 1.8, ({ cold }) => labels(`chilling.${cold.is}`)],
      ['channel', 1.1, ({ cold }) => labels(`channel.${cold.channel}`)],
      [
        'length',
        1.2,
        ({ cold }) => {
          const within = cold.is === 'band' ? cold.insideSeconds : cold.belowHighSeconds;
          return within > 0 ? { is: 'alert', of: plain(format.duration(within)) } : '–';
        },
        'right',
      ],
      ['source', 3, ({ cold }) => sourceText(view, cold)],
    ]),
  );
}

function life(view: View, margins: readonly LineMargin[]): Block[] {
  const { format } = view;
  const known = margins.flatMap((one) => (one.life === undefined ? [] : [{ one, life: one.life }]));
  return titled(
    view,
    'margin.life',
    tableOf(view, known, [
      ['line', 2, ({ one }) => goods(view, one)],
      ['reference', 1.7, ({ life }) => format.temperature(life.reference), 'right'],
      ['known', 1.2, ({ life }) => format.duration(life.knownSeconds), 'right'],
      ['equivalent', 1.4, ({ life }) => format.duration(life.equivalentSeconds), 'right'],
      ['extrapolated', 1.6, ({ life }) => lasting(view, life.extrapolatedSeconds), 'right'],
      ['source', 3, ({ life }) => sourceText(view, life)],
    ]),
  );
}

const lasting = ({ format }: View, seconds: number) => (seconds === 0 ? '–' : format.duration(seconds));

function titled(view: View, title: string, table: Table): Block[] {
  return table.rows.length === 0 ? [] : [{ is: 'heading', level: 3, text: view.labels(title) }, table];
}

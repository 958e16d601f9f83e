import type { LineMargin, PublishedLimit } from '../../core/model/results.js';
import { celsius } from '../../core/model/temperature.js';
import { type Block, plain, type Section } from '../../core/words/blocks.js';
import type { View } from './context.js';
import { formatRange } from './range.js';
import { passageNumbers, sourceNoteBlocks } from './source-notes.js';
import { type Table, tableOf } from './tables.js';

/** Instruction and air against published limits of each line, with sources; nothing where none is published. */
export function marginSection(view: View): Section | undefined {
  const { labels, words } = view;
  const margins = view.input.assessment.margins ?? [];
  if (margins.length === 0) return undefined;
  return {
    id: 'margins',
    title: labels('section.margins'),
    blocks: [
      ...words.blocks('sections/margins'),
      ...instructions(view, margins),
      ...freezing(view, margins),
      ...ranges(view, margins),
      ...chilling(view, margins),
      ...life(view, margins),
      ...sourceNoteBlocks(view),
    ],
  };
}

/** What each source recommends, beside the bill's instruction for each line. */
function instructions(view: View, margins: readonly LineMargin[]): Block[] {
  const { labels, format, names } = view;
  const ranges = new Map(margins.map((one) => [one.line, one.range]));
  const limits = view.input.state.delivery.lines.flatMap((line) =>
    (ranges.get(line.id)?.bySource ?? []).map((limit, i) => ({ line, limit, first: i === 0 })),
  );
  return titled(
    view,
    'sub.published-ranges',
    tableOf(view, limits, [
      ['line', 2.2, ({ line, first }) => (first ? names.line(line.id) : '')],
      [
        'bill',
        1.8,
        ({ line, first }) =>
          !first
            ? ''
            : line.instruction === undefined
              ? labels('none.not-given')
              : format.temperature(celsius(line.instruction.setPoint)),
        'right',
      ],
      ['published', 2.4, ({ limit }) => limitText(view, limit), 'right'],
      ['source', 4.4, ({ limit }) => sourceWithNote(view, limit)],
    ]),
  );
}

/** A source by its short name, and a note where a document that retells it was read. */
export const sourceText = (
  view: View,
  { source, secondary }: { source: string; secondary: boolean },
): string =>
  secondary
    ? `${view.remark('source', source)} (${view.labels('source.secondary')})`
    : view.remark('source', source);

/** A source as `sourceText` has it, with the number of the note that quotes it. */
const sourceWithNote = (view: View, limit: PublishedLimit): string => {
  const number = passageNumbers(view).get(limit.passage);
  return number === undefined ? sourceText(view, limit) : `${sourceText(view, limit)} [${number}]`;
};

/** A published limit in both units; one end where only one is published. */
const limitText = (view: View, { low, high }: Pick<PublishedLimit, 'low' | 'high'>): string => {
  const { format } = view;
  if (low !== undefined && high !== undefined) return formatRange(view, { low, high });
  if (high !== undefined) return `≤ ${format.temperature(high)}`;
  return low === undefined ? '' : `≥ ${format.temperature(low)}`;
};

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
                .map((point) => `${limitText(view, point)}: ${sourceWithNote(view, point)}`)
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
  const limits = margins.flatMap((one) =>
    (one.range?.bySource ?? []).map((limit, i) => ({
      one,
      limit,
      channel: one.range?.channel,
      first: i === 0,
    })),
  );
  return titled(
    view,
    'margin.range',
    tableOf(view, limits, [
      ['line', 2, ({ one, first }) => (first ? goods(view, one) : '')],
      ['published', 2.2, ({ limit }) => limitText(view, limit)],
      ['channel', 1.1, ({ channel }) => (channel === undefined ? '' : labels(`channel.${channel}`))],
      ['above', 1, ({ limit }) => lasting(view, limit.aboveSeconds), 'right'],
      ['below', 1, ({ limit }) => lasting(view, limit.belowSeconds), 'right'],
      ['degree-hours-above', 1.8, ({ limit }) => format.degreeHours(limit.kelvinHoursAbove), 'right'],
      ['source', 3, ({ limit }) => sourceWithNote(view, limit)],
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
        4.4,
        ({ cold }) =>
          cold.limits.map((limit) => `${limitText(view, limit)}: ${sourceWithNote(view, limit)}`).join('; '),
      ],
      ['what', 1.6, ({ cold }) => labels(`chilling.${cold.is}`)],
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
      ['against-all', 1.2, ({ cold }) => lasting(view, cold.againstAllSeconds), 'right'],
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
  return table.rows.length === 0 ? [] : [{ is: 'heading', level: 2, text: view.labels(title) }, table];
}

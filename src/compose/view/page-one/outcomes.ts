import type { LineOutcome } from '../../../core/model/results.js';
import { type Block, plain } from '../../../core/words/blocks.js';
import { outcomeReasons, outcomeSayers } from '../../../core/words/outcome-said.js';
import { exhibitLinks, type View } from '../context.js';
import { amountLines } from '../outcome-table.js';
import { type ColumnOf, tableOf } from '../tables.js';

/** Most lines on page one; all are in the section on arrival. */
const MOST = 8;

/** What was shipped of each line, what became of it at its stop, and in whose words. */
export function outcomeRows(view: View): Block[] {
  const { labels, names } = view;
  const outcomes = view.input.assessment.outcomes.slice(0, MOST);
  if (outcomes.length === 0) return [];
  // Where all goods were for one stop, the line above names it.
  const several = new Set(outcomes.map(({ stop }) => stop)).size > 1;
  const placeColumn: ColumnOf<LineOutcome>[] = several
    ? [['place', 1.8, ({ stop }) => names.stop(stop)]]
    : [];
  return [
    tableOf(view, outcomes, [
      ['line', 2.6, ({ line }) => names.line(line)],
      ['shipped', 1.9, ({ line }) => shippedWords(view, line)],
      ...placeColumn,
      ['outcome', 2.4, (one) => outcomeWords(view, one)],
      [
        'said',
        3,
        (one) =>
          [outcomeReasons(labels, one), outcomeSayers(labels, one.statements)].filter(Boolean).join('; '),
      ],
      [
        'exhibits',
        1,
        ({ statements }) =>
          exhibitLinks(
            view,
            statements.flatMap(({ evidence, documents }) => [evidence, ...documents]),
          ),
      ],
    ]),
  ];
}

function shippedWords({ input, labels, format }: View, id: string): string {
  const line = input.state.delivery.lines.find((one) => one.id === id);
  return [
    ...(line?.pallets === undefined ? [] : [`${format.number(line.pallets)} ${labels('cover.pallets')}`]),
    ...(line?.cartons === undefined ? [] : [`${format.number(line.cartons)} ${labels('cover.cartons')}`]),
  ].join(', ');
}

function outcomeWords(view: View, { is, amounts }: LineOutcome) {
  const much = amounts.flatMap((one) => amountLines(view, one)).join('; ');
  const verdict = view.labels(`goods-outcome.${is}`);
  const said = plain(much === '' ? verdict : `${verdict}: ${much}`);
  return is === 'refused' || is === 'refused-in-part' ? { is: 'alert' as const, of: said } : said;
}

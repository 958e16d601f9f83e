import type { Excursion, TemperatureResult } from '../../../core/model/results.js';
import { type Block, type Cell, plain, text } from '../../../core/words/blocks.js';
import { cell, type View } from '../context.js';
import { column, tableOrNone } from '../tables.js';
import { heatWords } from './excursion-classes.js';

/** Rows of the table: a longer one hides what matters; the data is attached. */
const MOST_EXCURSIONS = 24;

/** Excursions of the judged channel in the order of time, with their numbers on the chart. */
export function judgedExcursions(result: TemperatureResult): Excursion[] {
  return result.excursions.filter((e) => e.channel === result.judged).sort((a, b) => a.from - b.from);
}

/** The heaviest when there are too many to list, in the order of time. */
export function listedExcursions(result: TemperatureResult): Excursion[] {
  return [...judgedExcursions(result)]
    .sort((a, b) => b.degreeHours - a.degreeHours)
    .slice(0, MOST_EXCURSIONS)
    .sort((a, b) => a.from - b.from);
}

export function excursionTable(view: View, result: TemperatureResult): Block[] {
  if (result.band === undefined) return [];
  const { format, labels, startZone } = view;
  const rows = listedExcursions(result);
  const hidden = result.excursionTotals.count - rows.length;
  return [
    ...tableOrNone(
      view,
      'excursions',
      [
        column(view, 'number', 0.5, 'right'),
        column(view, 'side', 0.8),
        column(view, 'from', 2.7),
        column(view, 'length', 1.2, 'right'),
        column(view, 'peak', 1.7, 'right'),
        column(view, 'degree-hours', 2, 'right'),
        column(view, 'cause', 2.3),
      ],
      rows.map((one, i): Cell[] => [
        cell(String(i + 1)),
        cell(labels(`side.${one.side}`)),
        cell(format.time(one.from, startZone)),
        cell(format.duration(one.seconds)),
        cell(format.temperature(one.peak)),
        cell(format.degreeHours(one.degreeHours)),
        causeCell(view, one, result),
      ]),
      labels('sub.excursions'),
    ),
    ...(hidden > 0
      ? [{ is: 'paragraph', of: plain(labels('exhibit.more').replace('N', format.number(hidden))) } as const]
      : []),
  ];
}

function causeCell(view: View, one: Excursion, result: TemperatureResult): Cell {
  const { labels } = view;
  const { cause, cutBy } = one;
  // What a defrost does to the air is no sign of heat or of capacity.
  const heat =
    one.class === 'normal-operation' ? undefined : heatWords(view, one.heat, result.usualReturnMinusSupply);
  const cut = [...cutBy.map((by) => labels(`cut.${by}`)), ...(heat === undefined ? [] : [heat])];
  if (cause.is === 'unexplained')
    return { is: 'alert', of: plain([labels('cause.unexplained'), ...cut].join('; ')) };
  const how = labels(cause.oneRow === true ? 'how.logged-in-one-row' : `how.${cause.how}`);
  const said = [`${labels(`cause.${cause.is}`)} (${how})`, ...cut].join('; ');
  const isCarriers = one.class === 'equipment' || one.class === 'instruction';
  return isCarriers ? { is: 'alert', of: plain(said) } : [text(said)];
}

import type { Block, Cell } from '../blocks.js';
import { cell, exhibitLinks, type View } from './context.js';
import { column } from './tables.js';

/** Delivery against loading, and two hands at one stop: differences of mean, lowest and highest. */
export function comparisonBlocks(view: View): Block[] {
  const { format, labels, names } = view;
  const all = view.input.assessment.pulpComparisons ?? [];
  if (all.length === 0) return [];
  return [
    { is: 'heading', level: 2, text: labels('sub.comparisons') },
    {
      is: 'table',
      columns: [
        column(view, 'line', 2.2),
        column(view, 'what', 2.6),
        column(view, 'readings', 1, 'right'),
        column(view, 'mean', 1.6, 'right'),
        column(view, 'lowest', 1.6, 'right'),
        column(view, 'highest', 1.6, 'right'),
        column(view, 'exhibits', 1.4),
      ],
      rows: all.map((one): Cell[] => [
        cell(names.line(one.line)),
        cell(`${labels(`comparison.${one.is}`)}, ${names.stop(one.stop)}`),
        cell(`${one.counts[0]} / ${one.counts[1]}`),
        cell(format.signed(one.mean)),
        cell(format.signed(one.min)),
        cell(format.signed(one.max)),
        exhibitLinks(view, one.evidence, 3),
      ]),
    },
  ];
}

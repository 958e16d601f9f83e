import type { Block } from '../../core/words/blocks.js';
import { exhibitLinks, type View } from './context.js';
import { tableOf } from './tables.js';

/** Delivery against loading, and two parties at one stop: differences of mean, lowest and highest. */
export function comparisonBlocks(view: View): Block[] {
  const { format, labels, names } = view;
  const all = view.input.assessment.pulpComparisons ?? [];
  if (all.length === 0) return [];
  return [
    { is: 'heading', level: 2, text: labels('sub.comparisons') },
    tableOf(view, all, [
      ['line', 2.2, (one) => names.line(one.line)],
      ['what', 2.6, (one) => `${labels(`comparison.${one.is}`)}, ${names.stop(one.stop)}`],
      ['readings', 1, (one) => `${one.counts[0]} / ${one.counts[1]}`, 'right'],
      ['mean', 1.6, (one) => format.signed(one.mean), 'right'],
      ['lowest', 1.6, (one) => format.signed(one.min), 'right'],
      ['highest', 1.6, (one) => format.signed(one.max), 'right'],
      ['exhibits', 1.4, (one) => exhibitLinks(view, one.evidence, 3)],
    ]),
  ];
}

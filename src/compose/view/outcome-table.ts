import type { OutcomeAmount } from '../../core/model/results.js';
import { formatAmount } from '../../core/words/amounts.js';
import { type Block, plain } from '../../core/words/blocks.js';
import { outcomeReasons, outcomeSayers } from '../../core/words/outcome-said.js';
import { exhibitLinks, type View } from './context.js';
import { listOrNone } from './tables.js';

const FATES = ['refused', 'accepted', 'excepted', 'unloaded', 'short', 'over', 'open'] as const;

/** What became of each line at its stop: how much, why, and by whose word. */
export function outcomeTable(view: View): Block[] {
  const { labels, names } = view;
  const { outcomes } = view.input.assessment;
  if (outcomes.every(({ is }) => is === 'not-recorded')) return [];
  return listOrNone(
    view,
    'arrival',
    outcomes,
    [
      ['place', 1.5, ({ stop }) => names.stop(stop)],
      ['line', 2, ({ line }) => names.line(line)],
      [
        'outcome',
        2,
        ({ is }) => {
          const said = labels(`goods-outcome.${is}`);
          return is === 'refused' || is === 'refused-in-part' ? { is: 'alert', of: plain(said) } : said;
        },
      ],
      ['amount', 2.4, ({ amounts }) => amounts.flatMap((amount) => amountLines(view, amount)).join('; ')],
      ['reason', 2.8, (one) => outcomeReasons(view.labels, one)],
      ['by-whom', 1.8, (one) => outcomeSayers(view.labels, one.statements)],
      [
        'exhibits',
        1,
        ({ statements }) =>
          exhibitLinks(
            view,
            statements.flatMap(({ evidence, documents }) => [evidence, ...documents]),
          ),
      ],
    ],
    labels('sub.outcomes'),
  );
}

/** `8 of 18 pallets refused`, `10 of 18 pallets accepted`. */
export function amountLines({ labels, format }: View, amount: OutcomeAmount): string[] {
  return FATES.flatMap((fate) => {
    const value = amount[fate];
    if (value === undefined) return [];
    const of = fate === 'over' || amount.shipped === undefined ? {} : { of: amount.shipped };
    return [
      `${formatAmount(labels, format, { value, unit: amount.unit, ...of })} ${labels(`goods-fate.${fate}`)}`,
    ];
  });
}

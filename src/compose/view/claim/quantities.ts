import { quantityState } from '../../../core/model/claim.js';
import type { ClaimResult } from '../../../core/model/results.js';
import { type Block, type Cell, plain } from '../../../core/words/blocks.js';
import { cell, type View } from '../context.js';
import { column } from '../tables.js';
import { supportLinks } from './entries.js';

/** Quantity of each line that was shipped, accepted, rejected, damaged or short, by source. */
export function quantityBlocks(view: View, { quantities }: ClaimResult): Block[] {
  if (quantities === undefined) return [];
  const { labels, names } = view;
  return [
    { is: 'heading', level: 3, text: labels('sub.claim-quantities') },
    {
      is: 'table',
      columns: [
        column(view, 'line', 2.4),
        ...quantityState.options.map((state) => ({
          title: labels(`quantity-state.${state}`),
          width: 1.3,
          align: 'right' as const,
        })),
        column(view, 'unit', 1.2),
        column(view, 'remark', 2),
        column(view, 'exhibits', 1.3),
      ],
      rows: quantities.map(({ line, unit, states, addsUp }): Cell[] => [
        cell(names.line(line)),
        ...quantityState.options.map((state) => {
          const found = states.find((one) => one.state === state);
          if (found === undefined) return cell('–');
          return cell(found.low === found.high ? found.low : `${found.low} – ${found.high}`);
        }),
        cell(labels(`quantity-unit.${unit}`)),
        addsUp === false ? { is: 'alert', of: plain(labels('claim.does-not-add-up')) } : [],
        supportLinks(
          view,
          states.flatMap((one) => one.seqs),
        ),
      ]),
    },
  ];
}

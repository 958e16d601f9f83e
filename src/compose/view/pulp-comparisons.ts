import type { PulpComparison, PulpPair, PulpPlace } from '../../core/model/results.js';
import type { Block } from '../../core/words/blocks.js';
import { plain } from '../../core/words/blocks.js';
import { exhibitLinks, type View } from './context.js';
import { tableOf } from './tables.js';

/** Delivery against loading, and two parties at one stop: the change of each place, and what is not alike. */
export function comparisonBlocks(view: View): Block[] {
  const { format, labels, names } = view;
  const all = view.input.assessment.pulpComparisons ?? [];
  if (all.length === 0) return [];
  const rows = all.flatMap((one) =>
    one.pairs.length === 0 ? [{ one }] : one.pairs.map((pair) => ({ one, pair })),
  );
  return [
    { is: 'heading', level: 2, text: labels('sub.comparisons') },
    { is: 'paragraph', of: plain(labels('comparison.how')) },
    tableOf<{ one: PulpComparison; pair?: PulpPair }>(view, rows, [
      ['line', 2.2, ({ one }) => names.line(one.line)],
      ['what', 2.4, ({ one }) => `${labels(`comparison.${one.is}`)}, ${names.stop(one.stop)}`],
      [
        'position',
        1.2,
        ({ pair }) => (pair === undefined ? labels('comparison.no-place') : placeInWords(view, pair.place)),
      ],
      ['readings', 1, ({ one, pair }) => (pair?.counts ?? one.counts).join(' / '), 'right'],
      [
        'change',
        2.4,
        ({ one, pair }) =>
          pair === undefined
            ? `${format.signed(one.leastRise)} – ${format.signed(one.mostRise)}`
            : `${format.signed(pair.change)} ± ${format.difference(pair.guardKelvin)}`,
        'right',
      ],
      ['verdict', 1.4, ({ one, pair }) => labels(`change.${pair?.answer ?? one.answer}`)],
      ['exhibits', 1.2, ({ one, pair }) => exhibitLinks(view, pair?.evidence ?? one.evidence, 3)],
    ]),
    ...unlike(view, all),
  ];
}

/** What readings do not share, once for each line and kind: means of unlike readings are not subtracted. */
function unlike({ labels, names }: View, all: readonly PulpComparison[]): Block[] {
  const items = all.flatMap(({ line, is, differs }): Block[][] =>
    differs.length === 0
      ? []
      : [
          [
            {
              is: 'paragraph',
              of: plain(
                `${names.line(line)}, ${labels(`comparison.${is}`).toLowerCase()}: ${differs.map((one) => labels(`pulps-differ.${one}`)).join('; ')}.`,
              ),
            },
          ],
        ],
  );
  return items.length === 0 ? [] : [{ is: 'list', ordered: false, items }];
}

export function placeInWords({ labels }: View, { position, pallet, height, carton }: PulpPlace): string {
  return [
    ...(position === undefined ? [] : [labels(`position.${position}`)]),
    ...(pallet === undefined ? [] : [`${labels('pulp-place.pallet')} ${pallet}`]),
    ...(height === undefined ? [] : [labels(`height.${height}`)]),
    ...(carton === undefined ? [] : [`${labels('pulp-place.carton')} ${carton}`]),
  ].join(', ');
}

import type { ExcursionHeat, TemperatureResult } from '../../../core/model/results.js';
import { type Block, plain } from '../../../core/words/blocks.js';
import type { View } from '../context.js';
import { tableOf } from '../tables.js';

/** Excursions by class: how many, how long, how much; and the time in range outside normal operation. */
export function classBlocks(view: View, result: TemperatureResult): Block[] {
  const { format, labels } = view;
  const { classes, inRangeOutsideNormal } = result.excursionTotals;
  const known = result.channels.find(({ channel }) => channel === result.judged)?.knownSeconds ?? 0;
  if (result.band === undefined || classes.length === 0) return [];
  return [
    { is: 'heading', level: 2, text: labels('sub.excursion-classes') },
    tableOf(view, classes, [
      ['class', 2, (one) => labels(`class.${one.class}`)],
      ['excursions', 1, (one) => format.number(one.count), 'right'],
      ['length', 1.2, (one) => format.duration(one.seconds), 'right'],
      ['share', 0.9, (one) => (known === 0 ? '–' : format.share(one.seconds / known)), 'right'],
      ['degree-hours', 2, (one) => format.degreeHours(one.degreeHours), 'right'],
      [
        'cause',
        3,
        (one) =>
          one.class === 'not-explained'
            ? '–'
            : one.causes
                .map(({ is, count }) => `${labels(`cause.${is}`)} (${format.number(count)})`)
                .join('; '),
      ],
    ]),
    ...(inRangeOutsideNormal === undefined
      ? []
      : [
          {
            is: 'paragraph' as const,
            of: plain(labels('air.outside-normal').replace('SHARE', format.share(inRangeOutsideNormal))),
          },
        ]),
  ];
}

/** Return minus supply air of one excursion, against the usual of the trip; undefined where it was not computed. */
export function heatWords(
  { format, labels }: Pick<View, 'format' | 'labels'>,
  heat: ExcursionHeat | undefined,
  usual: TemperatureResult['usualReturnMinusSupply'],
): string | undefined {
  if (heat === undefined) return undefined;
  const told = labels(usual === undefined ? 'heat.alone' : 'heat.told')
    .replace('DURING', format.difference(heat.kelvin))
    .replace('USUAL', format.difference(usual?.median ?? 0));
  return heat.shows === undefined ? told : `${told}: ${labels(`heat.${heat.shows}`)}`;
}

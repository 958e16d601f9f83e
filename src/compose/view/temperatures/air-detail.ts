import type { ChannelDifference, TemperatureResult } from '../../../core/model/results.js';
import { type Block, plain, text } from '../../../core/words/blocks.js';
import { exhibitLinks, type View } from '../context.js';
import { tableOf } from '../tables.js';

/** Further detail of a log: cycling about the set point, sensor comparison, excluded values. */
export function airDetail(view: View, result: TemperatureResult): Block[] {
  return [
    ...cycling(view, result),
    ...sensors(
      view,
      'sub.return-supply',
      result.returnMinusSupply === undefined ? [] : [result.returnMinusSupply],
    ),
    ...jumps(view, result),
  ];
}

/** Sensors of several logs, or probes and return air, compared. */
export function sensorBlocks(view: View): Block[] {
  return sensors(view, 'sub.sensors', view.input.assessment.sensorDifferences ?? []);
}

const heading = (view: View, name: string): Block => ({ is: 'heading', level: 2, text: view.labels(name) });

function cycling(view: View, { cycling: all = [], run }: TemperatureResult): Block[] {
  const { format, labels, words } = view;
  if (all.length === 0) return [];
  const mode = (name: 'continuous' | 'start-stop' | undefined) =>
    name === undefined ? undefined : labels(`run.${name}`);
  return [
    heading(view, 'sub.cycling'),
    ...words.blocks('sections/cycling', {
      asked: mode(run?.asked),
      logged: mode(run?.logged),
      usual:
        run?.usualSwingKelvin === undefined ? undefined : { is: 'difference', kelvin: run.usualSwingKelvin },
      tolerance: { is: 'difference', kelvin: all[0]?.toleranceKelvin ?? 0 },
      bill: all.some((one) => one.setPointFrom === 'bill'),
    }),
    tableOf(view, all, [
      ['channel', 1.3, (one) => labels(`channel.${one.channel}`)],
      ['mean-offset', 1.8, (one) => format.signed(one.meanOffset), 'right'],
      ['farthest-below', 1.8, (one) => format.signed(one.lowest.kelvin), 'right'],
      ['farthest-above', 1.8, (one) => format.signed(one.highest.kelvin), 'right'],
      [
        'within',
        0.9,
        (one) => (one.knownSeconds === 0 ? '–' : format.share(one.withinSeconds / one.knownSeconds)),
        'right',
      ],
      ['swings', 0.8, (one) => format.number(one.cycles), 'right'],
      [
        'swing',
        1.8,
        (one) => (one.swingKelvin === undefined ? '–' : format.difference(one.swingKelvin)),
        'right',
      ],
      [
        'period',
        1,
        (one) => (one.periodSeconds === undefined ? '–' : format.duration(one.periodSeconds)),
        'right',
      ],
    ]),
  ];
}

function sensors(view: View, title: string, all: readonly ChannelDifference[]): Block[] {
  const { format, labels } = view;
  if (all.length === 0) return [];
  const limits = [...new Set(all.map((one) => format.difference(one.limitKelvin)))].join('; ');
  return [
    heading(view, title),
    { is: 'paragraph', of: plain(labels('air.apart-from').replace('LIMIT', limits)) },
    tableOf(view, all, [
      [
        'sensors',
        3.4,
        (one) => [
          text(`${labels(`channel.${one.first.channel}`)} `),
          ...exhibitLinks(view, [one.first.log]),
          text(` − ${labels(`channel.${one.second.channel}`).toLowerCase()} `),
          ...(one.second.log === one.first.log ? [] : exhibitLinks(view, [one.second.log])),
          ...(one.compartment === undefined ? [] : [text(`, ${view.compartment(one.compartment)}`)]),
        ],
      ],
      ['mean', 1.8, (one) => format.signed(one.mean), 'right'],
      ['lowest', 1.8, (one) => format.signed(one.min.kelvin), 'right'],
      ['highest', 1.8, (one) => format.signed(one.max.kelvin), 'right'],
      ['apart', 1.3, (one) => format.duration(one.apartSeconds), 'right'],
    ]),
  ];
}

function jumps(view: View, { jumps: all = [], jumpCount = all.length }: TemperatureResult): Block[] {
  const { format, labels, startZone } = view;
  if (all.length === 0) return [];
  const shown = all.slice(0, 12);
  return [
    heading(view, 'sub.jumps'),
    { is: 'paragraph', of: plain(labels('air.jumps')) },
    tableOf(view, shown, [
      ['channel', 1.6, (one) => labels(`channel.${one.channel}`)],
      ['time', 3, (one) => format.time(one.at, startZone)],
      ['log-row', 1, (one) => String(one.row), 'right'],
      ['reading', 2, (one) => format.temperature(one.celsius), 'right'],
      ['from-neighbours', 2, (one) => format.difference(one.kelvin), 'right'],
    ]),
    ...(jumpCount > shown.length
      ? [
          {
            is: 'paragraph',
            of: plain(labels('exhibit.more').replace('N', String(jumpCount - shown.length))),
          } as const,
        ]
      : []),
  ];
}

import type { ChannelDifference, TemperatureResult } from '../../model/results.js';
import { type Block, type Cell, plain, text } from '../blocks.js';
import { cell, exhibitLinks, type View } from './context.js';
import { column } from './tables.js';

/** What a log shows beyond the band: swings around the set point, sensors against each other, what was left out. */
export function airDetail(view: View, result: TemperatureResult): Block[] {
  return [
    ...kinetic(view, result),
    ...cycling(view, result),
    ...sensors(
      view,
      'sub.return-supply',
      result.returnMinusSupply === undefined ? [] : [result.returnMinusSupply],
    ),
    ...jumps(view, result),
  ];
}

/** Sensors of several logs, or probes and return air, against each other. */
export function sensorBlocks(view: View): Block[] {
  return sensors(view, 'sub.sensors', view.input.assessment.sensorDifferences ?? []);
}

const heading = (view: View, name: string): Block => ({ is: 'heading', level: 2, text: view.labels(name) });

function kinetic(view: View, { channels }: TemperatureResult): Block[] {
  const { format, labels } = view;
  const rows = channels.filter(
    (one) => one.meanKinetic !== undefined || one.longestSilenceSeconds !== undefined,
  );
  if (rows.length === 0) return [];
  return [
    heading(view, 'sub.kinetic'),
    ...view.words.blocks('sections/kinetic'),
    {
      is: 'table',
      columns: [
        column(view, 'channel', 2),
        column(view, 'mean', 2, 'right'),
        column(view, 'mean-kinetic', 2, 'right'),
        column(view, 'silence', 2.4, 'right'),
      ],
      rows: rows.map((one): Cell[] => [
        cell(labels(`channel.${one.channel}`)),
        cell(one.mean === undefined ? '–' : format.temperature(one.mean)),
        cell(one.meanKinetic === undefined ? '–' : format.temperature(one.meanKinetic)),
        cell(one.longestSilenceSeconds === undefined ? '–' : format.duration(one.longestSilenceSeconds)),
      ]),
    },
  ];
}

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
    {
      is: 'table',
      columns: [
        column(view, 'channel', 1.3),
        column(view, 'mean-offset', 1.8, 'right'),
        column(view, 'farthest-below', 1.8, 'right'),
        column(view, 'farthest-above', 1.8, 'right'),
        column(view, 'within', 0.9, 'right'),
        column(view, 'swings', 0.8, 'right'),
        column(view, 'swing', 1.8, 'right'),
        column(view, 'period', 1, 'right'),
      ],
      rows: all.map((one): Cell[] => [
        cell(labels(`channel.${one.channel}`)),
        cell(format.signed(one.meanOffset)),
        cell(format.signed(one.lowest.kelvin)),
        cell(format.signed(one.highest.kelvin)),
        cell(one.knownSeconds === 0 ? '–' : format.share(one.withinSeconds / one.knownSeconds)),
        cell(format.number(one.cycles)),
        cell(one.swingKelvin === undefined ? '–' : format.difference(one.swingKelvin)),
        cell(one.periodSeconds === undefined ? '–' : format.duration(one.periodSeconds)),
      ]),
    },
  ];
}

function sensors(view: View, title: string, all: readonly ChannelDifference[]): Block[] {
  const { format, labels } = view;
  if (all.length === 0) return [];
  const limits = [...new Set(all.map((one) => format.difference(one.limitKelvin)))].join('; ');
  return [
    heading(view, title),
    { is: 'paragraph', of: plain(labels('air.apart-from').replace('LIMIT', limits)) },
    {
      is: 'table',
      columns: [
        column(view, 'sensors', 3.4),
        column(view, 'mean', 1.8, 'right'),
        column(view, 'lowest', 1.8, 'right'),
        column(view, 'highest', 1.8, 'right'),
        column(view, 'apart', 1.3, 'right'),
      ],
      rows: all.map((one): Cell[] => [
        [
          text(`${labels(`channel.${one.first.channel}`)} `),
          ...exhibitLinks(view, [one.first.log]),
          text(` − ${labels(`channel.${one.second.channel}`).toLowerCase()} `),
          ...(one.second.log === one.first.log ? [] : exhibitLinks(view, [one.second.log])),
        ],
        cell(format.signed(one.mean)),
        cell(format.signed(one.min.kelvin)),
        cell(format.signed(one.max.kelvin)),
        cell(format.duration(one.apartSeconds)),
      ]),
    },
  ];
}

function jumps(view: View, { jumps: all = [], jumpCount = all.length }: TemperatureResult): Block[] {
  const { format, labels, startZone } = view;
  if (all.length === 0) return [];
  const shown = all.slice(0, 12);
  return [
    heading(view, 'sub.jumps'),
    { is: 'paragraph', of: plain(labels('air.jumps')) },
    {
      is: 'table',
      columns: [
        column(view, 'channel', 1.6),
        column(view, 'time', 3),
        column(view, 'log-row', 1, 'right'),
        column(view, 'reading', 2, 'right'),
        column(view, 'from-neighbours', 2, 'right'),
      ],
      rows: shown.map((one): Cell[] => [
        cell(labels(`channel.${one.channel}`)),
        cell(format.time(one.at, startZone)),
        cell(String(one.row)),
        cell(format.temperature(one.celsius)),
        cell(format.difference(one.kelvin)),
      ]),
    },
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

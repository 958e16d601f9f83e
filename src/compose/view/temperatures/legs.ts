import type { Band, TemperatureResult } from '../../../core/model/results.js';
import type { Block, Cell } from '../../../core/words/blocks.js';
import { cell, type View } from '../context.js';
import { formatRange } from '../range.js';
import { column, tableOf } from '../tables.js';

/** The legs between the stops, each against its own range; and the ranges of the lines where they differ. */
export function legBlocks(view: View, result: TemperatureResult): Block[] {
  const { labels } = view;
  const { legs = [], bands = [] } = result;
  return [
    ...(bands.length < 2
      ? []
      : [{ is: 'heading', level: 2, text: labels('sub.bands') } as const, bandTable(view, bands)]),
    ...(legs.length < 2
      ? []
      : [{ is: 'heading', level: 2, text: labels('sub.legs') } as const, legTable(view, legs)]),
  ];
}

function bandTable(view: View, bands: readonly Band[]): Block {
  const { format, labels, names } = view;
  return tableOf(view, bands, [
    ['lines', 3, (band) => band.lines.map(names.line).join('; ')],
    ['set-point', 1.6, (band) => format.temperature(band.setPoint), 'right'],
    ['band', 3, (band) => formatRange(view, band), 'right'],
    ['basis', 2, (band) => labels(`tolerance-from.${band.toleranceFrom}`)],
  ]);
}

function legTable(view: View, legs: NonNullable<TemperatureResult['legs']>): Block {
  const { format, labels, names } = view;
  return {
    is: 'table',
    columns: [
      column(view, 'between', 2.4),
      column(view, 'from', 2.2),
      column(view, 'lines', 2.2),
      column(view, 'band', 2),
      column(view, 'mean', 1.5, 'right'),
      column(view, 'in-band', 0.9, 'right'),
      column(view, 'excursions', 0.9, 'right'),
      column(view, 'known', 0.8, 'right'),
    ],
    rows: legs.map((leg): Cell[] => {
      const air = leg.channels.find((one) => one.channel === leg.judged);
      const share =
        leg.band === undefined || air === undefined || air.knownSeconds === 0
          ? undefined
          : air.inBandSeconds / air.knownSeconds;
      const outside = leg.excursionTotals.count;
      return [
        cell(`${names.stop(leg.from.stop)} – ${names.stop(leg.to.stop)}`),
        cell(format.time(leg.from.bound.at, view.zoneOf(leg.from.stop))),
        cell(leg.lines.length === 0 ? labels('none.empty') : leg.lines.map(names.line).join('; ')),
        cell(formatRange(view, leg.band)),
        cell(air?.mean === undefined ? '–' : format.temperature(air.mean)),
        cell(share === undefined ? '–' : format.share(share)),
        cell(leg.band === undefined ? '–' : String(outside)),
        cell(air === undefined ? '–' : format.share(air.coverage)),
      ];
    }),
  };
}

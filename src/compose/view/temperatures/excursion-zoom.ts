import { logNamed } from '../../../core/assess/logs/compartments.js';
import { zoomChart } from '../../../core/charts/zoom.js';
import type { Excursion, TemperatureResult } from '../../../core/model/results.js';
import { type Block, wordsOf } from '../../../core/words/blocks.js';
import type { View } from '../context.js';
import { judgedExcursions, listedExcursions } from './excursions.js';

/** Plots on one page. */
const MOST = 8;
const LARGEST = 3;

/** Excursions outside normal operation, and the largest of the others, in the order of time. */
function worthZoom(result: TemperatureResult): Excursion[] {
  const all = [...judgedExcursions(result)].sort((a, b) => b.degreeHours - a.degreeHours);
  const notNormal = all.filter((one) => one.class !== 'normal-operation');
  return [...new Set([...all.slice(0, LARGEST), ...notNormal])]
    .slice(0, MOST)
    .sort((a, b) => a.from - b.from);
}

/**
 * Details of the main excursions, two to a picture, so that they fill the pages; the alternative texts have their
 * numbers.
 * @param name name of the pictures, before their count
 */
export function excursionDetails(
  view: View,
  result: TemperatureResult,
  name: string,
): { blocks: Block[]; drawings: Map<string, string> } {
  const { format, labels, startZone } = view;
  const log = logNamed(view.input.logs, result);
  const shown = result.band === undefined ? [] : worthZoom(result);
  if (log === undefined || log.times.length === 0 || shown.length === 0)
    return { blocks: [], drawings: new Map() };
  const numbered = new Map(listedExcursions(result).map((one, i) => [one.id, i + 1]));
  const cause = (one: Excursion) => labels(`cause.${one.cause.is}`);
  const title = (one: Excursion) =>
    `${format.dayOf(one.from, startZone)}, ${format.clock(one.from, startZone)}: ${format.duration(one.seconds)}, ${format.short(one.peak)}; ${cause(one)}`;
  const said = (one: Excursion) =>
    wordsOf(
      view.words.line('alt-excursion', {
        number: numbered.get(one.id),
        side: one.side,
        from: { is: 'time', at: one.from, zone: startZone },
        length: { is: 'duration', seconds: one.seconds },
        peak: { is: 'temperature', celsius: one.peak },
        degreeHours: { is: 'degree-hours', kelvinHours: one.degreeHours },
        cause: cause(one).toLowerCase(),
      }),
    );
  const pairs = Array.from({ length: Math.ceil(shown.length / 2) }, (_, i) => ({
    asset: `${name}-${i + 1}.svg`,
    pair: shown.slice(2 * i, 2 * i + 2),
  }));
  return {
    blocks: [
      { is: 'heading', level: 2, text: labels('sub.zoom') },
      ...pairs.map(
        ({ asset, pair }): Block => ({
          is: 'picture',
          asset,
          alt: pair.map(said).join(' '),
          caption: [],
        }),
      ),
    ],
    drawings: new Map(
      pairs.map(({ asset, pair }) => [
        asset,
        zoomChart({ result, log, zone: startZone, shown: pair, numbered, title }, format, labels),
      ]),
    ),
  };
}

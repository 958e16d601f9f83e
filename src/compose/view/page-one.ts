import { overviewChart } from '../../core/charts/overview.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { PulpGroup, TemperatureResult } from '../../core/model/results.js';
import type { Block, Fact } from '../../core/words/blocks.js';
import type { View } from './context.js';
import { sameLocalTime } from './glance.js';
import { noticeFacts } from './page-one/notices.js';
import { outcomeRows } from './page-one/outcomes.js';
import { meanOf, samePlaceChanges } from './page-one/same-place.js';
import { setPointFact } from './page-one/set-points.js';
import { tableOf } from './tables.js';
import { airAlt, inBandShare } from './temperatures.js';

const CHART = 'overview.svg';
/** Most lines and stops of pulps on page one; all are in the section on pulps. */
const MOST_GROUPS = 8;

/** What page one of a dossier says below its facts, and its chart. */
export interface PageOne {
  blocks: Block[];
  drawings: ReadonlyMap<string, string>;
}

/** Outcome, pulps, air, notices and set points for a reader with two minutes: only what the record holds. */
export function pageOne(view: View): PageOne {
  const [log] = view.input.assessment.temperatures;
  const drawing = log === undefined ? undefined : chartOf(view, log);
  return {
    blocks: [
      ...outcomeRows(view),
      ...pulpRows(view),
      ...(log === undefined ? [] : airBlocks(view, log)),
      ...(drawing === undefined || log === undefined
        ? []
        : [{ is: 'picture' as const, asset: CHART, alt: airAlt(view, log), caption: [] }]),
      ...facts([...setPointFact(view), ...noticeFacts(view)]),
    ],
    drawings: drawing === undefined ? new Map() : new Map([[CHART, drawing]]),
  };
}

const facts = (all: Fact[]): Block[] => (all.length === 0 ? [] : [{ is: 'facts', facts: all }]);

/** Pulps of each line at each end: how many, lowest, mean, highest, in range, and the change at places read at both. */
function pulpRows(view: View): Block[] {
  const { labels, names, format } = view;
  const groups = view.input.assessment.pulps.slice(0, MOST_GROUPS);
  if (groups.length === 0) return [];
  const degrees = (celsius: number) => format.short(celsius);
  const several = view.input.state.delivery.stops.length > 2;
  return [
    tableOf(view, groups, [
      ['pulp-of', 2.8, ({ line }) => names.line(line)],
      [
        'where',
        several ? 2.6 : 1,
        (group) =>
          several
            ? `${labels(`does.${group.does}`)}, ${names.stop(group.stop)}`
            : labels(`does.${group.does}`),
      ],
      ['reading', 0.9, ({ count }) => format.number(count), 'right'],
      ['lowest', 1, ({ min }) => degrees(min), 'right'],
      ['mean', 1, (group) => degrees(meanOf(group.readings)), 'right'],
      ['highest', 1, ({ max }) => degrees(max), 'right'],
      ['in-band', 0.9, (group) => inRange(view, group), 'right'],
      ['same-place', 3.6, (group) => changeWords(view, group)],
    ]),
  ];
}

const inRange = ({ format }: View, { band, inBand, count }: PulpGroup): string =>
  band === undefined ? '–' : `${format.number(inBand)} / ${format.number(count)}`;

function changeWords({ input, labels, format }: View, group: PulpGroup): string {
  const loading = input.assessment.pulps.find(({ line, does }) => line === group.line && does === 'load');
  if (group.does === 'load' || loading === undefined) return '';
  return samePlaceChanges(loading.readings, group.readings)
    .map(({ position, kelvin }) => `${labels(`position.${position}`)} ${format.signedShort(kelvin)}`)
    .join(', ');
}

/** The air over the window in one sentence: share in range, share without normal operation, largest excursion. */
function airBlocks(view: View, result: TemperatureResult): Block[] {
  const summary = result.channels.find(({ channel }) => channel === result.judged);
  if (summary === undefined || summary.mean === undefined) return [];
  const { classes, inRangeOutsideNormal } = result.excursionTotals;
  const judged = result.excursions.filter(({ channel }) => channel === result.judged);
  const largest = [...judged].sort((a, b) => b.degreeHours - a.degreeHours)[0];
  const share = (of: number | undefined) => (of === undefined ? undefined : ({ is: 'share', of } as const));
  const degrees = (celsius: number) => ({ is: 'temperature', celsius }) as const;
  const band = result.band;
  const numbers = [view.number(result.log)].filter((one) => one !== undefined);
  return [
    {
      is: 'paragraph',
      of: view.words.line(
        'page-one-air',
        {
          channel: summary.channel,
          mean: degrees(summary.mean),
          min: summary.min && degrees(summary.min.value),
          max: summary.max && degrees(summary.max.value),
          low: band && degrees(band.low),
          high: band && degrees(band.high),
          known: share(summary.coverage),
          share: band && share(inBandShare(summary)),
          outsideNormal: classes.length === 0 ? undefined : share(inRangeOutsideNormal),
          largest: largest !== undefined,
          side: largest?.side,
          at: largest && { is: 'time', at: largest.from, zone: view.startZone },
          length: largest && { is: 'duration', seconds: largest.seconds },
          peak: largest && degrees(largest.peak),
          cause: largest && view.labels(`cause.${largest.cause.is}`),
        },
        numbers,
      ),
    },
  ];
}

function chartOf(view: View, result: TemperatureResult): string | undefined {
  const log = view.input.logs.find(({ evidence }) => evidence === result.log);
  if (log === undefined || log.times.length === 0) return undefined;
  const { from, to } = result.custody;
  const otherZone = sameLocalTime(view, from.at, to.at) ? undefined : view.endZone;
  return overviewChart(
    { result, log, zone: view.startZone, ...omitUndefined({ otherZone }) },
    view.format,
    view.labels,
  );
}

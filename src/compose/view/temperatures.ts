import { compartmentOf } from '../../core/assess/compartment-of.js';
import { logFileName, logNamed } from '../../core/assess/logs/compartments.js';
import { temperatureChart } from '../../core/charts/temperature.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { ChannelSummary, TemperatureResult } from '../../core/model/results.js';
import { celsius } from '../../core/model/temperature.js';
import { knownMilliseconds } from '../../core/model/time.js';
import { type Block, type Cell, plain, wordsOf } from '../../core/words/blocks.js';
import { cell, exhibitLinks, type View } from './context.js';
import type { DrawnSection } from './drawn-section.js';
import { sameLocalTime } from './glance.js';
import { column, listOrNone, tableOrNone } from './tables.js';
import { airDetail, sensorBlocks } from './temperatures/air-detail.js';
import { classBlocks } from './temperatures/excursion-classes.js';
import { excursionDetails } from './temperatures/excursion-zoom.js';
import { excursionTable, judgedExcursions, listedExcursions } from './temperatures/excursions.js';
import { legBlocks } from './temperatures/legs.js';
import { overlapBlocks } from './temperatures/log-overlaps.js';
import { clockStepBlocks, recorderBlocks } from './temperatures/recorders.js';

export function temperatureSection(view: View): DrawnSection {
  const { labels, words } = view;
  const blocks: Block[] = [...words.blocks('sections/temperatures')];
  const drawings = new Map<string, string>();
  const results = view.input.assessment.temperatures;
  if (results.length === 0)
    blocks.push({
      is: 'none',
      of: plain(labels(view.input.logs.length === 0 ? 'none.log' : 'none.transit-window')),
    });
  results.forEach((result, i) => {
    const name = `temperature-${i + 1}.svg`;
    if (results.length > 1) blocks.push({ is: 'heading', level: 2, text: headingOf(view, result, i + 1) });
    blocks.push(...custodyWords(view, result), ...clockStepBlocks(view, result));
    const drawing = drawingOf(view, result);
    if (drawing === undefined) blocks.push({ is: 'none', of: plain(labels('none.chart')) });
    else {
      drawings.set(name, drawing);
      blocks.push({ is: 'picture', asset: name, alt: airAlt(view, result), caption: [] });
      const zoom = excursionDetails(view, result, `excursions-${i + 1}`);
      for (const [asset, drawn] of zoom.drawings) drawings.set(asset, drawn);
      blocks.push(...zoom.blocks);
    }
    blocks.push(
      ...summaryTable(view, result),
      ...excursionTable(view, result),
      ...classBlocks(view, result),
      ...gapTable(view, result),
      ...legBlocks(view, result),
      ...airDetail(view, result),
    );
  });
  blocks.push(...overlapBlocks(view), ...recorderBlocks(view), ...sensorBlocks(view));
  return { section: { id: 'temperatures', title: labels('section.temperatures'), blocks }, drawings };
}

/** `Unit log 2, compartment rear`. */
function headingOf({ labels, compartment }: View, result: TemperatureResult, count: number): string {
  const log = `${labels('kind.unit-log')} ${count}`;
  return result.compartment === undefined ? log : `${log}, ${compartment(result.compartment)}`;
}

function custodyWords(view: View, result: TemperatureResult): Block[] {
  const { labels, startZone, endZone } = view;
  const { custody, band } = result;
  const numbers = [custody.from.evidence, custody.to.evidence, result.log].flatMap((id) => {
    const n = id === undefined ? undefined : view.number(id);
    return n === undefined ? [] : [n];
  });
  return [
    ...view.words.blocks(
      'sections/temperature-custody',
      {
        from: { is: 'time', at: custody.from.at, zone: startZone },
        fromBasis: labels(`bound.${custody.from.basis}`),
        to: { is: 'time', at: custody.to.at, zone: endZone },
        toBasis: labels(`bound.${custody.to.basis}`),
        low: band === undefined ? undefined : { is: 'temperature', celsius: band.low },
        high: band === undefined ? undefined : { is: 'temperature', celsius: band.high },
        setPoint: band === undefined ? undefined : { is: 'temperature', celsius: band.setPoint },
        tolerance: band === undefined ? undefined : { is: 'difference', kelvin: band.tolerance },
        toleranceFrom: band === undefined ? undefined : labels(`tolerance-from.${band.toleranceFrom}`),
        gapLimit: { is: 'duration', seconds: result.gapLimitSeconds },
      },
      numbers.sort((a, b) => a - b),
    ),
    ...(band === undefined ? [{ is: 'none', of: plain(labels('none.band')) } as const] : []),
  ];
}

function drawingOf(view: View, result: TemperatureResult): string | undefined {
  const log = logNamed(view.input.logs, result);
  if (log === undefined || log.times.length === 0) return undefined;
  const { custody } = result;
  return temperatureChart(
    {
      result,
      log,
      zone: view.startZone,
      ...omitUndefined({
        otherZone: sameLocalTime(view, custody.from.at, custody.to.at) ? undefined : view.endZone,
      }),
      unitChecks: view.of('round').flatMap((item) => {
        const of = compartmentOf(item, view.input.state.delivery);
        if (of !== undefined && result.compartment !== undefined && of !== result.compartment) return [];
        const at = knownMilliseconds(item.time);
        if (at === undefined) return [];
        return [{ at, ...omitUndefined({ celsius: item.boxAir && celsius(item.boxAir) }) }];
      }),
      marks: view.input.assessment.timeline.items
        .filter((item) => item.is === 'event')
        .map((item) => ({
          at: item.at,
          label: item.event === undefined ? item.label : view.labels(`event.${item.event}`),
        })),
      numbered: new Map(listedExcursions(result).map((e, i) => [e.id, i + 1])),
    },
    view.format,
    view.labels,
  );
}

/** The chart of a log in words. */
export function airAlt(view: View, result: TemperatureResult): string {
  const summary = result.channels.find((one) => one.channel === result.judged);
  const { custody, band } = result;
  const degrees = (celsius: number | undefined) =>
    celsius === undefined ? undefined : ({ is: 'temperature', celsius } as const);
  const known = summary?.mean === undefined ? undefined : summary;
  return wordsOf(
    view.words.line('alt-temperature', {
      from: { is: 'time', at: custody.from.at, zone: view.startZone },
      to: { is: 'time', at: custody.to.at, zone: view.endZone },
      channel: known?.channel,
      mean: degrees(known?.mean),
      min: degrees(known?.min?.value),
      max: degrees(known?.max?.value),
      low: degrees(band?.low),
      high: degrees(band?.high),
      share: { is: 'share', of: inBandShare(summary) ?? 0 },
      excursions: judgedExcursions(result).length,
      gaps: result.gaps.length,
    }),
  );
}

/** Share of the known time that the judged channel was in range. */
export const inBandShare = (summary: ChannelSummary | undefined): number | undefined =>
  summary === undefined || summary.knownSeconds === 0
    ? undefined
    : summary.inBandSeconds / summary.knownSeconds;

function summaryTable(view: View, result: TemperatureResult): Block[] {
  const { format, labels } = view;
  const degrees = (value: number | undefined) => cell(value === undefined ? '–' : format.temperature(value));
  const banded = result.band !== undefined;
  return tableOrNone(
    view,
    'log',
    [
      column(view, 'channel', 1.5),
      column(view, 'mean', 1.7, 'right'),
      column(view, 'lowest', 1.7, 'right'),
      column(view, 'highest', 1.7, 'right'),
      ...(banded
        ? [
            column(view, 'in-band', 1, 'right'),
            column(view, 'above', 1.3, 'right'),
            column(view, 'below', 1.3, 'right'),
          ]
        : []),
      column(view, 'known', 1, 'right'),
    ],
    result.channels.map((one): Cell[] => {
      const share = inBandShare(one);
      const held = one.channel !== 'set-point' && one.channel !== 'ambient';
      return [
        cell(labels(`channel.${one.channel}`)),
        degrees(one.mean),
        degrees(one.min?.value),
        degrees(one.max?.value),
        ...(banded
          ? [
              cell(held && share !== undefined ? format.share(share) : '–'),
              cell(held ? format.duration(one.aboveSeconds) : '–'),
              cell(held ? format.duration(one.belowSeconds) : '–'),
            ]
          : []),
        cell(format.share(one.coverage)),
      ];
    }),
    labels('sub.summary'),
  );
}

function gapTable(view: View, result: TemperatureResult): Block[] {
  const { format, labels, startZone } = view;
  return listOrNone(
    view,
    'gaps',
    result.gaps,
    [
      ['from', 3, (gap) => format.time(gap.from, startZone)],
      ['to', 3, (gap) => format.time(gap.to, startZone)],
      ['length', 1.5, (gap) => format.duration(gap.seconds), 'right'],
      ['source', 2, () => exhibitLinks(view, [result.log])],
    ],
    labels('sub.gaps'),
    logFileName(logNamed(view.input.logs, result) ?? { evidence: result.log }),
  );
}

import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { line as curve } from 'd3-shape';
import type { TemperatureResult } from '../../model/results.js';
import { fromCelsius } from '../../model/temperature.js';
import type { Zone } from '../../model/time.js';
import type { UnitLog } from '../../model/unit-log.js';
import type { Format } from '../format.js';
import type { Labels } from '../words/labels.js';
import { curves, type Point } from './reduce.js';
import { box, element, ink, label, line, svg, widthOf } from './svg.js';
import { timeTicks } from './time-axis.js';

export interface ChartMark {
  at: number;
  label: string;
}
export interface TemperatureChart {
  result: TemperatureResult;
  log: UnitLog;
  /** Zone of the axis below, and the one above where the load ends in another. */
  zone: Zone;
  otherZone?: Zone;
  /** Events to mark, in order of time. */
  marks: readonly ChartMark[];
  /** Numbers of the excursions as the table beside it counts them; others are shaded without number. */
  numbered: ReadonlyMap<string, number>;
}

const WIDTH = 500;
const HEIGHT = 265;
const PLOT = { left: 36, right: WIDTH - 36, top: 46, bottom: HEIGHT - 46 };

interface Frame {
  x: ScaleLinear<number, number>;
  y: ScaleLinear<number, number>;
  span: { from: number; to: number };
}

/** Draws the log over custody: band, set point, air, what was logged, events, numbered excursions. */
export function temperatureChart(chart: TemperatureChart, format: Format, labels: Labels): string {
  const { result, log } = chart;
  const span = {
    from: result.custody.from.at,
    to: Math.max(result.custody.to.at, result.custody.from.at + 60_000),
  };
  const run = (name: 'set-point' | 'return-air' | 'supply-air') =>
    curves(log.times, log.channels[name] ?? [], span, result.gapLimitSeconds * 1000, PLOT.right - PLOT.left);
  const air = { 'return-air': run('return-air'), 'supply-air': run('supply-air') };
  const set = run('set-point');
  const frame: Frame = {
    span,
    x: scaleLinear([span.from, span.to], [PLOT.left, PLOT.right]),
    y: scaleLinear(valueRange([...Object.values(air), set].flat(2), result), [PLOT.bottom, PLOT.top]),
  };
  return svg(
    WIDTH,
    HEIGHT,
    ...ground(result, frame),
    ...gaps(result, frame, labels),
    ...degreeAxes(frame, format),
    ...hourAxis(chart, frame, format, labels),
    ...shading(chart, frame),
    path(set, frame, { stroke: ink.full, 'stroke-width': 0.8, 'stroke-dasharray': '1 2' }),
    path(air['supply-air'], frame, { stroke: ink.soft, 'stroke-width': 0.7, 'stroke-dasharray': '4 1.6' }),
    path(air['return-air'], frame, { stroke: ink.full, 'stroke-width': 1.15 }),
    ...excursionNumbers(chart, frame),
    ...events(chart, frame),
    ...legend(chart, labels),
  );
}

function valueRange(points: readonly Point[], result: TemperatureResult): [number, number] {
  const values = points.map((point) => point[1]);
  if (result.band !== undefined) values.push(result.band.low, result.band.high);
  const low = values.length === 0 ? 0 : values.reduce((a, b) => Math.min(a, b));
  const high = values.length === 0 ? 10 : values.reduce((a, b) => Math.max(a, b));
  const room = Math.max((high - low) * 0.08, 0.8);
  return [low - room, high + room];
}

function ground({ band }: TemperatureResult, { y }: Frame): string[] {
  if (band === undefined) return [];
  const [top, bottom] = [y(band.high), y(band.low)];
  const edge = { stroke: ink.line, 'stroke-width': 0.6 };
  return [
    box(PLOT.left, top, PLOT.right - PLOT.left, bottom - top, { fill: ink.tint }),
    line(PLOT.left, top, PLOT.right, top, edge),
    line(PLOT.left, bottom, PLOT.right, bottom, edge),
  ];
}

/** Unknown time is hatched, so that it can't be read as a quiet stretch. */
function gaps(result: TemperatureResult, { x }: Frame, labels: Labels): string[] {
  return result.gaps.flatMap((gap) => {
    const [left, right] = [x(gap.from), x(gap.to)];
    const hatch: string[] = [];
    for (let at = left; at < right; at += 5)
      hatch.push(
        line(at, PLOT.bottom, Math.min(at + 5, right), PLOT.top, { stroke: ink.hair, 'stroke-width': 0.5 }),
      );
    const words = labels('chart.no-values');
    return [
      ...hatch,
      ...(right - left > widthOf(words, 7)
        ? [label((left + right) / 2, PLOT.bottom - 5, words, { size: 7, anchor: 'middle', fill: ink.soft })]
        : []),
    ];
  });
}

function degreeAxes({ y }: Frame, format: Format): string[] {
  const side = (unit: '°F' | '°C', x: number, anchor: 'start' | 'end') => {
    const [low = 0, high = 1] = y.domain();
    const scale = scaleLinear([fromCelsius(low, unit), fromCelsius(high, unit)], y.range());
    return [
      label(x, PLOT.top - 5, unit, { size: 8, anchor, weight: 600 }),
      ...scale.ticks(6).map((tick) => label(x, scale(tick) + 2.6, format.number(tick), { size: 8, anchor })),
      ...scale
        .ticks(6)
        .map((tick) =>
          line(
            anchor === 'end' ? PLOT.left - 3 : PLOT.right,
            scale(tick),
            anchor === 'end' ? PLOT.left : PLOT.right + 3,
            scale(tick),
            { stroke: ink.line },
          ),
        ),
    ];
  };
  return [
    box(PLOT.left, PLOT.top, PLOT.right - PLOT.left, PLOT.bottom - PLOT.top, {
      fill: 'none',
      stroke: ink.line,
      'stroke-width': 0.6,
    }),
    ...side('°F', PLOT.left - 5, 'end'),
    ...side('°C', PLOT.right + 5, 'start'),
  ];
}

function hourAxis(chart: TemperatureChart, { x, span }: Frame, format: Format, labels: Labels): string[] {
  const { zone, otherZone } = chart;
  const ticks = timeTicks(span.from, span.to, zone, 10);
  const rows = ticks.flatMap(({ at, day }) => [
    line(x(at), PLOT.top, x(at), PLOT.bottom + 3, {
      stroke: day ? ink.line : ink.hair,
      'stroke-width': day ? 0.8 : 0.4,
    }),
    label(x(at), PLOT.bottom + 12, format.clock(at, zone), { size: 7, anchor: 'middle' }),
    ...(day
      ? [label(x(at), PLOT.bottom + 21, format.dayOf(at, zone), { size: 7, anchor: 'middle', weight: 600 })]
      : []),
    ...(otherZone === undefined
      ? []
      : [
          label(x(at), PLOT.bottom + 30, format.clock(at, otherZone), {
            size: 6.5,
            anchor: 'middle',
            fill: ink.soft,
          }),
        ]),
  ]);
  const zones = [
    format.zoneName(span.from, zone),
    ...(otherZone === undefined ? [] : [format.zoneName(span.to, otherZone)]),
  ];
  const words =
    zones.length === 1
      ? labels('chart.one-zone').replace('ZONE', zones[0] ?? '')
      : labels('chart.two-zones')
          .replace('ZONE', zones[0] ?? '')
          .replace('OTHER', zones[1] ?? '');
  return [...rows, label(PLOT.left, PLOT.bottom + 41, words, { size: 7, fill: ink.soft })];
}

const BAR = 5;
/** Logged states as bars along the foot of the plot: filled, outlined, striped, so that grey copies tell them apart. */
function shading({ result }: TemperatureChart, { x }: Frame): string[] {
  return result.logged.map((span) =>
    stateBar(span.is, x(span.from), PLOT.bottom - BAR, Math.max(x(span.to) - x(span.from), 1)),
  );
}

function stateBar(
  is: TemperatureResult['logged'][number]['is'],
  left: number,
  top: number,
  width: number,
): string {
  switch (is) {
    case 'defrost':
      return box(left, top, width, BAR, { fill: ink.line });
    case 'door-open':
      return box(left, top, width, BAR, { fill: ink.paper, stroke: ink.full, 'stroke-width': 0.6 });
    case 'unit-off':
      return box(left, top, width, BAR, { fill: ink.full });
  }
}

function path(runs: readonly Point[][], { x, y }: Frame, stroke: Record<string, string | number>): string {
  const draw = curve<Point>(
    (p) => x(p[0]),
    (p) => y(p[1]),
  ).digits(2);
  const d = runs
    .map((run) => (run.length === 1 ? `${draw([...run, ...run]) ?? ''}` : (draw(run) ?? '')))
    .join('');
  return d === ''
    ? ''
    : element('path', { d, fill: 'none', 'stroke-linejoin': 'round', 'stroke-linecap': 'butt', ...stroke });
}

function excursionNumbers(chart: TemperatureChart, { x, y }: Frame): string[] {
  const { band } = chart.result;
  if (band === undefined) return [];
  let free = Number.NEGATIVE_INFINITY;
  return chart.result.excursions
    .filter((e) => e.channel === chart.result.judged)
    .flatMap((excursion) => {
      const [left, right] = [x(excursion.from), x(excursion.to)];
      const limit = y(excursion.side === 'above' ? band.high : band.low);
      const peak = y(excursion.peak);
      const number = chart.numbered.get(excursion.id);
      const middle = Math.max((left + right) / 2, free);
      const top = Math.max(Math.min(peak - 4, limit), PLOT.top + 8);
      if (number !== undefined) free = middle + 11;
      return [
        box(left, Math.min(limit, peak), Math.max(right - left, 0.8), Math.abs(limit - peak), {
          fill: ink.alertTint,
          stroke: ink.alert,
          'stroke-width': 0.5,
          'fill-opacity': 0.55,
        }),
        ...(number === undefined
          ? []
          : [
              label(middle, top, String(number), { size: 8, anchor: 'middle', weight: 600, fill: ink.alert }),
            ]),
      ];
    });
}

/** Events above the plot, in up to three rows; what finds no room there keeps its mark and goes without words. */
function events({ marks }: TemperatureChart, { x, span }: Frame): string[] {
  const ends = [0, 0, 0];
  return marks
    .filter((mark) => mark.at >= span.from && mark.at <= span.to)
    .flatMap((mark) => {
      const at = x(mark.at);
      const wide = widthOf(mark.label, 7);
      const anchor = at + wide > WIDTH - 4 ? 'end' : 'start';
      const start = anchor === 'end' ? at - wide : at;
      const row = ends.findIndex((end) => start >= end);
      const tick = line(at, PLOT.top - 4, at, PLOT.top + 4, { 'stroke-width': 0.9 });
      if (row < 0) return [tick];
      ends[row] = start + wide + 4;
      const y = PLOT.top - 8 - row * 9;
      return [
        line(at, y + 2, at, PLOT.top + 4, { 'stroke-width': 0.5, stroke: ink.soft }),
        tick,
        label(at + (anchor === 'end' ? -2 : 2), y, mark.label, { size: 7, anchor }),
      ];
    });
}

function legend({ result, log }: TemperatureChart, labels: Labels): string[] {
  const y = HEIGHT - 3;
  let x = PLOT.left;
  const entry = (picture: (x: number) => string, words: string) => {
    const drawn = [picture(x), label(x + 17, y, words, { size: 7 })];
    x += 17 + widthOf(words, 7) + 9;
    return drawn;
  };
  const stroke = (attributes: Record<string, string | number>) => (at: number) =>
    line(at, y - 2.4, at + 14, y - 2.4, attributes);
  const states = new Set(result.logged.map((span) => span.is));
  return [
    ...(log.channels['return-air'] === undefined
      ? []
      : entry(stroke({ 'stroke-width': 1.15 }), labels('channel.return-air'))),
    ...(log.channels['supply-air'] === undefined
      ? []
      : entry(stroke({ stroke: ink.soft, 'stroke-dasharray': '4 1.6' }), labels('channel.supply-air'))),
    ...(log.channels['set-point'] === undefined
      ? []
      : entry(stroke({ 'stroke-dasharray': '1 2' }), labels('channel.set-point'))),
    ...(result.band === undefined
      ? []
      : entry(
          (at) => box(at, y - 5, 14, 5, { fill: ink.tint, stroke: ink.line, 'stroke-width': 0.5 }),
          labels('chart.band'),
        )),
    ...(['defrost', 'door-open', 'unit-off'] as const)
      .filter((is) => states.has(is))
      .flatMap((is) => entry((at) => stateBar(is, at, y - 5, 14), labels(`cause.${is}`))),
  ];
}

import { area, line as curve } from 'd3-shape';
import type { CoursePoint } from '../assess/product/course.js';
import type { Zone } from '../model/time.js';
import type { Format } from '../words/format.js';
import type { Labels } from '../words/labels.js';
import { degreeAxes, frameOf, hourAxis, WIDTH } from './frame.js';
import type { Point } from './reduce.js';
import { box, element, ink, label, line, SMALL, svg, widthOf } from './svg.js';

export interface EnvelopeChart {
  course: readonly CoursePoint[];
  /** Air of the drawn channel, as runs of points; the warmest of all assumed channels is not drawn. */
  air: readonly Point[][];
  airName: string;
  loading: readonly Point[];
  arrival: readonly Point[];
  zone: Zone;
  otherZone?: Zone;
}

const HEIGHT = 130;
const SIZE = SMALL;

/** The computed course of the goods, as measured (filled) and as instructed (outlined), with the pulps at both ends as points. */
export function envelopeChart(chart: EnvelopeChart, format: Format, labels: Labels): string {
  const { course: points } = chart;
  const times = [
    ...points.map((p) => p.at),
    ...chart.loading.map(([at]) => at),
    ...chart.arrival.map(([at]) => at),
  ];
  const span = { from: Math.min(...times), to: Math.max(...times) };
  const room = Math.max((span.to - span.from) * 0.02, 60_000);
  const values = [
    ...points.flatMap(({ asMeasured, asInstructed }) => [
      asMeasured.low,
      asMeasured.high,
      asInstructed.low,
      asInstructed.high,
    ]),
    ...[...chart.loading, ...chart.arrival].map(([, value]) => value),
  ];
  const low = Math.min(...values);
  const high = Math.max(...values);
  const spare = Math.max((high - low) * 0.08, 0.5);
  const frame = frameOf(
    { from: span.from - room, to: span.to + room },
    [low - spare, high + spare],
    14,
    HEIGHT,
  );
  const { x, y, left, top, bottom } = frame;
  const hours = hourAxis(frame, chart, format, labels);
  const within = ([, value]: Point) => value >= low - spare && value <= high + spare;
  const band = (of: 'asMeasured' | 'asInstructed') =>
    area<CoursePoint>(
      (p) => x(p.at),
      (p) => y(p[of].low),
      (p) => y(p[of].high),
    ).digits(2)([...points]) ?? '';
  const dashed = { fill: 'none', stroke: ink.full, 'stroke-width': 0.5, 'stroke-dasharray': '3 2' };
  const air = curve<Point>(
    (p) => x(p[0]),
    (p) => y(p[1]),
  )
    .defined(within)
    .digits(2);
  const keys: [string, (at: number, foot: number) => string][] = [
    [labels('chart.as-measured'), (at, foot) => box(at, foot - 5, 14, 5, { fill: ink.line })],
    [labels('chart.as-instructed'), (at, foot) => box(at, foot - 5, 14, 5, dashed)],
    [
      chart.airName,
      (at, foot) => line(at, foot - 2.4, at + 14, foot - 2.4, { stroke: ink.soft, 'stroke-width': 0.5 }),
    ],
    [labels('chart.loading-pulps'), (at, foot) => dot(at + 7, foot - 2.6, false)],
    [labels('chart.arrival-pulps'), (at, foot) => dot(at + 7, foot - 2.6, true)],
  ];
  const foot = bottom + hours.height + 14;
  let at = left;
  const legend = keys.flatMap(([words, picture]) => {
    const drawn = [picture(at, foot), label(at + 17, foot, words, { size: SIZE })];
    at += 17 + widthOf(words, SIZE) + 6;
    return drawn;
  });
  return svg(
    WIDTH,
    foot + 4,
    ...hours.drawn,
    element('path', { d: band('asMeasured'), fill: ink.line }),
    element('path', { d: band('asInstructed'), ...dashed }),
    element('path', {
      d: chart.air.map((run) => air([...run]) ?? '').join(''),
      fill: 'none',
      stroke: ink.soft,
      'stroke-width': 0.5,
    }),
    ...degreeAxes(frame, format),
    line(x(points.at(-1)?.at ?? span.to), top, x(points.at(-1)?.at ?? span.to), bottom, {
      stroke: ink.soft,
      'stroke-dasharray': '2 2',
    }),
    ...chart.loading.map(([time, value]) => dot(x(time), y(value), false)),
    ...chart.arrival.map(([time, value]) => dot(x(time), y(value), true)),
    ...legend,
  );
}

/** Pulps at loading are rings, at delivery filled. */
const dot = (cx: number, cy: number, filled: boolean): string =>
  element('circle', {
    cx,
    cy,
    r: 2.3,
    fill: filled ? ink.full : ink.paper,
    stroke: ink.full,
    'stroke-width': 0.9,
  });

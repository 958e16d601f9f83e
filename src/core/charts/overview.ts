import type { Channel } from '../model/evidence.js';
import type { TemperatureResult } from '../model/results.js';
import type { Zone } from '../model/time.js';
import type { UnitLog } from '../model/unit-log.js';
import type { Format } from '../words/format.js';
import type { Labels } from '../words/labels.js';
import { excursionAreas } from './excursions.js';
import { degreeAxes, frameOf, hourAxis, WIDTH } from './frame.js';
import { curves } from './reduce.js';
import { svg } from './svg.js';
import { bandGround, curvePath, STROKES, valueRange } from './temperature.js';

export interface OverviewChart {
  result: TemperatureResult;
  log: UnitLog;
  zone: Zone;
  otherZone?: Zone;
}

const HEIGHT = 62;
const TOP = 14;

/** The judged air and the set point over the transit window, with the instructed range: small, for page one. */
export function overviewChart(chart: OverviewChart, format: Format, labels: Labels): string {
  const { result, log } = chart;
  const { from, to } = result.custody;
  const span = { from: from.at, to: Math.max(to.at, from.at + 60_000) };
  const curvesOf = (channel: Channel) =>
    curves(log.times, log.channels[channel] ?? [], span, result.gapLimitSeconds * 1000, WIDTH);
  const judged = result.judged === undefined ? [] : curvesOf(result.judged);
  const setPoint = curvesOf('set-point');
  const values = valueRange([...judged.flat(), ...setPoint.flat()], result);
  const frame = frameOf(span, values, TOP, HEIGHT);
  const hours = hourAxis(frame, chart, format, labels);
  return svg(
    WIDTH,
    frame.bottom + hours.height + 4,
    ...bandGround(result, frame),
    ...hours.drawn,
    ...degreeAxes(frame, format, 4),
    ...excursionAreas(result, judged, new Map(), frame).shapes,
    curvePath(setPoint, frame, STROKES['set-point']),
    curvePath(judged, frame, STROKES['return-air']),
  );
}

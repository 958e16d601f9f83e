import type { Excursion, TemperatureResult } from '../model/results.js';
import type { Zone } from '../model/time.js';
import type { UnitLog } from '../model/unit-log.js';
import type { Format } from '../words/format.js';
import type { Labels } from '../words/labels.js';
import { excursionAreas } from './excursions.js';
import { degreeAxes, frameOf, hourAxis, WIDTH } from './frame.js';
import { curves } from './reduce.js';
import { ink, label, svg } from './svg.js';
import { bandGround, curvePath, DRAWN, STROKES, valueRange } from './temperature.js';

export interface ZoomChart {
  result: TemperatureResult;
  log: UnitLog;
  zone: Zone;
  /** Excursions to show, each in a plot of its own. */
  shown: readonly Excursion[];
  /** Numbers of the table. */
  numbered: ReadonlyMap<string, number>;
  /** Title of a plot. */
  title: (excursion: Excursion) => string;
}

const HOUR = 3_600_000;
const HEIGHT = 78;
const GAP = 14;
const EDGE = 27;
const PANEL = (WIDTH - GAP) / 2;
const TITLE = 22;

/** Excursion details, two side by side: each with its own axes, and as much time around it as it lasted. */
export function zoomChart(chart: ZoomChart, format: Format, labels: Labels): string {
  const row = TITLE + HEIGHT + 40;
  const drawn = chart.shown.flatMap((one, i) =>
    panel(chart, one, (i % 2) * (PANEL + GAP), Math.floor(i / 2) * row, format, labels),
  );
  return svg(WIDTH, Math.ceil(chart.shown.length / 2) * row, ...drawn);
}

function panel(
  { result, log, zone, numbered, title }: ZoomChart,
  one: Excursion,
  left: number,
  top: number,
  format: Format,
  labels: Labels,
): string[] {
  const around = Math.max(one.to - one.from, HOUR);
  const { from, to } = result.custody;
  const start = Math.max(from.at, one.from - around);
  const span = { from: start, to: Math.max(Math.min(to.at, one.to + around), start + HOUR) };
  const runs = new Map(
    DRAWN.map((name) => [
      name,
      curves(log.times, log.channels[name] ?? [], span, result.gapLimitSeconds * 1000, PANEL),
    ]),
  );
  const judged =
    result.judged === undefined
      ? []
      : curves(log.times, log.channels[result.judged] ?? [], span, result.gapLimitSeconds * 1000, PANEL);
  const near = result.excursions.filter((other) => other.from < span.to && other.to > span.from);
  const values = valueRange([...judged.flat(), ...(runs.get('set-point') ?? []).flat()], result);
  const frame = frameOf(span, values, top + TITLE, HEIGHT, [left + EDGE, left + PANEL - EDGE]);
  const areas = excursionAreas({ ...result, excursions: near }, judged, new Map(), frame);
  const number = numbered.get(one.id);
  return [
    label(left, top + 8, `${number === undefined ? '' : `${number}: `}${title(one)}`, {
      size: 7.5,
      weight: 600,
      fill: one.class === 'normal-operation' ? ink.full : ink.alert,
    }),
    ...bandGround(result, frame),
    ...hourAxis(frame, { zone }, format, labels, 5).drawn,
    ...areas.shapes,
    curvePath(runs.get('set-point') ?? [], frame, STROKES['set-point']),
    curvePath(judged, frame, STROKES['return-air']),
    ...degreeAxes(frame, format),
  ];
}

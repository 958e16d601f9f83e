import { line as curve } from 'd3-shape';
import type { TemperatureResult } from '../model/results.js';
import type { Zone } from '../model/time.js';
import type { UnitLog } from '../model/unit-log.js';
import type { Format } from '../words/format.js';
import type { Labels } from '../words/labels.js';
import { nightBox, nights, unitCheckMark, unitCheckMarks } from './day-and-unit-checks.js';
import { excursionAreas } from './excursions.js';
import { degreeAxes, type Frame, frameOf, hourAxis, WIDTH } from './frame.js';
import { type Mark, type PlacedMark, placeMarks, rowsOf } from './leaders.js';
import { curves, type Point } from './reduce.js';
import { box, element, ink, label, line, SMALL, svg, widthOf } from './svg.js';

export interface TemperatureChart {
  result: TemperatureResult;
  log: UnitLog;
  /** Zone of the axis, and of the second axis where the load ends in another zone. */
  zone: Zone;
  otherZone?: Zone;
  /** Events to mark. */
  marks: readonly Mark[];
  /** Unit checks in transit; `celsius` where the box temperature was read. */
  unitChecks?: readonly { at: number; celsius?: number }[];
  /** Numbers of the excursions in the table beside the chart; others are shaded without a number. */
  numbered: ReadonlyMap<string, number>;
}

const PLOT_HEIGHT = 180;
const MARK_ROW = 9;
const MARK_SIZE = SMALL;
const MOST_MARK_ROWS = 6;
const BAR = 5;
const LEGEND_ROW = 11;

/** Lines differ by their pattern, so that a grey copy tells them apart. */
export const STROKES = {
  'return-air': { stroke: ink.full, 'stroke-width': 1.15 },
  'supply-air': { stroke: ink.soft, 'stroke-width': 0.7, 'stroke-dasharray': '4 1.6' },
  'set-point': { stroke: ink.full, 'stroke-width': 0.8, 'stroke-dasharray': '1 2' },
} as const;
export const DRAWN = ['set-point', 'supply-air', 'return-air'] as const;

/** Draws the log over custody: range, set point, air, logged states, events, numbered excursions. */
export function temperatureChart(chart: TemperatureChart, format: Format, labels: Labels): string {
  const { result, log } = chart;
  const { from, to } = result.custody;
  const span = { from: from.at, to: Math.max(to.at, from.at + 60_000) };
  const columns = WIDTH;
  const runs = new Map(
    (
      ['return-air', 'supply-air', 'set-point', 'probe', 'probe-2', 'probe-3', 'probe-4', 'ambient'] as const
    ).map((name) => [
      name,
      curves(log.times, log.channels[name] ?? [], span, result.gapLimitSeconds * 1000, columns),
    ]),
  );
  const shown = DRAWN.map((name) => runs.get(name) ?? []);
  const values = valueRange(
    shown.flat(2),
    result,
    (chart.unitChecks ?? []).flatMap(({ at, celsius }) =>
      celsius === undefined || at < span.from || at > span.to ? [] : [celsius],
    ),
  );
  const rough = frameOf(span, values, 0, PLOT_HEIGHT);
  const placed = placeMarks(
    chart.marks.filter((mark) => mark.at >= span.from && mark.at <= span.to),
    (at) => rough.x(at),
    WIDTH / 2,
    MARK_SIZE,
    MOST_MARK_ROWS,
  );
  const frame = frameOf(span, values, 14 + rowsOf(placed) * MARK_ROW, PLOT_HEIGHT);
  const hours = hourAxis(frame, chart, format, labels);
  const foot = frame.bottom + hours.height + 14;
  const judged = result.judged === undefined ? [] : (runs.get(result.judged) ?? []);
  const excursions = excursionAreas(result, judged, chart.numbered, frame);
  const keys = legend(chart, frame.left, foot, labels);
  return svg(
    WIDTH,
    keys.bottom + 4,
    ...bandGround(result, frame),
    ...hours.drawn,
    ...nights(span, chart.zone, frame),
    ...unknownTimes(result, frame, labels),
    ...degreeAxes(frame, format),
    ...excursions.shapes,
    ...result.logged.map((state) =>
      stateBar(
        state.is,
        frame.x(state.from),
        frame.bottom - BAR,
        Math.max(frame.x(state.to) - frame.x(state.from), 1),
      ),
    ),
    ...DRAWN.map((name) => curvePath(runs.get(name) ?? [], frame, STROKES[name])),
    ...unitCheckMarks(chart, frame),
    ...excursions.numbers,
    ...placed.flatMap((mark) => eventMark(mark, frame)),
    ...keys.drawn,
  );
}

export function valueRange(
  points: readonly Point[],
  result: TemperatureResult,
  more: readonly number[] = [],
): [number, number] {
  const values = [...more, ...points.map((point) => point[1])];
  if (result.band !== undefined) values.push(result.band.low, result.band.high);
  if (values.length === 0) return [0, 10];
  const low = values.reduce((a, b) => Math.min(a, b));
  const high = values.reduce((a, b) => Math.max(a, b));
  const room = Math.max((high - low) * 0.1, 0.8);
  return [low - room, high + room];
}

export function bandGround({ band }: TemperatureResult, { left, right, y }: Frame): string[] {
  if (band === undefined) return [];
  const [top, bottom] = [y(band.high), y(band.low)];
  const edge = { stroke: ink.line, 'stroke-width': 0.6 };
  return [
    box(left, top, right - left, bottom - top, { fill: ink.tint }),
    line(left, top, right, top, edge),
    line(left, bottom, right, bottom, edge),
  ];
}

/** Unknown time is hatched, so that it can't be read as a quiet stretch. */
function unknownTimes(result: TemperatureResult, frame: Frame, labels: Labels): string[] {
  const { x, top, bottom } = frame;
  const height = bottom - top;
  return result.gaps.flatMap((gap) => {
    const [left, right] = [x(gap.from), x(gap.to)];
    const hatch: string[] = [];
    for (let start = left - height; start < right; start += 6) {
      const from = Math.max(start, left);
      const to = Math.min(start + height, right);
      if (to > from)
        hatch.push(
          line(from, bottom - (from - start), to, bottom - (to - start), {
            stroke: ink.line,
            'stroke-width': 0.35,
          }),
        );
    }
    const words = labels('chart.no-values');
    const wide = widthOf(words, SMALL) + 4;
    if (right - left < wide) return hatch;
    const middle = (left + right) / 2;
    return [
      ...hatch,
      box(middle - wide / 2, bottom - 17, wide, 10, { fill: ink.paper }),
      label(middle, bottom - 9.5, words, { size: SMALL, anchor: 'middle', fill: ink.soft }),
    ];
  });
}

/** Logged states along the foot of the plot: grey, outlined, black. */
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

export function curvePath(
  runs: readonly Point[][],
  { x, y }: Frame,
  stroke: Readonly<Record<string, string | number>>,
): string {
  const draw = curve<Point>(
    (p) => x(p[0]),
    (p) => y(p[1]),
  ).digits(2);
  const d = runs.map((run) => draw(run) ?? '').join('');
  return d === '' ? '' : element('path', { d, fill: 'none', 'stroke-linejoin': 'round', ...stroke });
}

function eventMark({ mark, x, anchor, row }: PlacedMark, { top }: Frame): string[] {
  const tick = line(x, top - 3, x, top + 4, { 'stroke-width': 0.9 });
  if (row === undefined) return [tick];
  const y = top - 6 - row * MARK_ROW;
  return [
    line(x, y - 5, x, top, { 'stroke-width': 0.5, stroke: ink.line }),
    tick,
    label(x + (anchor === 'end' ? -3 : 3), y, mark.label, { size: MARK_SIZE, anchor }),
  ];
}

function legend(
  { result, log, unitChecks: seen = [] }: TemperatureChart,
  left: number,
  firstRow: number,
  labels: Labels,
): { drawn: string[]; bottom: number } {
  let x = left;
  let y = firstRow;
  const entry = (picture: (at: number) => string, words: string) => {
    const wide = 17 + widthOf(words, SMALL) + 6;
    if (x + wide > WIDTH) {
      x = left;
      y += LEGEND_ROW;
    }
    const drawn = [picture(x), label(x + 17, y, words, { size: SMALL })];
    x += wide;
    return drawn;
  };
  const states = new Set(result.logged.map((state) => state.is));
  const drawn = [
    ...[...DRAWN]
      .reverse()
      .filter((name) => log.channels[name] !== undefined)
      .flatMap((name) =>
        entry((at) => line(at, y - 2.4, at + 14, y - 2.4, STROKES[name]), labels(`channel.${name}`)),
      ),
    ...(result.band === undefined
      ? []
      : entry(
          (at) => box(at, y - 5, 14, 5, { fill: ink.tint, stroke: ink.line, 'stroke-width': 0.5 }),
          labels('chart.band'),
        )),
    ...(result.excursions.length === 0
      ? []
      : entry(
          (at) => box(at, y - 5, 14, 5, { fill: ink.alertTint, stroke: ink.alert, 'stroke-width': 0.5 }),
          labels('chart.outside'),
        )),
    ...(['defrost', 'door-open', 'unit-off'] as const)
      .filter((is) => states.has(is))
      .flatMap((is) => entry((at) => stateBar(is, at, y - 5, 14), labels(`cause.${is}`))),
    ...entry((at) => nightBox(at, at + 14, y - 4.5), labels('chart.night')),
    ...(seen.length === 0 ? [] : entry((at) => unitCheckMark(at + 7, y - 2.5), labels('chart.look'))),
  ];
  return { drawn, bottom: y };
}

import { area } from 'd3-shape';
import type { TemperatureResult } from '../model/results.js';
import type { Frame } from './frame.js';
import type { Point } from './reduce.js';
import { box, element, ink, label } from './svg.js';

interface Shaded {
  shapes: string[];
  /** To be drawn above the curves. */
  numbers: string[];
}

/** The area between the curve and the limit it crossed, shaded and numbered as in the table. */
export function excursionAreas(
  result: TemperatureResult,
  runs: readonly Point[][],
  numbered: ReadonlyMap<string, number>,
  frame: Frame,
): Shaded {
  const { band } = result;
  const { x, y, top, left } = frame;
  const shaded: Shaded = { shapes: [], numbers: [] };
  if (band === undefined) return shaded;
  let free = left + 7;
  for (const one of [...result.excursions].sort((a, b) => a.from - b.from)) {
    if (one.channel !== result.judged) continue;
    const above = one.side === 'above';
    const limit = above ? band.high : band.low;
    const draw = area<Point>(
      (p) => x(p[0]),
      y(limit),
      (p) => y(above ? Math.max(p[1], limit) : Math.min(p[1], limit)),
    ).digits(2);
    const parts = runs.map((run) => part(run, one.from, one.to)).filter((points) => points.length > 1);
    for (const points of parts)
      shaded.shapes.push(
        element('path', {
          d: draw(points) ?? '',
          fill: ink.alertTint,
          stroke: ink.alert,
          'stroke-width': 0.5,
        }),
      );
    const number = numbered.get(one.id);
    if (number === undefined) continue;
    const middle = Math.max(x(one.peakAt), free);
    free = middle + 11;
    const peak = [one.peak, ...parts.flat().map((p) => p[1])].reduce((a, b) =>
      above ? Math.max(a, b) : Math.min(a, b),
    );
    const base = above ? Math.max(y(peak) - 4, top + 9) : y(peak) + 11;
    const words = String(number);
    const wide = 4 + words.length * 4.6;
    shaded.numbers.push(
      box(middle - wide / 2, base - 7, wide, 8.6, { fill: ink.paper, rx: 1.5 }),
      label(middle, base, words, { size: 8.5, anchor: 'middle', weight: 600, fill: ink.alert }),
    );
  }
  return shaded;
}

/** The points of a run within a span, with interpolated values at its ends. */
function part(run: readonly Point[], from: number, to: number): Point[] {
  const inside = run.filter(([at]) => at > from && at < to);
  const ends = [from, to].flatMap((at): Point[] => {
    const value = valueAt(run, at);
    return value === undefined ? [] : [[at, value]];
  });
  return [...ends, ...inside].sort((a, b) => a[0] - b[0]);
}

function valueAt(run: readonly Point[], at: number): number | undefined {
  const next = run.findIndex((point) => point[0] >= at);
  const right = run[next];
  if (right === undefined) return undefined;
  if (right[0] === at) return right[1];
  const left = run[next - 1];
  if (left === undefined) return undefined;
  return left[1] + ((right[1] - left[1]) * (at - left[0])) / (right[0] - left[0]);
}

import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { fromCelsius } from '../model/temperature.js';
import type { Zone } from '../model/time.js';
import type { Format } from '../words/format.js';
import type { Labels } from '../words/labels.js';
import { box, ink, label, line, SMALL } from './svg.js';
import { timeTicks } from './time-axis.js';

export const WIDTH = 500;

/** The plot's edges and its two scales: milliseconds to x, °C to y. */
export interface Frame {
  left: number;
  right: number;
  top: number;
  bottom: number;
  span: { from: number; to: number };
  x: ScaleLinear<number, number>;
  y: ScaleLinear<number, number>;
}

const EDGE = 34;

export function frameOf(
  span: { from: number; to: number },
  values: [low: number, high: number],
  top: number,
  height: number,
  [left, right]: readonly [left: number, right: number] = [EDGE, WIDTH - EDGE],
): Frame {
  const bottom = top + height;
  return {
    left,
    right,
    top,
    bottom,
    span,
    x: scaleLinear([span.from, span.to], [left, right]),
    y: scaleLinear(values, [bottom, top]),
  };
}

/** °F on the left and °C on the right of one plot. */
export function degreeAxes(frame: Frame, format: Format, most = 6): string[] {
  const { left, right, top, bottom, y } = frame;
  const [low = 0, high = 1] = y.domain();
  const side = (unit: '°F' | '°C', at: number, outward: -1 | 1) => {
    const scale = scaleLinear([fromCelsius(low, unit), fromCelsius(high, unit)], y.range());
    const anchor = outward < 0 ? 'end' : 'start';
    return [
      label(at + outward * 5, top - 4, unit, { size: 8, anchor, weight: 600 }),
      ...scale
        .ticks(most)
        .filter((tick) => scale(tick) > top + 4)
        .flatMap((tick) => [
          label(at + outward * 5, scale(tick) + 2.6, format.number(tick), { size: 8, anchor }),
          line(at, scale(tick), at + outward * 3, scale(tick), { stroke: ink.line }),
        ]),
    ];
  };
  return [
    box(left, top, right - left, bottom - top, { fill: 'none', stroke: ink.line, 'stroke-width': 0.6 }),
    ...side('°F', left, -1),
    ...side('°C', right, 1),
  ];
}

/** Whole hours of one zone below the plot, the same instants in another zone beneath, and the names of both. */
export function hourAxis(
  frame: Frame,
  zones: { zone: Zone; otherZone?: Zone },
  format: Format,
  labels: Labels,
  most = 10,
): { drawn: string[]; height: number } {
  const { x, span, top, bottom, left } = frame;
  const { zone, otherZone } = zones;
  const ticks = timeTicks(span.from, span.to, zone, most);
  const drawn = ticks.flatMap(({ at, day }) => [
    line(x(at), top, x(at), bottom + 3, {
      stroke: day ? ink.line : ink.hair,
      'stroke-width': day ? 0.8 : 0.4,
    }),
    label(x(at), bottom + 12, format.clock(at, zone), { size: SMALL, anchor: 'middle' }),
    ...(day
      ? [label(x(at), bottom + 21, format.dayOf(at, zone), { size: SMALL, anchor: 'middle', weight: 600 })]
      : []),
    ...(otherZone === undefined
      ? []
      : [
          label(x(at), bottom + 30, format.clock(at, otherZone), {
            size: SMALL,
            anchor: 'middle',
            fill: ink.soft,
          }),
        ]),
  ]);
  const here = format.zoneName(span.from, zone);
  const words =
    otherZone === undefined
      ? labels('chart.one-zone').replace('ZONE', here)
      : labels('chart.two-zones').replace('ZONE', here).replace('OTHER', format.zoneName(span.to, otherZone));
  const height = otherZone === undefined ? 33 : 42;
  return { drawn: [...drawn, label(left, bottom + height, words, { size: SMALL, fill: ink.soft })], height };
}

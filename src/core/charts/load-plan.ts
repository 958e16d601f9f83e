import type { LoadPlan, PlacedPallet } from '../model/results.js';
import { box, element, ink, label, line, SMALL, svg, widthOf } from './svg.js';

/** A pulp point: where it is drawn, and what was read there, ready to print. */
export interface PulpPoint {
  /** Distance from the bulkhead and from the left wall, metres. */
  y: number;
  x: number;
  loading?: string;
  delivery?: string;
}

export interface LoadPicture {
  plan: LoadPlan;
  /** Inside of the trailer, metres: as stated, or as assumed for the drawing. */
  length: number;
  width: number;
  /** Letter and name of each line, in the order of the bill. */
  lines: readonly { id: string; letter: string; name: string }[];
  drains?: 'rear' | 'front' | 'both' | 'none';
  airChute: boolean;
  /** Bulkheads between compartments, metres from the front wall, and the name of each compartment in its middle. */
  compartments: readonly { name: string; middle: number; bulkhead?: number }[];
  /** Bracing whose place along the trailer is known, metres from the bulkhead. */
  braces: readonly { y: number }[];
  points: readonly PulpPoint[];
  words: {
    unit: string;
    doors: string;
    loading: string;
    delivery: string;
    drain: string;
    brace: string;
    chute: string;
    pulp: string;
  };
}

const WIDTH = 500;
const LEFT = 46;
const RIGHT = 22;
const TOP = 16;
const STRIP = 10;
/** Baseline of the names of compartments under the floor. */
const NAME_BELOW = 9;

/** The floor from above, to scale: nose and unit on the left, doors on the right, the truck's left side below. */
export function loadPicture(picture: LoadPicture): string {
  const { plan, length, width, words } = picture;
  const needed = Math.max(length, ...plan.pallets.map((one) => one.y + one.length));
  const scale = (WIDTH - LEFT - RIGHT) / needed;
  const along = (y: number) => LEFT + y * scale;
  const tall = width * scale;
  const across = (x: number) => TOP + tall - x * scale;
  const bottom = TOP + tall;
  const named = picture.compartments.length > 0 ? NAME_BELOW + 3 : 0;
  const letters = new Map(
    picture.lines.map(({ id, letter }, i) => [id, { letter, fill: FILLS[i % FILLS.length] }]),
  );

  const strip = pulpStrip(picture, along, across, bottom + named);
  const legendTop = bottom + named + 8 + strip.height;
  const legend = legendOf(picture, legendTop);
  return svg(
    WIDTH,
    legendTop + legend.height + 2,
    box(along(0), TOP, length * scale, tall, { fill: ink.paper, stroke: ink.full, 'stroke-width': 1.2 }),
    box(along(0) - 12, TOP + tall * 0.2, 12, tall * 0.6, {
      fill: ink.tint,
      stroke: ink.full,
      'stroke-width': 0.8,
    }),
    label(along(0) - 15, TOP + tall / 2 + 2.5, words.unit, { size: SMALL, anchor: 'end' }),
    line(along(length), TOP, along(length) + 9, TOP - 6, { 'stroke-width': 1.2 }),
    line(along(length), bottom, along(length) + 9, bottom + 6, { 'stroke-width': 1.2 }),
    label(along(length) + 8, TOP + tall / 2, words.doors, { size: SMALL, anchor: 'middle', rotate: 90 }),
    ...plan.pallets.flatMap((one) => pallet(one, letters.get(one.line ?? ''), scale, along, across)),
    ...rowNumbers(plan, along),
    ...(picture.airChute
      ? [
          line(along(0), TOP + tall / 2, along(length * 0.92), TOP + tall / 2, {
            stroke: ink.soft,
            'stroke-dasharray': '4 3',
            'stroke-width': 0.9,
          }),
        ]
      : []),
    ...drains(picture, along, across),
    ...compartmentMarks(picture, along, bottom),
    ...picture.braces.map(({ y }) => box(along(y) - 1.2, TOP + 1, 2.4, tall - 2, { fill: ink.full })),
    ...strip.drawn,
    ...legend.drawn,
  );
}

/** Bulkheads as double lines across the floor, and the names of the compartments under it. */
function compartmentMarks(
  { compartments }: LoadPicture,
  along: (y: number) => number,
  bottom: number,
): string[] {
  return compartments.flatMap(({ name, middle, bulkhead }) => [
    label(along(middle), bottom + NAME_BELOW, name, { size: SMALL, anchor: 'middle', fill: ink.soft }),
    ...(bulkhead === undefined
      ? []
      : [-0.9, 0.9].map((aside) =>
          line(along(bulkhead) + aside, TOP - 2, along(bulkhead) + aside, bottom + 2, {
            'stroke-width': 0.8,
          }),
        )),
  ]);
}

/** Lines differ by their letter; the tints only help. */
const FILLS = [ink.paper, ink.tint, ink.hair, ink.line] as const;

function pallet(
  one: PlacedPallet,
  mark: { letter: string; fill: string | undefined } | undefined,
  scale: number,
  along: (y: number) => number,
  across: (x: number) => number,
): string[] {
  const [left, top] = [along(one.y), across(one.x + one.width)];
  const [wide, high] = [one.length * scale, one.width * scale];
  return [
    box(left + 0.4, top + 0.4, wide - 0.8, high - 0.8, {
      fill: mark?.fill ?? ink.paper,
      stroke: ink.full,
      'stroke-width': 0.7,
    }),
    label(left + 3, top + 8.5, mark?.letter ?? '?', { size: 8, weight: 600 }),
  ];
}

function rowNumbers(plan: LoadPlan, along: (y: number) => number): string[] {
  return plan.rows.flatMap(({ row }) => {
    const here = plan.pallets.filter((one) => one.row === row);
    const [first] = here;
    if (first === undefined) return [];
    const middle = here.reduce((sum, one) => sum + one.y + one.length / 2, 0) / here.length;
    return [label(along(middle), TOP - 5, String(row), { size: SMALL, anchor: 'middle', fill: ink.soft })];
  });
}

function drains(
  { drains: at, length, width }: LoadPicture,
  along: (y: number) => number,
  across: (x: number) => number,
): string[] {
  const ends =
    at === 'rear' ? [length - 0.15] : at === 'front' ? [0.15] : at === 'both' ? [0.15, length - 0.15] : [];
  return ends.flatMap((y) =>
    [0.12, width - 0.12].map((x) =>
      element('circle', {
        cx: along(y),
        cy: across(x),
        r: 2.4,
        fill: ink.paper,
        stroke: ink.full,
        'stroke-width': 1,
      }),
    ),
  );
}

/** Pulp values below the floor, each under its point or as near to the right of it as there is room. */
function pulpStrip(
  { points, words }: LoadPicture,
  along: (y: number) => number,
  across: (x: number) => number,
  bottom: number,
): { drawn: string[]; height: number } {
  if (points.length === 0) return { drawn: [], height: 0 };
  const placed = spread(
    points.map((point) => ({
      point,
      x: along(point.y),
      half: (Math.max(...[point.loading, point.delivery].map((t) => widthOf(t ?? '', SMALL))) + 4) / 2,
    })),
  );
  const top = bottom + 14;
  return {
    height: 14 + 2 * STRIP,
    drawn: [
      label(LEFT - 4, top + 8, words.loading, { size: SMALL, anchor: 'end' }),
      label(LEFT - 4, top + 8 + STRIP, words.delivery, { size: SMALL, anchor: 'end' }),
      ...placed.flatMap(({ point, x, at }) => [
        line(x, across(point.x), x, bottom + 3, { stroke: ink.soft, 'stroke-width': 0.5 }),
        line(x, bottom + 3, at, top, { stroke: ink.soft, 'stroke-width': 0.5 }),
        element('circle', { cx: x, cy: across(point.x), r: 2.6, fill: ink.full }),
        label(at, top + 8, point.loading ?? '–', { size: SMALL, anchor: 'middle' }),
        label(at, top + 8 + STRIP, point.delivery ?? '–', { size: SMALL, anchor: 'middle' }),
      ]),
    ],
  };
}

interface Spread {
  point: PulpPoint;
  x: number;
  half: number;
}

/** Moves labels apart and off the strip's own words: first from left to right, then back from the right edge. */
function spread(list: readonly Spread[]): (Spread & { at: number })[] {
  const sorted = [...list]
    .sort((a, b) => a.x - b.x)
    .map((one) => ({ ...one, at: Math.max(one.x, LEFT + one.half) }));
  sorted.forEach((one, i) => {
    const before = sorted[i - 1];
    if (before !== undefined) one.at = Math.max(one.at, before.at + before.half + one.half);
  });
  for (let i = sorted.length - 1; i >= 0; i -= 1) {
    const [one, next] = [sorted[i], sorted[i + 1]];
    if (one === undefined) continue;
    const most = next === undefined ? WIDTH - one.half : next.at - next.half - one.half;
    one.at = Math.min(one.at, most);
  }
  return sorted;
}

function legendOf(picture: LoadPicture, top: number): { drawn: string[]; height: number } {
  const { words } = picture;
  const keys: { draw: (x: number, y: number) => string; name: string }[] = [
    ...picture.lines.map(({ letter, name }, i) => ({
      name,
      draw: (x: number, y: number) =>
        box(x, y - 7, 9, 9, { fill: FILLS[i % FILLS.length], stroke: ink.full, 'stroke-width': 0.7 }) +
        label(x + 2, y, letter, { size: 7.5, weight: 600 }),
    })),
    ...(picture.points.length === 0 ? [] : [{ name: words.pulp, draw: dot(ink.full) }]),
    ...(picture.drains === undefined || picture.drains === 'none'
      ? []
      : [{ name: words.drain, draw: dot(ink.paper) }]),
    ...(picture.braces.length === 0
      ? []
      : [
          {
            name: words.brace,
            draw: (x: number, y: number) => box(x + 3, y - 7, 2.4, 9, { fill: ink.full }),
          },
        ]),
    ...(picture.airChute
      ? [
          {
            name: words.chute,
            draw: (x: number, y: number) =>
              line(x - 1, y - 2.5, x + 10, y - 2.5, { stroke: ink.soft, 'stroke-dasharray': '4 3' }),
          },
        ]
      : []),
  ];
  let [x, y] = [LEFT, top + 10];
  const drawn = keys.map(({ draw, name }) => {
    const wide = 16 + widthOf(name, 7.5) + 10;
    if (x > LEFT && x + wide > WIDTH) [x, y] = [LEFT, y + 12];
    const here = draw(x, y) + label(x + 14, y, name, { size: 7.5 });
    x += wide;
    return here;
  });
  return { drawn, height: y + 4 - top };
}

const dot = (fill: string) => (x: number, y: number) =>
  element('circle', { cx: x + 4.5, cy: y - 2.5, r: 2.6, fill, stroke: ink.full, 'stroke-width': 1 });

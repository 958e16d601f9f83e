import { scaleLinear } from 'd3-scale';
import type { TimelineItem } from '../model/results.js';
import type { Zone } from '../model/time.js';
import type { Format } from '../words/format.js';
import type { Labels } from '../words/labels.js';
import { type Mark, type PlacedMark, placeMarks, rowsOf } from './leaders.js';
import { box, element, ink, label, line, SMALL, svg, widthOf } from './svg.js';
import { timeTicks } from './time-axis.js';

export interface TimelinePicture {
  items: readonly TimelineItem[];
  /** Label of an item's mark. */
  name: (item: TimelineItem) => string;
  /** Spans drawn as bars on a row of their own. */
  bars: readonly { from: number; to: number; label: string; alert: boolean }[];
  zone: Zone;
  otherZone?: Zone;
}

const WIDTH = 500;
const LEFT = 74;
const RIGHT = WIDTH - 12;
/** Rows of small marks, below the events. */
const ROWS = [
  ['photo', ['photo', 'document']],
  ['pulp', ['pulp']],
  ['round', ['round', 'set-point']],
  ['seal', ['seal', 'bracing', 'pattern', 'pallets', 'scale']],
  ['shock', ['shock']],
  ['inspection', ['inspection']],
  ['contact', ['contact', 'statement', 'exception', 'instrument', 'particular']],
] as const;
const ROW = 14;
const MOST_EVENT_ROWS = 12;
const EVENT_ROW = 10;
const EVENT_SIZE = 7.5;

/** Everything with a known time on one axis: named events above, marks by kind below. */
export function timelinePicture(picture: TimelinePicture, format: Format, labels: Labels): string {
  const { items, bars, zone, otherZone } = picture;
  const times = [...items.map((item) => item.at), ...bars.flatMap((bar) => [bar.from, bar.to])];
  if (times.length === 0) return svg(WIDTH, 1);
  const first = times.reduce((a, b) => Math.min(a, b));
  const last = times.reduce((a, b) => Math.max(a, b));
  const room = Math.max((last - first) * 0.02, 300_000);
  const span = { from: first - room, to: last + room };
  const x = scaleLinear([span.from, span.to], [LEFT, RIGHT]);

  const alerts = new Set<Mark>();
  const marks = items
    .filter((item) => item.is === 'event' || item.is === 'outcome')
    .map((item): Mark => {
      const mark = { at: item.at, label: picture.name(item) };
      if (item.event === 'refused' || item.outcome === 'refused') alerts.add(mark);
      return mark;
    });
  const placed = placeMarks(marks, x, (LEFT + RIGHT) / 2, EVENT_SIZE, MOST_EVENT_ROWS);
  const axis = 12 + rowsOf(placed) * EVENT_ROW;
  const named = eventLabels(placed, alerts, axis);
  const barNames = [...new Set(bars.map((bar) => bar.label))];
  const marksTop = axis + 12 + barNames.length * ROW + 4;
  const rows = ROWS.filter(([, kinds]) => items.some((item) => kinds.some((kind) => kind === item.is)));
  const bottom = marksTop + rows.length * ROW + 2;

  const ticks = timeTicks(span.from, span.to, zone, 10);
  // Left of the first hour, whose label can be centred on the edge.
  const zoneNameAt =
    LEFT - 6 - Math.max(0, ...ticks.map(({ at }) => widthOf(format.clock(at, zone), SMALL) / 2));
  const hours = ticks.flatMap(({ at, day }) => [
    line(x(at), axis, x(at), bottom, { stroke: day ? ink.line : ink.hair, 'stroke-width': day ? 0.8 : 0.4 }),
    label(x(at), bottom + 9, format.clock(at, zone), { size: SMALL, anchor: 'middle' }),
    ...(day
      ? [label(x(at), bottom + 18, format.dayOf(at, zone), { size: SMALL, anchor: 'middle', weight: 600 })]
      : []),
    ...(otherZone === undefined
      ? []
      : [
          label(x(at), bottom + 27, format.clock(at, otherZone), {
            size: SMALL,
            anchor: 'middle',
            fill: ink.soft,
          }),
        ]),
  ]);
  const foot = bottom + (otherZone === undefined ? 18 : 27);
  return svg(
    WIDTH,
    foot + 4,
    ...hours,
    line(LEFT, axis, RIGHT, axis, { 'stroke-width': 1 }),
    ...named,
    ...barNames.map((name, i) => label(LEFT - 6, axis + 19 + i * ROW, name, { size: SMALL, anchor: 'end' })),
    ...bars.flatMap((bar) => {
      const y = axis + 12 + barNames.indexOf(bar.label) * ROW;
      const [left, right] = [x(bar.from), Math.max(x(bar.to), x(bar.from) + 1.5)];
      return [
        box(
          left,
          y + 1,
          right - left,
          7,
          bar.alert ? { fill: ink.alertTint, stroke: ink.alert, 'stroke-width': 0.6 } : { fill: ink.line },
        ),
      ];
    }),
    ...rows.flatMap(([name, kinds], i) => {
      const y = marksTop + i * ROW + 5;
      return [
        label(LEFT - 6, y + 2.5, labels(`timeline-row.${name}`), { size: SMALL, anchor: 'end' }),
        ...items
          .filter((item) => kinds.some((kind) => kind === item.is))
          .map((item) => markOf(item, x(item.at), y)),
      ];
    }),
    label(zoneNameAt, bottom + 9, format.zoneName(span.from, zone), {
      size: SMALL,
      anchor: 'end',
      fill: ink.soft,
    }),
    ...(otherZone === undefined
      ? []
      : [
          label(zoneNameAt, bottom + 27, format.zoneName(span.to, otherZone), {
            size: SMALL,
            anchor: 'end',
            fill: ink.soft,
          }),
        ]),
  );
}

/** Marks differ by shape, not by colour. */
function markOf(item: TimelineItem, x: number, y: number): string {
  switch (item.is) {
    case 'pulp':
    case 'set-point':
    case 'bracing':
    case 'pattern':
    case 'scale':
      return element('circle', {
        cx: x,
        cy: y,
        r: 2.2,
        fill: ink.paper,
        stroke: ink.full,
        'stroke-width': 0.8,
      });
    case 'document':
    case 'statement':
      return box(x - 2, y - 2.4, 4, 4.8, { fill: ink.paper, stroke: ink.full, 'stroke-width': 0.8 });
    default:
      return element('path', {
        d: `M${x.toFixed(2)} ${y - 2.8}l2.8 2.8l-2.8 2.8l-2.8 -2.8z`,
        fill: ink.full,
      });
  }
}

function eventLabels(placed: readonly PlacedMark[], alerts: ReadonlySet<Mark>, axis: number): string[] {
  return placed.flatMap(({ mark, x, anchor, row }) => {
    const colour = alerts.has(mark) ? ink.alert : ink.full;
    const dot = element('circle', { cx: x, cy: axis, r: 2.4, fill: colour });
    if (row === undefined) return [dot];
    const y = axis - 9 - row * EVENT_ROW;
    return [
      line(x, y - 5, x, axis, { stroke: ink.line, 'stroke-width': 0.5 }),
      dot,
      label(x + (anchor === 'end' ? -3 : 3), y, mark.label, { size: EVENT_SIZE, anchor, fill: colour }),
    ];
  });
}

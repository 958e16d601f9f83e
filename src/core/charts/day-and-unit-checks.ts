import { DateTime } from 'luxon';
import type { Zone } from '../model/time.js';
import { zoneRules } from '../model/zone-rules.js';
import type { Frame } from './frame.js';
import { box, element, ink } from './svg.js';

/** Hours of the night by the place's clock, as the legend states them. */
const DUSK = 18;
const DAWN = 6;
const STRIP = 4;

/** A strip along the top of the plot that is grey at night, by the clock of the axis. */
export function nights(
  span: { from: number; to: number },
  zone: Zone,
  { x, top }: Pick<Frame, 'x' | 'top'>,
): string[] {
  const drawn: string[] = [];
  let evening = DateTime.fromMillis(span.from, { zone: zoneRules(zone) })
    .minus({ days: 1 })
    .set({
      hour: DUSK,
      minute: 0,
      second: 0,
      millisecond: 0,
    });
  for (let i = 0; i < 1000 && evening.toMillis() < span.to; i += 1) {
    const morning = evening.plus({ days: 1 }).set({ hour: DAWN });
    const from = Math.max(evening.toMillis(), span.from);
    const to = Math.min(morning.toMillis(), span.to);
    if (to > from) drawn.push(nightBox(x(from), x(to), top));
    evening = evening.plus({ days: 1 });
  }
  return drawn;
}

export const nightBox = (left: number, right: number, top: number): string =>
  box(left, top, right - left, STRIP, { fill: ink.line });

/** Marks of unit checks: at the box temperature that was read, else along the top. */
export function unitCheckMarks(
  { unitChecks: seen = [] }: { unitChecks?: readonly { at: number; celsius?: number }[] },
  { x, y, span, top }: Frame,
): string[] {
  return seen
    .filter(({ at }) => at >= span.from && at <= span.to)
    .map(({ at, celsius }) => unitCheckMark(x(at), celsius === undefined ? top + STRIP + 4 : y(celsius)));
}

/** A hollow diamond. */
export const unitCheckMark = (x: number, y: number): string =>
  element('path', {
    d: `M${x.toFixed(2)} ${(y - 2.9).toFixed(2)}l2.9 2.9l-2.9 2.9l-2.9 -2.9z`,
    fill: ink.paper,
    stroke: ink.full,
    'stroke-width': 0.8,
  });

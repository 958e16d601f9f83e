import type { Delivery, Line } from '../model/delivery.js';
import type { Span } from '../model/results.js';
import { type Moments, pastBy } from './moments.js';

/** The way from one stop to the next, with the lines on board. */
export interface Leg {
  from: string;
  to: string;
  lines: Line[];
  /** From departure (or what stands in for it) to arrival; absent when one of them is not known. */
  span?: Span;
}

/** The ways between neighbouring stops, in the order of the bill; ways with nothing on board are left out. */
export function legsOf(delivery: Delivery, moments: Moments): Leg[] {
  const { stops, lines } = delivery;
  const order = new Map(stops.map((stop, i) => [stop.id, i]));
  const place = (id: string) => order.get(id) ?? -1;
  return stops.slice(0, -1).flatMap((stop, i) => {
    const next = stops[i + 1];
    const aboard = lines.filter((line) => place(line.from) <= i && place(line.to) > i);
    if (next === undefined || aboard.length === 0) return [];
    const left = pastBy(moments, stop.id, 'departed')?.at;
    const came = pastBy(moments, next.id, 'arrived')?.at;
    return [
      {
        from: stop.id,
        to: next.id,
        lines: aboard,
        ...(left === undefined || came === undefined || came < left
          ? {}
          : { span: { from: left, to: came } }),
      },
    ];
  });
}

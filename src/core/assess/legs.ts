import type { Line, Stop } from '../model/delivery.js';
import type { TimeRange } from '../model/results.js';
import { latestTimeOf, type Milestones } from './milestones.js';

/** The leg between two neighbouring stops of the bill. */
export interface Leg {
  /** Counted from 1 at the first stop of the bill; an empty leg keeps its number. */
  leg: number;
  from: string;
  to: string;
  /** Lines aboard: loaded at this stop or before, unloaded at the next or after. */
  lines: Line[];
}

/** Legs between neighbouring stops, in the order of the bill; empty legs are left out. */
export function legsOf(stops: readonly Stop[], lines: readonly Line[]): Leg[] {
  const order = new Map(stops.map((stop, index) => [stop.id, index]));
  const place = (id: string) => order.get(id) ?? -1;
  return stops.slice(0, -1).flatMap((stop, index) => {
    const next = stops[index + 1];
    const aboard = lines.filter((line) => place(line.from) <= index && place(line.to) > index);
    return next === undefined || aboard.length === 0
      ? []
      : [{ leg: index + 1, from: stop.id, to: next.id, lines: aboard }];
  });
}

/** Time in transit: departure (or what replaces it) to arrival; undefined when one of them is unknown. */
export function transitOf({ from, to }: Leg, milestones: Milestones): TimeRange | undefined {
  const left = latestTimeOf(milestones, from, 'departed')?.at;
  const came = latestTimeOf(milestones, to, 'arrived')?.at;
  return left === undefined || came === undefined || came < left ? undefined : { from: left, to: came };
}

import type { Zone } from '../../core/model/time.js';
import { usualOrder } from './country-order.js';
import { type DateParts, wallOf } from './wall-time.js';

/** What else is known when a date is read whose day and month can be taken for one another. */
export interface DateContext {
  /** Zone of the place; its country's order speaks for one reading. */
  zone: Zone;
  /** Latest wall-clock time, milliseconds, that it can be; undefined where days to come are meant too. */
  latest?: number | undefined;
  /** Wall-clock times, milliseconds, that it should lie near, such as planned ones. */
  near?: readonly number[] | undefined;
}

export type DateChoice =
  | { is: 'one'; wall: number }
  | { is: 'two'; walls: readonly [number, number] }
  /** No such day. */
  | { is: 'none' };

const NEAR = 10 * 86_400_000;

/**
 * Reads a date of figures. A reading that is still to come falls away. Of two that are left, the order of the
 * country and the nearness to planned times each speak for one, or for none: they decide where they do not
 * contradict each other.
 */
export function chooseDate(date: DateParts, context: DateContext): DateChoice {
  const orders = date.order === undefined ? (['month-day-year', 'day-month-year'] as const) : [date.order];
  const read = orders.flatMap((order) => {
    const wall = wallOf(date, order, date.clock)?.wall;
    return wall === undefined ? [] : [{ order, wall }];
  });
  const [first, second] = read;
  if (first === undefined) return { is: 'none' };
  if (second === undefined || first.wall === second.wall) return { is: 'one', wall: first.wall };
  const { zone, latest = Number.POSITIVE_INFINITY, near = [] } = context;
  const past = read.filter(({ wall }) => wall <= latest);
  const [only, other] = past;
  // With both to come, the caller says that it has not come yet.
  if (only !== undefined && other === undefined) return { is: 'one', wall: only.wall };
  const usual = usualOrder(zone);
  const close = read.filter(({ wall }) => near.some((at) => Math.abs(at - wall) <= NEAR));
  const voices = new Set([
    ...read.flatMap(({ order, wall }) => (order === usual ? [wall] : [])),
    ...(close.length === 1 ? close.map(({ wall }) => wall) : []),
  ]);
  const [voice, contrary] = voices;
  return voice !== undefined && contrary === undefined
    ? { is: 'one', wall: voice }
    : { is: 'two', walls: [first.wall, second.wall] };
}

import type { Channel } from '../../model/evidence.js';
import type { Envelope, ProductAssumption, Span } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { timeConstant } from './cooling.js';
import { type Heating, NO_HEATING, productsAtEnd } from './response.js';

/** What the product can have been like. */
export interface Assumed {
  log: UnitLog;
  gapLimitSeconds: number;
  window: Span;
  channels: readonly Channel[];
  /** °C at the window's start. */
  start: { low: number; high: number; mean: number };
  halfCoolingSeconds: { low: number; high: number };
  heating: Heating;
}

/** Half-cooling times that are tried between the shortest and the longest, in equal ratios; odd, for one is the middle. */
const TRIED = 7;

/** Temperatures at the window's end: for each channel one of each half-cooling time, from the shortest to the longest. */
type Ends = readonly Float64Array[];

/** What every case comes to: the coldest loading pulp without respiration, the warmest with all of it. */
export type Edges = Readonly<Record<keyof Envelope, Ends>>;

/**
 * Temperatures at the window's end over everything assumed: every air channel, seven half-cooling times from the
 * shortest to the longest, the coldest loading pulp without respiration for the low edge, the warmest with full
 * respiration for the high edge.
 */
export function edgesOf(assumed: Assumed): Edges {
  return { low: endsOf(assumed, 'low'), high: endsOf(assumed, 'high') };
}

/** Lowest and highest temperature of all cases. */
export function envelopeOf({ low, high }: Edges): Envelope {
  return { low: outermost(low, 'low'), high: outermost(high, 'high') };
}

function endsOf(
  { log, gapLimitSeconds, window, channels, start, ...rest }: Assumed,
  edge: keyof Envelope,
): Ends {
  const heating = edge === 'low' ? NO_HEATING : rest.heating;
  const starts = halfTimes(rest.halfCoolingSeconds).map((seconds) => ({
    celsius: start[edge],
    tau: timeConstant(seconds),
  }));
  return channels.map((channel) => productsAtEnd(log, channel, window, gapLimitSeconds, starts, heating));
}

function outermost(ends: Ends, edge: keyof Envelope): number {
  const all = ends.flatMap((some) => [...some]);
  return edge === 'low' ? Math.min(...all) : Math.max(...all);
}

function halfTimes({ low, high }: { low: number; high: number }): number[] {
  return Array.from({ length: TRIED }, (_, i) => low * (high / low) ** (i / (TRIED - 1)));
}

/** The assumption whose range moves one edge most: each in turn is held at its middle, and the edge compared. */
export function whatMatters(
  assumed: Assumed,
  edges: Edges,
  edge: keyof Envelope,
): { is: ProductAssumption; kelvin: number } {
  const { mean } = assumed.start;
  const ends = edges[edge];
  const held: Record<ProductAssumption, Ends> = {
    'half-cooling-time': ends.map((some) => some.subarray((TRIED - 1) / 2, (TRIED + 1) / 2)),
    'loading-pulps': endsOf({ ...assumed, start: { low: mean, high: mean, mean } }, edge),
    // The low edge is without respiration.
    respiration: edge === 'low' ? ends : endsOf({ ...assumed, heating: NO_HEATING }, edge),
    'air-channel': ends.slice(0, 1),
  };
  const whole = outermost(ends, edge);
  const moves = (Object.keys(held) as ProductAssumption[]).map((is) => ({
    is,
    kelvin: Math.abs(outermost(held[is], edge) - whole),
  }));
  return moves.reduce((most, one) => (one.kelvin > most.kelvin ? one : most));
}

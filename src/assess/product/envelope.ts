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

/** Half-cooling times that are tried between the shortest and the longest, in equal ratios. */
const TRIED = 7;

/**
 * Lowest and highest temperature at the window's end over everything assumed: every air channel, seven half-cooling
 * times from the shortest to the longest, the coldest loading pulp without respiration for the low edge, the warmest
 * with full respiration for the high edge.
 */
export function envelopeOf(assumed: Assumed): Envelope {
  return { low: edgeOf(assumed, 'low'), high: edgeOf(assumed, 'high') };
}

function edgeOf(assumed: Assumed, edge: keyof Envelope): number {
  const { log, gapLimitSeconds, window, channels, start } = assumed;
  const taus = halfTimes(assumed.halfCoolingSeconds).map(timeConstant);
  const heating = edge === 'low' ? NO_HEATING : assumed.heating;
  const starts = taus.map((tau) => ({ celsius: start[edge], tau }));
  const ends = channels.flatMap((channel) => [
    ...productsAtEnd(log, channel, window, gapLimitSeconds, starts, heating),
  ]);
  return edge === 'low' ? Math.min(...ends) : Math.max(...ends);
}

function halfTimes({ low, high }: { low: number; high: number }): number[] {
  if (high === low) return [low];
  return Array.from({ length: TRIED }, (_, i) => low * (high / low) ** (i / (TRIED - 1)));
}

/** The assumption whose range moves one edge most: each in turn is held at its middle, and the edge compared. */
export function whatMatters(
  assumed: Assumed,
  whole: Envelope,
  edge: keyof Envelope,
): { is: ProductAssumption; kelvin: number } {
  const { start, halfCoolingSeconds: half, channels } = assumed;
  const middle = Math.sqrt(half.low * half.high);
  const held: Record<ProductAssumption, Assumed> = {
    'half-cooling-time': { ...assumed, halfCoolingSeconds: { low: middle, high: middle } },
    'loading-pulps': { ...assumed, start: { low: start.mean, high: start.mean, mean: start.mean } },
    respiration: { ...assumed, heating: NO_HEATING },
    'air-channel': { ...assumed, channels: channels.slice(0, 1) },
  };
  // The low edge is without respiration, and one channel is no choice: nothing to work out.
  const idle = (is: ProductAssumption) =>
    (is === 'respiration' && edge === 'low') || (is === 'air-channel' && channels.length === 1);
  const moves = (Object.keys(held) as ProductAssumption[]).map((is) => ({
    is,
    kelvin: idle(is) ? 0 : Math.abs(edgeOf(held[is], edge) - whole[edge]),
  }));
  return moves.reduce((most, one) => (one.kelvin > most.kelvin ? one : most));
}

import type { Channel } from '../../model/evidence.js';
import { power } from '../../model/exponential.js';
import type { Envelope, ProductAssumption, TimeRange } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { timeConstant } from './cooling.js';
import { type Heating, NO_HEATING, type ProductGroup } from './heated.js';
import { groupsAtEnd } from './response.js';

/** Assumptions about the product. */
export interface EnvelopeAssumptions {
  log: UnitLog;
  gapLimitSeconds: number;
  window: TimeRange;
  channels: readonly Channel[];
  /** °C at the window's start. */
  start: { low: number; high: number; mean: number };
  halfCoolingSeconds: { low: number; high: number };
  heating: Heating;
}

/** Half-cooling times tried between the shortest and the longest, in equal ratios; odd, so that one is the middle. */
const TRIED = 7;

/** Temperatures at the window's end: for each channel one for each half-cooling time, shortest first. */
type Ends = readonly Float64Array[];

/** End temperatures of products that start alike, over all cases. */
export interface EnvelopeEdges {
  /** The coldest loading pulp without respiration. */
  low: Ends;
  /** The warmest loading pulp with full respiration. */
  high: Ends;
  /** The mean and the warmest loading pulp without respiration. */
  without: { mean: Ends; high: Ends };
}

/**
 * Temperatures at the window's end over all assumptions: every air channel, seven half-cooling times from the
 * shortest to the longest, the coldest loading pulp without respiration for the low edge, the warmest with full
 * respiration for the high edge. Products that follow one channel over one window share one walk of the log.
 */
export function envelopeEdges(all: readonly EnvelopeAssumptions[]): EnvelopeEdges[] {
  const ends = endsOf(
    all.flatMap((assumed) => [
      { assumed, celsius: assumed.start.low, heating: NO_HEATING },
      { assumed, celsius: assumed.start.mean, heating: NO_HEATING },
      { assumed, celsius: assumed.start.high, heating: NO_HEATING },
      { assumed, celsius: assumed.start.high, heating: assumed.heating },
    ]),
  );
  return all.map((_, i) => {
    const [low = [], mean = [], high = [], heated = []] = ends.slice(4 * i, 4 * i + 4);
    return { low, high: heated, without: { mean, high } };
  });
}

/** Lowest and highest temperature of all cases. */
export function envelopeOf({ low, high }: EnvelopeEdges): Envelope {
  return { low: outermost(low, 'low'), high: outermost(high, 'high') };
}

/** Products with the same start and the same respiration. */
interface Followed {
  assumed: EnvelopeAssumptions;
  celsius: number;
  heating: Heating;
}

function endsOf(all: readonly Followed[]): Ends[] {
  const ends = all.map((): Float64Array[] => []);
  const walks: { log: UnitLog; channel: Channel; window: TimeRange; gap: number; followed: number[] }[] = [];
  all.forEach(({ assumed: { log, channels, window, gapLimitSeconds: gap } }, index) => {
    for (const channel of channels) {
      const same = walks.find(
        (one) =>
          one.log === log &&
          one.channel === channel &&
          one.window.from === window.from &&
          one.window.to === window.to,
      );
      if (same === undefined) walks.push({ log, channel, window, gap, followed: [index] });
      else same.followed.push(index);
    }
  });
  for (const { log, channel, window, gap, followed } of walks) {
    const groups = followed.flatMap((index) => all[index] ?? []).map(groupOf);
    groupsAtEnd(log, channel, window, gap, groups).forEach((products, i) => {
      ends[followed[i] ?? -1]?.push(products);
    });
  }
  return ends;
}

function groupOf({ assumed, celsius, heating }: Followed): ProductGroup {
  const starts = halfTimes(assumed.halfCoolingSeconds).map((seconds) => ({
    celsius,
    tau: timeConstant(seconds),
  }));
  return { starts, heating };
}

function outermost(ends: Ends, edge: keyof Envelope): number {
  const all = ends.flatMap((some) => [...some]);
  return edge === 'low' ? Math.min(...all) : Math.max(...all);
}

function halfTimes({ low, high }: { low: number; high: number }): number[] {
  return Array.from({ length: TRIED }, (_, i) => low * power(high / low, i / (TRIED - 1)));
}

/** One envelope, and the edge in question. */
export interface EnvelopeQuery {
  assumed: EnvelopeAssumptions;
  edges: EnvelopeEdges;
  edge: keyof Envelope;
}

/** The assumption that moves one edge most: each in turn is held at its middle, and the edges are compared. */
export function dominantAssumption(
  all: readonly EnvelopeQuery[],
): { is: ProductAssumption; kelvin: number }[] {
  const high = all.filter(({ edge }) => edge === 'high');
  const heated = endsOf(
    high.map(({ assumed }) => ({ assumed, celsius: assumed.start.mean, heating: assumed.heating })),
  );
  return all.map((one) => mattersMost(one, heated[high.indexOf(one)] ?? one.edges.without.mean));
}

/** @param fromMean the edge from the mean of the loading pulps */
function mattersMost(
  { edges, edge }: EnvelopeQuery,
  fromMean: Ends,
): { is: ProductAssumption; kelvin: number } {
  const ends = edges[edge];
  const held: Record<ProductAssumption, Ends> = {
    'half-cooling-time': ends.map((some) => some.subarray((TRIED - 1) / 2, (TRIED + 1) / 2)),
    'loading-pulps': fromMean,
    // The low edge excludes respiration.
    respiration: edge === 'low' ? ends : edges.without.high,
    'air-channel': ends.slice(0, 1),
  };
  const whole = outermost(ends, edge);
  const moves = (Object.keys(held) as ProductAssumption[]).map((is) => ({
    is,
    kelvin: Math.abs(outermost(held[is], edge) - whole),
  }));
  return moves.reduce((most, one) => (one.kelvin > most.kelvin ? one : most));
}

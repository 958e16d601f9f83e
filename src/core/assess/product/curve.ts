import type { Line } from '../../model/delivery.js';
import type { Envelope, ProductResult } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { findGoods } from '../../reference/goods.js';
import { respirationOf, specificHeat } from '../../reference/respiration.js';
import { gapLimit } from '../temperature/sampling-interval.js';
import { envelopeEdges, envelopeOf } from './envelope.js';
import { heatingOf } from './product.js';

export interface EnvelopePoint extends Envelope {
  /** Milliseconds since 1970 UTC. */
  at: number;
}

/** Steps of the curve; more would make the drawing of a long log slower than all other work. */
const STEPS = 32;
const MOST_ROWS = 2_000_000;

/**
 * The result's envelope at instants from the window's start to its end, °C, for a drawing. Undefined when the
 * result has no envelope, or is of another log.
 */
export function envelopeCurve(result: ProductResult, line: Line, log: UnitLog): EnvelopePoint[] | undefined {
  const { loading, window, envelope, assumptions, toleranceKelvin } = result;
  if (loading === undefined || window === undefined || envelope === undefined) return undefined;
  if (log.evidence !== result.log || log.compartment !== result.compartment) return undefined;
  const key = findGoods(line.goods)?.key ?? '';
  const start = {
    low: loading.min - toleranceKelvin,
    high: loading.max + toleranceKelvin,
    mean: (loading.min + loading.max) / 2,
  };
  const assumed = {
    log,
    gapLimitSeconds: gapLimit(log.times).gapLimitSeconds,
    channels: assumptions.channels,
    start,
    halfCoolingSeconds: assumptions.halfCoolingSeconds,
    heating: heatingOf(respirationOf(key), specificHeat(key).joules),
  };
  const steps = Math.max(4, Math.min(STEPS, Math.floor(MOST_ROWS / Math.max(1, log.times.length))));
  const points = Array.from({ length: steps - 1 }, (_, i): EnvelopePoint => {
    const at = window.from + ((window.to - window.from) * (i + 1)) / steps;
    const [edges] = envelopeEdges([{ ...assumed, window: { from: window.from, to: at } }]);
    return { at, ...(edges === undefined ? envelope : envelopeOf(edges)) };
  });
  return [
    { at: window.from, low: start.low, high: start.high },
    ...points,
    { at: window.to, low: envelope.low, high: envelope.high },
  ];
}

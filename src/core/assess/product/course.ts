import type { Delivery, Line } from '../../model/delivery.js';
import type { ProductResult, PulpGroup } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { gapLimit } from '../temperature/sampling-interval.js';
import { cellsOf } from './air-cells.js';
import { startsAsInstructed, startsAsMeasured } from './counterfactual.js';
import { airOf, casesOf, central, heatingFor } from './product.js';
import { simulate } from './simulate.js';

/** Temperatures of the goods at one time, 95 % of the cases, °C. */
export interface CoursePoint {
  /** Milliseconds since 1970 UTC. */
  at: number;
  asMeasured: { low: number; high: number };
  asInstructed: { low: number; high: number };
}

/** Points of the course; more would not be seen. */
const STEPS = 24;

/**
 * The goods on their way, from the window's start to its end, had they been loaded as measured and as instructed: the
 * result's own cases. Undefined when the result asks nothing, or is of another log.
 */
export function productCourse(
  result: ProductResult,
  line: Line,
  log: UnitLog,
  { delivery, loading }: { delivery: Delivery; loading: PulpGroup },
): CoursePoint[] | undefined {
  const { window, assumptions } = result;
  const range = loading.band;
  if (window === undefined || range === undefined || result.asMeasured === undefined) return undefined;
  if (log.evidence !== result.log || log.compartment !== result.compartment) return undefined;
  const cells = cellsOf(window);
  const draws = casesOf(assumptions);
  const heating = heatingFor(line);
  const air = airOf(log, assumptions.channels, cells, gapLimit(log.times).gapLimitSeconds);
  let goods = [startsAsMeasured(draws, loading.readings, delivery), startsAsInstructed(draws, range)];
  const points: CoursePoint[] = [];
  const pointAt = (cell: number): CoursePoint => {
    const [asMeasured = new Float64Array(), asInstructed = new Float64Array()] = goods;
    return {
      at: window.from + ((window.to - window.from) * cell) / cells.count,
      asMeasured: central(asMeasured),
      asInstructed: central(asInstructed),
    };
  };
  points.push(pointAt(0));
  for (let step = 0; step < STEPS; step += 1) {
    const [from, to] = [step, step + 1].map((one) => Math.round((one * cells.count) / STEPS));
    const part = {
      ...air,
      first: air.first.subarray(from, to),
      ...(air.second === undefined ? {} : { second: air.second.subarray(from, to) }),
    };
    goods = simulate(part, draws, heating, goods);
    points.push(pointAt(to ?? cells.count));
  }
  return points;
}

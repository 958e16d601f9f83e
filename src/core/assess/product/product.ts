import type { Line } from '../../model/delivery.js';
import type { EvidenceId } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { Envelope, ProductResult, PulpGroup, TemperatureResult } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { findGoods } from '../../reference/goods.js';
import {
  type Respiration,
  rateStretches,
  respirationOf,
  specificHeat,
  wattsPerKilogram,
} from '../../reference/respiration.js';
import { isAround } from '../logs/compartments.js';
import type { Milestones } from '../milestones.js';
import { gapLimit } from '../temperature/sampling-interval.js';
import { transitWindowBetween } from '../transit-window.js';
import { dominantAssumption, type EnvelopeAssumptions, envelopeEdges, envelopeOf } from './envelope.js';
import { type Heating, NO_HEATING } from './heated.js';
import { type CoverageOf, coverages, knownAir } from './known-air.js';
import { packingOf } from './load.js';

/** Tolerance for the thermometers at either end, K: 2 °F, that of Fahrenheit scales in Cal. Health & Safety Code 114159(c). */
const THERMOMETERS = 10 / 9;

/** Pulps of one line at one end. */
interface End {
  min: number;
  max: number;
  mean: number;
  evidence: EvidenceId[];
  lastAt?: number;
}

/**
 * For each line and log: whether the arrival pulps are consistent with the loading pulps and the logged air. A
 * plausibility check with stated assumptions, never proof. The product at the thermometer follows the nearby air by
 * Newton's law of cooling; time on the dock before and after is not included.
 */
export function productResults(
  lines: readonly Line[],
  pulps: readonly PulpGroup[],
  logs: readonly UnitLog[],
  milestones: Milestones,
  /** Results of the same logs: where their window is that of a line, their coverage is known already. */
  temperatures: readonly TemperatureResult[] = [],
): ProductResult[] {
  const coverage = coverages(temperatures);
  const cases = lines.flatMap((line) => {
    const loading = endOf(pulps, line, line.from);
    const arrival = endOf(pulps, line, line.to);
    if (loading === undefined && arrival === undefined) return [];
    return logs
      .filter((log) => isAround(log, line))
      .flatMap((log) => caseOf(line, log, milestones, coverage, loading, arrival) ?? []);
  });
  const judged = judgeAll(
    cases.flatMap(({ result, open }) => (open === undefined ? [] : { result, ...open })),
  ).values();
  return cases.map(({ result, open }) => (open === undefined ? result : (judged.next().value ?? result)));
}

function endOf(pulps: readonly PulpGroup[], line: Line, stop: string): End | undefined {
  const group = pulps.find((one) => one.line === line.id && one.stop === stop);
  if (group === undefined) return undefined;
  const times = group.readings.flatMap((one) => one.at ?? []);
  return {
    min: group.min,
    max: group.max,
    mean: group.mean,
    evidence: group.readings.map((one) => one.evidence),
    ...omitUndefined({ lastAt: times.length === 0 ? undefined : Math.max(...times) }),
  };
}

/** A line and log that can be judged: what is known of it so far, and its assumptions. */
interface Open {
  result: ProductResult;
  arrival: End;
  assumed: EnvelopeAssumptions;
}

function caseOf(
  line: Line,
  log: UnitLog,
  milestones: Milestones,
  coverage: CoverageOf,
  loading: End | undefined,
  arrival: End | undefined,
): { result: ProductResult; open?: Omit<Open, 'result'> } | undefined {
  const custody = transitWindowBetween(milestones, line.from, line.to);
  if (custody === undefined) return undefined;
  const window = { from: custody.from.at, to: custody.to.at };
  const { gapLimitSeconds } = gapLimit(log.times);
  const air = knownAir(coverage, log, window, gapLimitSeconds);
  const key = findGoods(line.goods)?.key ?? '';
  const respiration = respirationOf(key);
  const heat = specificHeat(key);
  const result: ProductResult = {
    line: line.id,
    log: log.evidence,
    ...omitUndefined({ compartment: log.compartment }),
    verdict: 'not-decidable',
    window,
    ...omitUndefined({ loading: loading && bare(loading), arrival: arrival && bare(arrival) }),
    toleranceKelvin: THERMOMETERS,
    assumptions: {
      ...packingOf(line),
      channels: air.channels,
      ...omitUndefined({
        respiration:
          respiration === undefined
            ? undefined
            : {
                source: respiration.source.name,
                secondary: respiration.source.status === 'secondary',
              },
      }),
      specificHeat: { joulesPerKilogramKelvin: heat.joules, own: heat.own, source: heat.source.name },
      coverage: air.coverage,
      ...omitUndefined({
        afterSeconds: arrival?.lastAt === undefined ? undefined : (arrival.lastAt - window.to) / 1000,
      }),
    },
  };
  const without = (why: ProductResult['why'] & string) => ({ result: { ...result, why } });
  if (loading === undefined) return without('no-loading-pulps');
  if (arrival === undefined) return without('no-arrival-pulps');
  if (line.iced) return without('iced');
  if (air.channels.length === 0) return without('air-not-known');
  const assumed = {
    log,
    gapLimitSeconds,
    window,
    channels: air.channels,
    start: { low: loading.min - THERMOMETERS, high: loading.max + THERMOMETERS, mean: loading.mean },
    halfCoolingSeconds: result.assumptions.halfCoolingSeconds,
    heating: heatingOf(respiration, heat.joules),
  };
  return { result, open: { arrival, assumed } };
}

const bare = ({ min, max, evidence }: End) => ({ min, max, evidence });

/** Highest published respiration at the product's temperature, as heating in K/s. */
export function heatingOf(respiration: Respiration | undefined, joulesPerKilogramKelvin: number): Heating {
  if (respiration === undefined) return NO_HEATING;
  const perKilogramKelvin = (rate: number) =>
    wattsPerKilogram(rate, respiration.unit) / joulesPerKilogramKelvin;
  return rateStretches(respiration, 'high').map((one) => ({ ...one, rate: perKilogramKelvin(one.rate) }));
}

function judgeAll(open: readonly Open[]): ProductResult[] {
  const edges = envelopeEdges(open.map(({ assumed }) => assumed));
  const asked = open.flatMap((one, i) => {
    const found = edges[i];
    return found === undefined
      ? []
      : [{ ...one, edges: found, ...againstPulps(one.arrival, envelopeOf(found)) }];
  });
  const matters = dominantAssumption(asked);
  return asked.map(({ result, envelope, above, below }, i): ProductResult => {
    const most = matters[i];
    const found = {
      ...result,
      envelope,
      beyondKelvin: Math.max(0, above, below),
      ...omitUndefined({ matters: most }),
    };
    if (above > 0 && below > 0) return { ...found, verdict: 'not-decidable', why: 'pulps-on-both-sides' };
    return { ...found, verdict: above > 0 ? 'above' : below > 0 ? 'below' : 'inside' };
  });
}

/** Distance of the arrival pulps beyond either edge, and the edge concerned: the nearer one when they are inside. */
function againstPulps(arrival: End, envelope: Envelope) {
  const above = arrival.max - (envelope.high + THERMOMETERS);
  const below = envelope.low - THERMOMETERS - arrival.min;
  const nearHigh = Math.abs(arrival.max - envelope.high) < Math.abs(arrival.min - envelope.low);
  const edge: keyof Envelope = above > 0 ? 'high' : below > 0 ? 'low' : nearHigh ? 'high' : 'low';
  return { envelope, above, below, edge };
}

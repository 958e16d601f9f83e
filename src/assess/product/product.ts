import type { Line } from '../../model/delivery.js';
import type { Channel, EvidenceId } from '../../model/evidence.js';
import type { ProductResult, PulpGroup, Span } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { findProduce } from '../../reference/produce.js';
import {
  type Respiration,
  rateIn,
  rateStretches,
  respirationOf,
  specificHeat,
  wattsPerKilogram,
} from '../../reference/respiration.js';
import { sources } from '../../reference/sources.js';
import { wayBetween } from '../custody.js';
import type { Moments } from '../moments.js';
import { extent, PROBES } from '../temperature/channels.js';
import { gapLimit } from '../temperature/steps.js';
import { summarise } from '../temperature/summary.js';
import { type Assumed, edgesOf, envelopeOf, whatMatters } from './envelope.js';
import { loadOf } from './load.js';
import { type Heating, NO_HEATING } from './response.js';

/** Room for the thermometers at either end, K: 2 °F, FDA Food Code 4-203.11, from memory. */
const THERMOMETERS = 10 / 9;
/** With less of the air known nothing is said. Convention of this project. */
const KNOWN = 0.9;

/** The pulps of one line at one end. */
interface End {
  min: number;
  max: number;
  mean: number;
  evidence: EvidenceId[];
  lastAt?: number;
}

/**
 * For each line and log: whether the arrival pulps go with the loading pulps and the logged air. This is plausibility
 * with stated assumptions, never proof. The product at the thermometer is taken to follow the air near it by Newton's
 * law of cooling; what happened on the dock before and after is not in it.
 */
export function productResults(
  lines: readonly Line[],
  pulps: readonly PulpGroup[],
  logs: readonly UnitLog[],
  moments: Moments,
): ProductResult[] {
  return lines.flatMap((line) => {
    const loading = endOf(pulps, line, line.from);
    const arrival = endOf(pulps, line, line.to);
    if (loading === undefined && arrival === undefined) return [];
    return logs.flatMap((log) => productResult(line, log, moments, loading, arrival) ?? []);
  });
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
    ...(times.length === 0 ? {} : { lastAt: Math.max(...times) }),
  };
}

function productResult(
  line: Line,
  log: UnitLog,
  moments: Moments,
  loading: End | undefined,
  arrival: End | undefined,
): ProductResult | undefined {
  const custody = wayBetween(moments, line.from, line.to, extent(log));
  if (custody === undefined) return undefined;
  const window = { from: custody.from.at, to: custody.to.at };
  const { gapLimitSeconds } = gapLimit(log.times);
  const air = knownAir(log, window, gapLimitSeconds);
  const key = findProduce(line.goods)?.key ?? '';
  const respiration = respirationOf(key);
  const heat = specificHeat(key);
  const result: ProductResult = {
    line: line.id,
    log: log.evidence,
    verdict: 'not-decidable',
    window,
    ...(loading === undefined ? {} : { loading: bare(loading) }),
    ...(arrival === undefined ? {} : { arrival: bare(arrival) }),
    toleranceKelvin: THERMOMETERS,
    assumptions: {
      ...loadOf(line),
      channels: air.channels,
      ...(respiration === undefined
        ? {}
        : {
            respiration: {
              source: sources[respiration.source],
              fromMemory: respiration.basis === 'from memory',
            },
          }),
      specificHeat: { joulesPerKilogramKelvin: heat.joules, own: heat.own, source: sources[heat.source] },
      coverage: air.coverage,
      ...(arrival?.lastAt === undefined ? {} : { afterSeconds: (arrival.lastAt - window.to) / 1000 }),
    },
  };
  if (loading === undefined) return { ...result, why: 'no-loading-pulps' };
  if (arrival === undefined) return { ...result, why: 'no-arrival-pulps' };
  if (line.iced) return { ...result, why: 'iced' };
  if (air.channels.length === 0) return { ...result, why: 'air-not-known' };
  return judged(result, arrival, {
    log,
    gapLimitSeconds,
    window,
    channels: air.channels,
    start: { low: loading.min - THERMOMETERS, high: loading.max + THERMOMETERS, mean: loading.mean },
    halfCoolingSeconds: result.assumptions.halfCoolingSeconds,
    heating: heatingOf(respiration, heat.joules),
  });
}

const bare = ({ min, max, evidence }: End) => ({ min, max, evidence });

/** Return and supply air as far as they are known; a probe only where there is neither. */
function knownAir(
  log: UnitLog,
  window: Span,
  gapLimitSeconds: number,
): { channels: Channel[]; coverage: number } {
  const covered = (channel: Channel) => {
    const values = log.channels[channel];
    return values === undefined
      ? 0
      : summarise(channel, log.times, values, window, gapLimitSeconds, undefined).coverage;
  };
  const shares = (['return-air', 'supply-air', ...PROBES] as const).map((channel) => ({
    channel,
    share: covered(channel),
  }));
  const known = shares.filter((one) => one.share >= KNOWN);
  const air = known.filter((one) => one.channel === 'return-air' || one.channel === 'supply-air');
  const used = air.length > 0 ? air : known;
  return {
    channels: used.map((one) => one.channel),
    coverage:
      used.length > 0
        ? Math.min(...used.map((one) => one.share))
        : Math.max(...shares.map((one) => one.share)),
  };
}

/** Highest published rate at the product's temperature, as heating in K/s. */
export function heatingOf(respiration: Respiration | undefined, joulesPerKilogramKelvin: number): Heating {
  if (respiration === undefined) return NO_HEATING;
  const perKilogramKelvin = (rate: number) =>
    wattsPerKilogram(rate, respiration.unit) / joulesPerKilogramKelvin;
  const stretches = rateStretches(respiration, 'high').map((one) => ({
    ...one,
    rate: perKilogramKelvin(one.rate),
  }));
  const [coldest] = stretches;
  if (coldest === undefined) return NO_HEATING;
  let here = coldest;
  return (celsius) => {
    // Product stays between two published temperatures for most of the way.
    if (!(celsius >= here.from && celsius <= here.to))
      here = stretches.find((one) => celsius <= one.to) ?? here;
    return rateIn(here, celsius);
  };
}

function judged(result: ProductResult, arrival: End, assumed: Assumed): ProductResult {
  const edges = edgesOf(assumed);
  const envelope = envelopeOf(edges);
  const above = arrival.max - (envelope.high + THERMOMETERS);
  const below = envelope.low - THERMOMETERS - arrival.min;
  const edge = Math.abs(arrival.max - envelope.high) < Math.abs(arrival.min - envelope.low) ? 'high' : 'low';
  const found = {
    ...result,
    envelope,
    beyondKelvin: Math.max(0, above, below),
    matters: whatMatters(assumed, edges, above > 0 ? 'high' : below > 0 ? 'low' : edge),
  };
  if (above > 0 && below > 0) return { ...found, verdict: 'not-decidable', why: 'pulps-on-both-sides' };
  return { ...found, verdict: above > 0 ? 'above' : below > 0 ? 'below' : 'inside' };
}

import type { Delivery } from '../../model/delivery.js';
import type {
  CounterfactualVerdict,
  PlaceCounterfactual,
  PulpReading,
  WorldResult,
} from '../../model/results.js';
import { cartonSpread } from '../measurement/assumed.js';
import { judgeAgainst } from '../measurement/uncertainty.js';
import { bestEstimate, commonPlace, isOneThermometer } from '../pulp-pairs.js';
import { DRAWS, type Draws } from './draws.js';
import { quantile, shareOf, standardErrorOf } from './quantiles.js';

type Readings = readonly PulpReading[];

/** Pulps at loading and at delivery that belong together. */
export interface PlacePulps {
  loading: Readings;
  arrival: Readings;
  loadingFrom: PlaceCounterfactual['loadingFrom'];
}

/** The range that the bill instructs, °C. */
export interface InstructedRange {
  low: number;
  high: number;
}

/** A tail of the cases so small that the reading is not one of them: 95 % lie between the two. */
const TAIL = 0.025;
/**
 * A tail so small that goods loaded as instructed would not have arrived so. Smaller than the other, because the form of
 * the spreads is a convention and their ends decide it.
 */
const EXCLUDED = 0.005;
/** Share of the cases from which something would have happened. */
const SURELY = 0.95;
/** Standard errors of a share that are left open on the side of not deciding. */
const OPEN = 2;

/** Starts of a product in each case, had it been loaded as instructed: anywhere in the range, each as likely. */
export const startsAsInstructed = ({ instructed }: Draws, { low, high }: InstructedRange): Float64Array =>
  instructed.map((share) => low + (high - low) * share);

/** Starts as measured: one of the readings, each as likely, less an error of its thermometer and that of another carton. */
export function startsAsMeasured(draws: Draws, readings: Readings, facts: Delivery): Float64Array {
  const cartons = cartonSpread(facts).halfWidthKelvin;
  return draws.pick.map((pick, i) => {
    const reading = readings[Math.min(readings.length - 1, Math.floor(pick * readings.length))];
    if (reading === undefined) return Number.NaN;
    return (
      bestEstimate(reading) -
      (draws.firstError[i] ?? 0) * errorHalfWidth(reading) +
      (draws.firstCarton[i] ?? 0) * cartons
    );
  });
}

/** Half-width of a uniform error with the standard uncertainty of the reading. */
const errorHalfWidth = ({ uncertainty }: PulpReading): number => uncertainty.standardKelvin * Math.sqrt(3);

/** The two questions for one place, when its pulps at delivery are clearly out of range; else undefined. */
export function judgePlace(
  { loading, arrival, loadingFrom }: PlacePulps,
  ends: { asInstructed: Float64Array; asMeasured: Float64Array },
  { draws, range, facts }: { draws: Draws; range: InstructedRange; facts: Delivery },
): PlaceCounterfactual | undefined {
  const values = arrival.map(bestEstimate);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const widest = arrival.reduce((most, one) => (guardOf(one) > guardOf(most) ? one : most));
  const answer = judgeAgainst(mean, guardOf(widest), range);
  if (answer !== 'above' && answer !== 'below') return undefined;
  const side = answer === 'above' ? 'warm' : 'cold';
  const sameError = isOneThermometer([...loading, ...arrival]) ? draws.firstError : draws.secondError;
  const cartons = cartonSpread(facts).halfWidthKelvin;
  const asRead = (goods: Float64Array, errors: Float64Array) =>
    goods.map(
      (celsius, i) =>
        celsius + (errors[i] ?? 0) * errorHalfWidth(widest) + (draws.secondCarton[i] ?? 0) * cartons,
    );
  const isBeyond = (value: number) => (side === 'warm' ? value > range.high : value < range.low);
  const isAsFar = (value: number) => (side === 'warm' ? value >= mean : value <= mean);
  const world = (
    goods: Float64Array,
    errors: Float64Array,
  ): WorldResult & { fits: boolean; excluded: boolean } => {
    const read = asRead(goods, errors);
    const tail = shareOf(read, isAsFar);
    return {
      low: quantile(read, TAIL),
      high: quantile(read, 1 - TAIL),
      tail,
      beyondRange: shareOf(goods, isBeyond),
      excluded: tail + OPEN * standardErrorOf(EXCLUDED, DRAWS) < EXCLUDED,
      fits: isIn(tail) && isIn(shareOf(read, (value) => value === mean || !isAsFar(value))),
    };
  };
  const {
    fits: instructedFits,
    excluded: instructedExcluded,
    ...asInstructed
  } = world(ends.asInstructed, draws.secondError);
  const { fits: measuredFits, excluded: _, ...asMeasured } = world(ends.asMeasured, sameError);
  const startedBeyond = loading.every(
    (one) => judgeAgainst(bestEstimate(one), guardOf(one), range) === answer,
  );
  return {
    place: commonPlace(loadingFrom === 'same-place' ? [...loading, ...arrival] : arrival),
    loadingFrom,
    loading: {
      min: Math.min(...loading.map((one) => one.celsius)),
      max: Math.max(...loading.map((one) => one.celsius)),
    },
    arrival: { mean, guardKelvin: guardOf(widest) },
    side,
    asInstructed,
    asMeasured,
    verdict: verdictOf({
      instructedFits,
      instructedExcluded,
      measuredFits,
      startedBeyond,
      airAlone: asInstructed.beyondRange - OPEN * standardErrorOf(asInstructed.beyondRange, DRAWS) >= SURELY,
    }),
    evidence: [...loading, ...arrival].map((one) => one.evidence),
  };
}

const guardOf = ({ uncertainty }: PulpReading) => uncertainty.guardKelvin;
/** A tail is too small only when it is so by more than its own standard error leaves open. */
const isIn = (tail: number): boolean => tail + OPEN * standardErrorOf(TAIL, DRAWS) >= TAIL;

/**
 * `origin` needs goods that were clearly out of range when loaded, and would not have arrived so had they not been;
 * `transit` needs air that takes goods out of range that were loaded as instructed, where they were not clearly out of it
 * already. Whatever else both or one of the worlds gives does not discriminate.
 */
function verdictOf({
  instructedFits,
  instructedExcluded,
  measuredFits,
  startedBeyond,
  airAlone,
}: {
  instructedFits: boolean;
  instructedExcluded: boolean;
  measuredFits: boolean;
  startedBeyond: boolean;
  airAlone: boolean;
}): CounterfactualVerdict {
  if (!instructedFits && !measuredFits) return 'neither';
  if (measuredFits && instructedExcluded && startedBeyond) return 'origin';
  if (airAlone && !startedBeyond) return 'transit';
  return 'both';
}

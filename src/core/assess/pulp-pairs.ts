import type { Delivery } from '../model/delivery.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type {
  ChangeAnswer,
  PulpComparison,
  PulpGroup,
  PulpPair,
  PulpPlace,
  PulpReading,
  PulpsDiffer,
  UncertaintyPart,
} from '../model/results.js';
import { cartonSpread } from './measurement/assumed.js';
import { judgeChange, uncertaintyOf } from './measurement/uncertainty.js';

type Facts = Pick<Delivery, 'uncertainty' | 'instruments'>;
type Readings = readonly PulpReading[];

/** Delivery against loading for each line, and the receiver's readings against the driver's at the same stop. */
export function comparePulps(groups: readonly PulpGroup[], facts: Facts): PulpComparison[] {
  return groups.flatMap((group) => {
    const found: PulpComparison[] = [];
    const loading = groups.find((one) => one.line === group.line && one.does === 'load');
    if (group.does === 'unload' && loading !== undefined)
      found.push(compared('delivery-against-loading', group, loading.readings, group.readings, facts));
    const by = (from: PulpReading['from']) => group.readings.filter((one) => one.from === from);
    const [driver, receiver] = [by('driver'), by('receiver')];
    if (driver.length > 0 && receiver.length > 0)
      found.push(compared('receiver-against-driver', group, driver, receiver, facts));
    return found;
  });
}

function compared(
  is: PulpComparison['is'],
  { line, stop }: PulpGroup,
  first: Readings,
  second: Readings,
  facts: Facts,
): PulpComparison {
  const pairs = pairsOf(first, second, facts);
  const matchedPulps = new Set(
    matchPlaces(first, second).flatMap((one) => [...one.first, ...one.second, ...one.others]),
  );
  const differs = differencesBetween(first, second, matchedPulps);
  const [a, b] = [first.map(bestEstimate), second.map(bestEstimate)];
  const leastRise = Math.min(...b) - Math.max(...a);
  const mostRise = Math.max(...b) - Math.min(...a);
  const { guardKelvin } = uncertaintyOf(thermometerParts(first, second));
  return {
    line,
    is,
    stop,
    counts: [first.length, second.length],
    pairs,
    differs,
    ...omitUndefined({ mean: differs.length === 0 ? mean(pairs.map(({ change }) => change)) : undefined }),
    leastRise,
    mostRise,
    guardKelvin,
    answer: answerOf(pairs, leastRise, mostRise, guardKelvin),
    evidence: [...first, ...second].map((one) => one.evidence),
  };
}

export const bestEstimate = (one: PulpReading): number => one.corrected ?? one.celsius;
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Where places say both that it rose and that it fell, nothing is said of the whole. */
function answerOf(
  pairs: readonly PulpPair[],
  leastRise: number,
  mostRise: number,
  guard: number,
): ChangeAnswer {
  const answers = new Set(pairs.map(({ answer }) => answer));
  answers.delete('not-decidable');
  if (answers.size > 1) return 'not-decidable';
  const [only] = answers;
  if (only !== undefined) return only;
  if (judgeChange(leastRise, guard) === 'rose') return 'rose';
  return judgeChange(mostRise, guard) === 'fell' ? 'fell' : 'not-decidable';
}

const pairsOf = (first: Readings, second: Readings, facts: Facts): PulpPair[] =>
  matchPlaces(first, second).map((one) => pairOf(one, facts));

/**
 * Readings by place: the same pallet and height where both sides have marks of pallets, else the same part of the load.
 * Where one named thermometer read a place on both sides, only its readings are compared there.
 */
export function matchPlaces(first: Readings, second: Readings): MatchedPulps[] {
  const byPallet = matched(first, second, palletOf);
  const taken = new Set(byPallet.flatMap(({ first: some, second: others }) => [...some, ...others]));
  const left = (all: Readings) => all.filter((one) => !taken.has(one));
  const byPosition = matched(left(first), left(second), ({ position }) => position);
  return [...byPallet, ...byPosition].map(ofOneThermometer);
}

function ofOneThermometer({ first, second }: MatchedPulps): MatchedPulps {
  const names = new Set(first.map(({ thermometer }) => thermometer));
  names.delete(undefined);
  const shared = second.find(({ thermometer }) => names.has(thermometer))?.thermometer;
  if (shared === undefined) return { first, second, others: [] };
  const isOf = ({ thermometer }: PulpReading) => thermometer === shared;
  return {
    first: first.filter(isOf),
    second: second.filter(isOf),
    others: [...first, ...second].filter((one) => !isOf(one)),
  };
}

const palletOf = ({ pallet, height, carton }: PulpPlace): string | undefined =>
  pallet === undefined ? undefined : JSON.stringify([pallet, height ?? null, carton ?? null]);

/** Readings of one place, of the earlier or first side and of the later or second. */
export interface MatchedPulps {
  first: Readings;
  second: Readings;
  /** Readings of the place by other thermometers, where one read it on both sides. */
  others: Readings;
}

function matched(
  first: Readings,
  second: Readings,
  keyOf: (one: PulpReading) => string | undefined,
): MatchedPulps[] {
  const keys = [...new Set(first.flatMap((one) => keyOf(one) ?? []))];
  return keys.flatMap((key) => {
    const of = (all: Readings) => all.filter((one) => keyOf(one) === key);
    const [some, others] = [of(first), of(second)];
    return others.length === 0 ? [] : [{ first: some, second: others, others: [] }];
  });
}

function pairOf({ first, second }: MatchedPulps, facts: Facts): PulpPair {
  const change = mean(second.map(bestEstimate)) - mean(first.map(bestEstimate));
  const { guardKelvin } = uncertaintyOf([
    ...thermometerParts(first, second),
    ...(isOneCarton(first, second) ? [] : [cartonSpread(facts)]),
  ]);
  return {
    place: commonPlace([...first, ...second]),
    counts: [first.length, second.length],
    change,
    sameThermometer: isOneThermometer([...first, ...second]),
    guardKelvin,
    answer: judgeChange(change, guardKelvin),
    evidence: [...first, ...second].map((one) => one.evidence),
  };
}

const isOneCarton = (first: Readings, second: Readings) => {
  const marks = new Set([...first, ...second].map(({ pallet, carton }) => carton && `${pallet} ${carton}`));
  return marks.size === 1 && !marks.has(undefined);
};

export function isOneThermometer(readings: Readings): boolean {
  const names = new Set(readings.map(({ thermometer }) => thermometer));
  return names.size === 1 && !names.has(undefined);
}

/** What the places of all readings have in common. */
export function commonPlace([one, ...others]: Readings): PulpPlace {
  if (one === undefined) return {};
  const isShared = (name: keyof PulpPlace) => others.every((other) => other[name] === one[name]);
  return omitUndefined({
    position: isShared('position') ? one.position : undefined,
    pallet: isShared('pallet') ? one.pallet : undefined,
    height: isShared('height') ? one.height : undefined,
    carton: isShared('carton') ? one.carton : undefined,
  });
}

/** Share of its accuracy by which one thermometer may have changed between two readings. Convention of this project. */
const CHANGED_SINCE = 1 / 2;

/**
 * Parts of the uncertainty of a difference. The error of one thermometer falls out but for what may have changed since;
 * errors of two add up. Several readings of one thermometer share its error, so that their number does not help.
 */
function thermometerParts(first: Readings, second: Readings): UncertaintyPart[] {
  const [a, b] = [widest(first), widest(second)];
  if (!isOneThermometer([...first, ...second])) return [...a, ...b];
  const isStep = ({ is }: UncertaintyPart) => is === 'resolution';
  return [
    ...[...a, ...b].filter(isStep),
    ...b
      .filter((part) => !isStep(part))
      .map((part) =>
        part.is === 'drift' || part.is === 'ice-bath'
          ? part
          : { ...part, halfWidthKelvin: part.halfWidthKelvin * CHANGED_SINCE },
      ),
  ];
}

const widest = (readings: Readings): UncertaintyPart[] =>
  readings.reduce<PulpReading | undefined>(
    (most, one) =>
      most === undefined || one.uncertainty.guardKelvin > most.uncertainty.guardKelvin ? one : most,
    undefined,
  )?.uncertainty.parts ?? [];

function differencesBetween(
  first: Readings,
  second: Readings,
  paired: ReadonlySet<PulpReading>,
): PulpsDiffer[] {
  const all = [...first, ...second];
  const hasPlace = ({ pallet, position }: PulpReading) => pallet !== undefined || position !== undefined;
  const names = new Set(all.map(({ thermometer }) => thermometer));
  const found: [PulpsDiffer, boolean][] = [
    ['place-not-stated', !all.every(hasPlace)],
    ['place', all.some((one) => hasPlace(one) && !paired.has(one))],
    ['thermometer-not-named', names.has(undefined)],
    ['thermometer', names.size > (names.has(undefined) ? 2 : 1)],
  ];
  return found.flatMap(([is, holds]) => (holds ? [is] : []));
}

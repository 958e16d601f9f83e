import type { Delivery, Line } from '../../model/delivery.js';
import type { Channel } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type {
  PlaceCounterfactual,
  ProductInput,
  ProductResult,
  PulpGroup,
  TemperatureResult,
  TimeRange,
} from '../../model/results.js';
import type { RuleSet } from '../../model/rule-set.js';
import type { UnitLog } from '../../model/unit-log.js';
import { findGoods } from '../../reference/goods.js';
import { respirationOf, specificHeat } from '../../reference/respiration.js';
import { bandOf } from '../bands.js';
import { instructionFreezes } from '../instruction-freezes.js';
import { isAround } from '../logs/compartments.js';
import { airAtPlace, cartonSpread, sensorAccuracy } from '../measurement/assumed.js';
import type { Milestones } from '../milestones.js';
import { matchPlaces } from '../pulp-pairs.js';
import { gapLimit } from '../temperature/sampling-interval.js';
import { transitWindowBetween } from '../transit-window.js';
import { airInCells, type Cells, cellsOf } from './air-cells.js';
import {
  type InstructedRange,
  judgePlace,
  type PlacePulps,
  startsAsInstructed,
  startsAsMeasured,
} from './counterfactual.js';
import { DRAWS, type Draws, drawCases } from './draws.js';
import { heatingOf } from './heating.js';
import { type CoverageOf, coverages, knownAir } from './known-air.js';
import { packingOf } from './load.js';
import { quantile, sharedVariance } from './quantiles.js';
import { type AirOnTheWay, simulate } from './simulate.js';

/** What lines are judged by. */
export interface ProductContext {
  delivery: Delivery;
  ruleSet: RuleSet;
  pulps: readonly PulpGroup[];
  logs: readonly UnitLog[];
  milestones: Milestones;
  /** Results of the same logs: where their window is that of a line, their coverage is known already. */
  temperatures?: readonly TemperatureResult[];
}

/**
 * For each line and log: what would have arrived in this air, had the line been loaded as instructed, and as measured.
 * The product at the thermometer follows the nearby air by Newton's law of cooling; time on the dock before and after is
 * not included. What is not known is drawn from its spread, the same cases each time.
 */
export function productResults(context: ProductContext): ProductResult[] {
  const coverage = coverages(context.temperatures ?? []);
  return context.delivery.lines.flatMap((line) => {
    const of = (stop: string) => context.pulps.find((one) => one.line === line.id && one.stop === stop);
    const [loading, arrival] = [of(line.from), of(line.to)];
    if (loading === undefined && arrival === undefined) return [];
    const around = context.logs.filter((log) => isAround(log, line));
    return around.flatMap((log) => resultOf(context, line, log, coverage, loading, arrival) ?? []);
  });
}

function resultOf(
  { delivery, ruleSet, milestones }: ProductContext,
  line: Line,
  log: UnitLog,
  coverage: CoverageOf,
  loading: PulpGroup | undefined,
  arrival: PulpGroup | undefined,
): ProductResult | undefined {
  const custody = transitWindowBetween(milestones, line.from, line.to);
  if (custody === undefined) return undefined;
  const window = { from: custody.from.at, to: custody.to.at };
  const { gapLimitSeconds } = gapLimit(log.times);
  const air = knownAir(coverage, log, window, gapLimitSeconds);
  const result: ProductResult = {
    line: line.id,
    log: log.evidence,
    ...omitUndefined({ compartment: log.compartment }),
    verdict: 'not-decidable',
    window,
    ...omitUndefined({ loading: loading && endOf(loading), arrival: arrival && endOf(arrival) }),
    places: [],
    draws: DRAWS,
    assumptions: assumptionsOf(delivery, line, air, arrival, window),
  };
  const without = (why: ProductResult['why'] & string) => ({ ...result, why });
  const range = bandOf(line, ruleSet);
  if (loading === undefined) return without('no-loading-pulps');
  if (arrival === undefined) return without('no-arrival-pulps');
  if (line.iced) return without('iced');
  if (range === undefined) return without('no-instruction');
  if (instructionFreezes(line)) return without('instruction-freezes');
  if (air.channels.length === 0) return without('air-not-known');
  const cells = cellsOf(window);
  return {
    ...result,
    ...askBoth({
      delivery,
      line,
      range,
      loading,
      arrival,
      assumptions: result.assumptions,
      air: airOf(log, air.channels, cells, gapLimitSeconds),
    }),
  };
}

export function airOf(
  log: UnitLog,
  [first = 'return-air', second]: readonly Channel[],
  cells: Cells,
  gapLimitSeconds: number,
): AirOnTheWay {
  const of = (channel: Channel) => airInCells(log, channel, cells, gapLimitSeconds);
  return {
    seconds: cells.seconds,
    first: of(first),
    ...omitUndefined({ second: second === undefined ? undefined : of(second) }),
  };
}

const endOf = ({ min, max, readings }: PulpGroup) => ({
  min,
  max,
  evidence: readings.map((one) => one.evidence),
});

function assumptionsOf(
  delivery: Delivery,
  line: Line,
  { channels, coverage }: { channels: Channel[]; coverage: number },
  arrival: PulpGroup | undefined,
  window: TimeRange,
): ProductResult['assumptions'] {
  const key = findGoods(line.goods)?.key ?? '';
  const respiration = respirationOf(key);
  const heat = specificHeat(key);
  const times = (arrival?.readings ?? []).flatMap(({ at }) => at ?? []);
  return {
    ...packingOf(line),
    channels,
    sensorKelvin: Math.max(
      0,
      ...channels.map((channel) => sensorAccuracy(delivery, channel).halfWidthKelvin),
    ),
    airAtPlaceKelvin: airAtPlace(delivery),
    cartonsKelvin: cartonSpread(delivery).halfWidthKelvin,
    ...omitUndefined({
      respiration: respiration && {
        source: respiration.source.name,
        secondary: respiration.source.status === 'secondary',
      },
    }),
    specificHeat: { joulesPerKilogramKelvin: heat.joules, own: heat.own, source: heat.source.name },
    coverage,
    ...omitUndefined({
      afterSeconds: times.length === 0 ? undefined : (Math.max(...times) - window.to) / 1000,
    }),
  };
}

interface Question {
  delivery: Delivery;
  line: Line;
  range: InstructedRange;
  loading: PulpGroup;
  arrival: PulpGroup;
  assumptions: ProductResult['assumptions'];
  air: AirOnTheWay;
}

function askBoth({ delivery, line, range, loading, arrival, assumptions, air }: Question) {
  const draws = casesOf(assumptions);
  const heating = heatingFor(line);
  const places = placesOf(loading, arrival);
  const starts = [
    startsAsInstructed(draws, range),
    startsAsMeasured(draws, loading.readings, delivery),
    ...places.map((place) => startsAsMeasured(draws, place.loading, delivery)),
  ];
  const [asInstructed = new Float64Array(), whole = new Float64Array(), ...own] = simulate(
    air,
    draws,
    heating,
    starts,
  );
  const judged = places.flatMap((place, i): PlaceCounterfactual[] => {
    const asMeasured = own[i];
    if (asMeasured === undefined) return [];
    return [judgePlace(place, { asInstructed, asMeasured }, { draws, range, facts: delivery }) ?? []].flat();
  });
  return {
    verdict: wholeVerdict(judged),
    asInstructed: central(asInstructed),
    asMeasured: central(whole),
    places: judged,
    matters: mostOf(draws, starts[1] ?? whole, whole),
  };
}

export const casesOf = ({
  halfCoolingSeconds,
  sensorKelvin,
  airAtPlaceKelvin,
}: ProductResult['assumptions']): Draws => drawCases({ halfCoolingSeconds, sensorKelvin, airAtPlaceKelvin });

export function heatingFor({ goods }: Line) {
  const key = findGoods(goods)?.key ?? '';
  return heatingOf(respirationOf(key), specificHeat(key).joules);
}

/** Pulps of each place at both ends; those at delivery from places that were not read at loading go with all of that end. */
function placesOf(loading: PulpGroup, arrival: PulpGroup): PlacePulps[] {
  const matched = matchPlaces(loading.readings, arrival.readings);
  const taken = new Set(matched.flatMap(({ second, others }) => [...second, ...others]));
  const left = arrival.readings.filter((one) => !taken.has(one));
  const positions = [...new Set(left.map(({ position }) => position))];
  return [
    ...matched.map(
      ({ first, second }): PlacePulps => ({
        loading: first,
        arrival: second,
        loadingFrom: 'same-place',
      }),
    ),
    ...positions.map(
      (position): PlacePulps => ({
        loading: loading.readings,
        arrival: left.filter((one) => one.position === position),
        loadingFrom: 'whole-line',
      }),
    ),
  ];
}

/** One verdict of all places; where they differ, the line as a whole does not discriminate. */
function wholeVerdict(places: readonly PlaceCounterfactual[]): ProductResult['verdict'] {
  const [first, ...rest] = [...new Set(places.map(({ verdict }) => verdict))];
  if (first === undefined) return 'in-range';
  return rest.length === 0 ? first : 'both';
}

/** Between these lie 95 % of the cases. */
export const central = (values: Float64Array) => ({
  low: quantile(values, 0.025),
  high: quantile(values, 0.975),
});

function mostOf(
  draws: Draws,
  starts: Float64Array,
  ends: Float64Array,
): NonNullable<ProductResult['matters']> {
  const inputs: readonly (readonly [ProductInput, Float64Array])[] = [
    ['loading-pulps', starts],
    ['half-cooling-time', draws.tau],
    ['respiration', draws.respiration],
    ['air-at-place', draws.offset],
  ];
  return inputs
    .map(([is, column]) => ({ is, share: sharedVariance(column, ends) }))
    .reduce((most, one) => (one.share > most.share ? one : most));
}

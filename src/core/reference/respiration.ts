import { exp, log, power } from '../model/exponential.js';
import { generalValues, type PublishedValue, valuesOn } from './published-values.js';
import { type Source, sourceOf } from './sources.js';

/** A published rate at one temperature: carbon dioxide per kg and hour, as a range. */
export interface RatePoint {
  celsius: number;
  low: number;
  high: number;
}

/** The published respiration of some goods by one source, points in rising temperature. */
export interface Respiration {
  key: string;
  source: Source;
  unit: 'mL' | 'mg';
  points: RatePoint[];
}

const isRateUnit = (unit: string | undefined): unit is Respiration['unit'] => unit === 'mL' || unit === 'mg';

function respirationBy(key: string, source: Source, values: readonly PublishedValue[]): Respiration[] {
  const unit = values[0]?.printed[0]?.unit;
  if (!isRateUnit(unit)) return [];
  const points = values.flatMap(({ at, printed: [rate] }): RatePoint[] => {
    const low = rate?.low ?? rate?.high;
    if (at === undefined || low === undefined || rate?.unit !== unit) return [];
    return [{ celsius: at, low, high: rate.high ?? low }];
  });
  // A rate at one temperature alone says nothing of another.
  if (points.length < 2) return [];
  return [{ key, source, unit, points: points.sort((a, b) => a.celsius - b.celsius) }];
}

/** Published respirations of the goods at two or more temperatures: read sources first, then those with more points. */
export function respirationsOf(key: string): readonly Respiration[] {
  const values = valuesOn(key).filter(
    ({ quantity, only }) => quantity === 'respiration' && only === undefined,
  );
  return [...new Set(values.map(({ source }) => source))]
    .flatMap((source) =>
      respirationBy(
        key,
        source,
        values.filter((value) => value.source === source),
      ),
    )
    .sort(
      (a, b) =>
        Number(a.source.status === 'secondary') - Number(b.source.status === 'secondary') ||
        b.points.length - a.points.length,
    );
}

/** The respiration of the goods that computations use; undefined when none is published. */
export function respirationOf(key: string): Respiration | undefined {
  return respirationsOf(key)[0];
}

/**
 * Heat of respiration per published unit, Btu per short ton and day: 440 for mL (UC Davis fact sheets), 220 for mg: "multiply
 * mg kg-1 h-1 by 220 to get BTUton-1 day-1 or by 61 to get kcal tonne-1 day-1" (USDA Agriculture Handbook 66, 2016, watermelon).
 */
export const BTU_PER_TON_DAY = { mL: 440, mg: 220 } as const;
/** Heat of respiration per published unit, kcal per tonne and day: 122 for mL, 61 for mg, from the same sources. */
export const KCAL_PER_TONNE_DAY = { mL: 122, mg: 61 } as const;

/** Heat of respiration in W/kg for a rate in the source's unit. 1 kcal = 4184 J, one day = 86,400 s. */
export function wattsPerKilogram(rate: number, unit: Respiration['unit']): number {
  return (rate * KCAL_PER_TONNE_DAY[unit] * 4184) / 86_400 / 1000;
}

/**
 * The rate at a temperature, °C: interpolated by the Q10 of the two published temperatures, R = R₁ (R₂/R₁)^((T −
 * T₁)/(T₂ − T₁)); outside them constant.
 */
export function rateAt({ points }: Respiration, celsius: number, edge: 'low' | 'high' | 'middle'): number {
  const value = (point: RatePoint) => (edge === 'middle' ? (point.low + point.high) / 2 : point[edge]);
  const next = points.findIndex((point) => point.celsius >= celsius);
  const right = points[next] ?? points.at(-1);
  if (right === undefined) return 0;
  const left = points[next - 1];
  if (left === undefined || next < 0) return value(right);
  const part = (celsius - left.celsius) / (right.celsius - left.celsius);
  return value(left) * power(value(right) / value(left), part);
}

/**
 * A stretch between two published temperatures, where the rate is `rate × exp(slope × (T − from))`; outside them it
 * is constant.
 */
export interface RateStretch {
  from: number;
  to: number;
  rate: number;
  slope: number;
  /** Outside the published temperatures. */
  beyond: boolean;
}

/**
 * The function `rateAt` as stretches from the coldest to the warmest, for many evaluations; empty when nothing is
 * published.
 */
export function rateStretches(respiration: Respiration, edge: 'low' | 'high' | 'middle'): RateStretch[] {
  const knots = respiration.points.map(({ celsius }) => ({
    celsius,
    rate: rateAt(respiration, celsius, edge),
  }));
  const [first, last] = [knots[0], knots.at(-1)];
  if (first === undefined || last === undefined) return [];
  const flat = { slope: 0, beyond: true };
  return [
    { ...flat, from: Number.NEGATIVE_INFINITY, to: first.celsius, rate: first.rate },
    ...knots.slice(1).map(({ celsius, rate }, i): RateStretch => {
      const left = knots[i] ?? first;
      const slope = log(rate / left.rate) / (celsius - left.celsius);
      return { from: left.celsius, to: celsius, rate: left.rate, slope, beyond: false };
    }),
    { ...flat, from: last.celsius, to: Number.POSITIVE_INFINITY, rate: last.rate },
  ];
}

/** The rate at a temperature, °C, within a stretch. */
export function rateInStretch(
  { rate, slope, from }: Pick<RateStretch, 'rate' | 'slope' | 'from'>,
  celsius: number,
): number {
  return slope === 0 ? rate : rate * exp(slope * (celsius - from));
}

/** Q10 = (R₂/R₁)^(10/(T₂ − T₁)): the factor by which a rate grows over 10 K. */
export function q10(
  first: { celsius: number; rate: number },
  second: { celsius: number; rate: number },
): number {
  return power(second.rate / first.rate, 10 / (second.celsius - first.celsius));
}

/** Joules per kg and K in one of the units that specific heats are published in. */
const JOULES: Readonly<Record<string, number>> = { 'Btu/lb·°F': 4186.8, 'kJ/kg·K': 1000 };
/** Btu/(lb·°F), for goods that no source has: the value of NC State for leafy greens. */
const USUAL_SPECIFIC_HEAT = 0.9;

/** Specific heat in J/(kg·K) by the first source that gives one value, and whether it is that of the goods. */
export function specificHeat(key: string): { joules: number; own: boolean; source: Source } {
  for (const { printed, source } of generalValues(key, ['specific-heat'])) {
    const [amount] = printed;
    const joules = amount === undefined ? undefined : JOULES[amount.unit];
    if (joules !== undefined && amount?.low !== undefined && amount.low === amount.high)
      return { joules: amount.low * joules, own: true, source };
  }
  return { joules: USUAL_SPECIFIC_HEAT * 4186.8, own: false, source: sourceOf('nc-state-heat') };
}

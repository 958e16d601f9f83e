import { exp, log, power } from '../model/exponential.js';
import { respirationTable } from './respiration-table.js';
import { isSourceKey, type SourceKey } from './sources.js';

/** A published rate at one temperature: carbon dioxide per kg and hour, as a range. */
export interface RatePoint {
  celsius: number;
  low: number;
  high: number;
}

/** The published respiration of one commodity by one source, points in rising temperature. */
export interface Respiration {
  key: string;
  source: SourceKey;
  basis: 'read' | 'from memory';
  unit: 'mL' | 'mg';
  points: RatePoint[];
}

const AT = [0, 5, 10, 15, 20];

function fromLine(text: string): Respiration {
  const [key = '', source = '', unit, ...rates] = text.split('|').map((cell) => cell.trim());
  if (!isSourceKey(source) || (unit !== 'mL' && unit !== 'mg') || rates.length !== AT.length)
    throw new Error(`not a line of the respiration table: ${text}`);
  return {
    key,
    source,
    basis: source === 'M' ? 'from memory' : 'read',
    unit,
    points: rates.flatMap((rate, i) => {
      if (rate === '-') return [];
      const [low = Number.NaN, high = low] = rate.split('-').map(Number);
      return [{ celsius: AT[i] ?? Number.NaN, low, high }];
    }),
  };
}

/** Every published respiration, in the order of the table. */
export const respirations: readonly Respiration[] = respirationTable.trim().split('\n').map(fromLine);

/**
 * The respiration of a commodity: values read in a source come before values from memory. Undefined when none is
 * published.
 */
export function respirationOf(key: string): Respiration | undefined {
  const own = respirations.filter((one) => one.key === key);
  return own.find((one) => one.basis === 'read') ?? own[0];
}

/**
 * Heat of respiration per published unit, Btu per short ton and day: 440 for mL (UC Davis fact sheets), 220 for mg
 * (USDA Agriculture Handbook 66, from memory; 673 kcal per 264 g of carbon dioxide gives 220.2).
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

/** Btu per pound and °F (the same number as cal per gram and K), from NC State; see sources.ts under NCB. */
const SPECIFIC_HEAT: Record<string, number> = {
  apples: 0.87,
  asparagus: 0.94,
  'beans-snap': 0.91,
  beets: 0.9,
  blackberries: 0.87,
  blueberries: 0.86,
  broccoli: 0.92,
  cabbage: 0.94,
  cantaloupe: 0.94,
  cucumbers: 0.97,
  'grapes-table': 0.86,
  'lettuce-iceberg': 0.9,
  'lettuce-leaf': 0.9,
  'lettuce-romaine': 0.9,
  okra: 0.92,
  'onions-green': 0.91,
  'peaches-nectarines': 0.91,
  'peas-green': 0.79,
  'peppers-bell': 0.94,
  'potatoes-table': 0.84,
  raspberries: 0.87,
  spinach: 0.9,
  'squash-summer': 0.95,
  strawberries: 0.92,
  'sweet-corn': 0.79,
  'tomatoes-mature-green': 0.94,
  'tomatoes-ripe': 0.95,
  watermelon: 0.94,
};
/** For goods that the table lacks: its value for leafy greens. */
const USUAL_SPECIFIC_HEAT = 0.9;

/** Specific heat in J/(kg·K), and whether it is the commodity's own. 1 Btu/(lb·°F) = 4186.8 J/(kg·K). */
export function specificHeat(key: string): { joules: number; own: boolean; source: SourceKey } {
  const own = SPECIFIC_HEAT[key];
  return { joules: (own ?? USUAL_SPECIFIC_HEAT) * 4186.8, own: own !== undefined, source: 'NCB' };
}

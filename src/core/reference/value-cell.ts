import { omitUndefined } from '../model/omit-undefined.js';
import { type Celsius, toCelsius } from '../model/temperature.js';

const QUANTITIES = [
  'storage',
  'transport',
  'storage-or-transport',
  'deviation',
  'humidity',
  'life',
  'freezing',
  'chilling',
  'chilling-band',
  'ethylene-production',
  'ethylene-sensitivity',
  'top-ice',
  'respiration',
  'specific-heat',
] as const;
/**
 * What a value is of. `storage`, `transport` and both: recommended temperature. `deviation`: how far it may rise for a
 * short time. `freezing`: highest freezing point. `chilling`: temperature below which cold harms in time;
 * `chilling-band`: between which it does, and not below. `life`: how long the goods keep at the source's conditions.
 */
export type Quantity = (typeof QUANTITIES)[number];

/** An amount as printed: from low to high; without low at most high, without high at least low. */
export interface Printed {
  low?: number;
  high?: number;
  unit: string;
}

/** One value as its source prints it. */
export interface ValueCell {
  quantity: Quantity;
  /** The amount in each unit that the source prints, its own first; empty when it prints words. */
  printed: readonly Printed[];
  /** A class or a sentence in place of an amount: `Very high`. */
  words?: string;
  /** Of a rate: at this temperature, °C. */
  at?: number;
  /** The value holds for these alone: a cultivar, a ripeness, a time. */
  only?: string;
  /** What the source says beside the value. */
  remark?: string;
}

const VALUE = /^(\S+) (?:"([^"]+)"|(\S.*?))(?: at (-?[\d.]+) °C)?(?: \[(.+)\]| \((.+)\))?$/u;
const AMOUNT = /^(-?\d+(?:\.\d+)?)?(?:(\.\.)(-?\d+(?:\.\d+)?)?)? (\S+)$/u;

const isQuantity = (text: string | undefined): text is Quantity =>
  QUANTITIES.some((quantity) => quantity === text);

/**
 * One value from its line: a quantity and an amount, as `storage 0..2 °C = 32..36 °F`, or words in quotation marks; then
 * ` at 5 °C` for a rate, and what it is restricted to in square brackets or said of in round ones.
 */
export function parseValue(text: string): ValueCell {
  const [, quantity, words, amounts, at, only, remark] = VALUE.exec(text) ?? [];
  if (!isQuantity(quantity)) throw new Error(`not a published value: ${text}`);
  return {
    quantity,
    printed: amounts === undefined ? [] : amounts.split(' = ').map(parseAmount),
    ...omitUndefined({ words, at: at === undefined ? undefined : Number(at), only, remark }),
  };
}

function parseAmount(text: string): Printed {
  const [, first, dots, last, unit] = AMOUNT.exec(text) ?? [];
  if (unit === undefined || (first === undefined && last === undefined))
    throw new Error(`not an amount: ${text}`);
  const low = first === undefined ? undefined : Number(first);
  const high = dots === undefined ? low : last === undefined ? undefined : Number(last);
  return { unit, ...omitUndefined({ low, high }) };
}

/** A range of temperatures; an end that is not published is open. */
export interface TemperatureRange {
  low?: Celsius;
  high?: Celsius;
}

/**
 * A printed temperature in °C, each unit exactly converted. Where a source prints both units and rounds one, both count:
 * the range reaches from the lowest to the highest of them. Undefined when no temperature is printed.
 */
export function celsiusRange({ printed }: ValueCell): TemperatureRange | undefined {
  const ranges = printed.flatMap(({ low, high, unit }) =>
    unit === '°C' || unit === '°F'
      ? [
          {
            low: low === undefined ? undefined : toCelsius(low, unit),
            high: high === undefined ? undefined : toCelsius(high, unit),
          },
        ]
      : [],
  );
  if (ranges.length === 0) return undefined;
  const lowest = least(ranges.map(({ low }) => low));
  const highest = least(
    ranges.map(({ high }) => high),
    -1,
  );
  return omitUndefined({ low: lowest, high: highest });
}

/** The least of what is given, or with `sign` −1 the greatest. */
function least(values: readonly (Celsius | undefined)[], sign = 1): Celsius | undefined {
  return values
    .filter((value) => value !== undefined)
    .reduce<Celsius | undefined>(
      (best, value) => (best === undefined || value * sign < best * sign ? value : best),
      undefined,
    );
}

const amountOf = ({ low, high, unit }: Printed): string => {
  const written = (value: number) => String(value).replace('-', '−');
  const space = unit === '%' ? ' ' : ' ';
  if (low === undefined) return `at most ${written(high ?? Number.NaN)}${space}${unit}`;
  if (high === undefined) return `at least ${written(low)}${space}${unit}`;
  return low === high
    ? `${written(low)}${space}${unit}`
    : `${written(low)} to ${written(high)}${space}${unit}`;
};

/** A value as printed, in every unit that its source prints: `10 to 12.5 °C (50 to 55 °F)`. */
export function printedAmount({ printed, words }: ValueCell): string {
  const [own, other] = printed;
  if (own === undefined) return words ?? '';
  return other === undefined ? amountOf(own) : `${amountOf(own)} (${amountOf(other)})`;
}

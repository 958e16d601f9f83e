import type { Celsius } from '../model/temperature.js';
import { generalValues, type PublishedValue } from './published-values.js';
import type { Source } from './sources.js';
import { celsiusRange, type Quantity, type TemperatureRange } from './value-cell.js';

/** What one source says of a temperature, °C. */
export interface SourcedRange extends TemperatureRange {
  value: PublishedValue;
}

const TRANSPORT = ['transport', 'storage-or-transport'] as const;
const RECOMMENDED = ['storage', ...TRANSPORT] as const;
/** Tolerance for rounding between °F and °C where a temperature is compared with a published one. Kelvin. */
const ROUNDED = 0.06;

function rangesOf(goods: string, quantities: readonly Quantity[]): SourcedRange[] {
  return generalValues(goods, quantities).flatMap((value) => {
    const range = celsiusRange(value);
    return range === undefined ? [] : [{ ...range, value }];
  });
}

/**
 * Recommended temperatures of the goods, source by source and never joined: of a source that publishes them for
 * transport these alone, else those for storage.
 */
export function recommendedTemperatures(goods: string): readonly SourcedRange[] {
  const all = rangesOf(goods, RECOMMENDED);
  const forTransport = ({ value }: SourcedRange) => TRANSPORT.some((quantity) => quantity === value.quantity);
  const withTransport = new Set(all.filter(forTransport).map(({ value }) => value.source));
  return all.filter((range) => forTransport(range) || !withTransport.has(range.value.source));
}

/** Highest freezing points of the goods, highest first. */
export function freezingPoints(goods: string): readonly (SourcedRange & { high: Celsius })[] {
  return rangesOf(goods, ['freezing'])
    .flatMap((range) => (range.high === undefined ? [] : [{ ...range, high: range.high }]))
    .sort((a, b) => b.high - a.high);
}

/** Temperatures below which cold harms the goods in time. Where a source gives a range, it depends on cultivar or ripeness. */
export function chillingFloors(goods: string): readonly SourcedRange[] {
  return rangesOf(goods, ['chilling']);
}

/** Temperatures between which cold harms the goods in time, and not below. */
export function chillingBands(goods: string): readonly SourcedRange[] {
  return rangesOf(goods, ['chilling-band']);
}

function contains({ low, high }: TemperatureRange, celsius: number, tolerance = ROUNDED): boolean {
  return (
    (low === undefined || celsius >= low - tolerance) && (high === undefined || celsius <= high + tolerance)
  );
}

/** Sources whose recommended temperatures hold a temperature, and those whose do not. */
export interface Agreement {
  /** Ranges that hold it. */
  within: readonly SourcedRange[];
  /** All ranges of the sources of which none holds it. */
  outside: readonly SourcedRange[];
}

/** Compares a temperature with what each source recommends. */
export function compareWithSources(ranges: readonly SourcedRange[], celsius: number): Agreement {
  const within = ranges.filter((range) => contains(range, celsius));
  const agreeing = new Set<Source>(within.map(({ value }) => value.source));
  return { within, outside: ranges.filter(({ value }) => !agreeing.has(value.source)) };
}

/** Distance of a temperature from the nearest range that does not hold it, K, and its side. */
export function distanceOutside(
  ranges: readonly TemperatureRange[],
  celsius: number,
): { kelvin: number; side: 'above' | 'below' } | undefined {
  const distances = ranges.flatMap(({ low, high }) => [
    ...(high !== undefined && celsius > high ? [{ kelvin: celsius - high, side: 'above' as const }] : []),
    ...(low !== undefined && celsius < low ? [{ kelvin: low - celsius, side: 'below' as const }] : []),
  ]);
  return distances.sort((a, b) => a.kelvin - b.kelvin)[0];
}

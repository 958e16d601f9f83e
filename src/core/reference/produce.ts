import { omitUndefined } from '../model/omit-undefined.js';
import { type Celsius, toCelsius } from '../model/temperature.js';
import { fruit } from './produce-fruit.js';
import { leafyAndStems } from './produce-leafy-and-stems.js';
import { rootsAndFruiting } from './produce-roots-and-fruiting.js';
import type { ProduceRow } from './produce-row.js';
import { storageTable } from './produce-storage.js';
import { type Respiration, respirationOf } from './respiration.js';
import { isSourceKey, type PublishedField, type SourceKey, sectionOf, sources } from './sources.js';

/** A published value with its sources. */
export interface Published<T> {
  value: T;
  sources: SourceKey[];
  /** `from memory` as soon as any part of the value was not read in a source. */
  basis: 'read' | 'from memory';
}

/** From the lowest to the highest, °C. */
export interface ValueRange {
  low: Celsius;
  high: Celsius;
}

/** Published facts of one commodity, temperatures in °C. */
export interface Produce {
  key: string;
  name: string;
  aliases: readonly string[];
  range: Published<ValueRange>;
  /** Highest freezing point as the main source gives it; see `highestFreezingPoint`. */
  freezing?: Published<Celsius>;
  chilling?: Published<ValueRange> & { is: 'floor' | 'band' };
  /** Where sources disagree: the other values, kept and shown. */
  alternatives: {
    field: 'freezing' | 'chilling' | 'range';
    value: Celsius;
    source: SourceKey;
    note: string;
  }[];
  note?: string;
  /** Relative humidity, per cent. */
  humidity: Published<{ low: number; high: number }>;
  /** Ethylene production and sensitivity, from very low to very high. */
  ethylene: Published<{ givesOff: EthyleneLevel; minds: EthyleneLevel }>;
  /** Whether top ice is usual; `conflict` where sources disagree. Moisture spoils dry onions and garlic. */
  topIce: Published<'y' | 'n' | 'conflict'>;
  /** At the recommended temperature, in the source's words. */
  life: Published<string>;
  respiration?: Respiration;
}
/** From very low to very high. */
export type EthyleneLevel = 'VL' | 'L' | 'M' | 'H' | 'VH';

const fahrenheit = (value: number): Celsius => toCelsius(value, '°F');

function published<T>(value: T, keys: string): Published<T> {
  const known = keys.split(' ').filter(isSourceKey);
  return { value, sources: known, basis: known.includes('M') ? 'from memory' : 'read' };
}

function span(low: number, high: number): ValueRange {
  return { low: fahrenheit(low), high: fahrenheit(high) };
}

interface Keeping extends Pick<Produce, 'humidity' | 'ethylene' | 'topIce' | 'life'> {
  key: string;
}

const isLevel = (text: string | undefined): text is EthyleneLevel =>
  text !== undefined && ['VL', 'L', 'M', 'H', 'VH'].includes(text);

function fromKeepingLine(text: string): Keeping {
  const [
    key = '',
    wet = '',
    wetFrom = '',
    gas = '',
    gasFrom = '',
    ice,
    iceFrom = '',
    life = '',
    lifeFrom = '',
  ] = text.split('|').map((cell) => cell.trim());
  const [low = Number.NaN, high = Number.NaN] = wet.split('-').map(Number);
  const [givesOff, minds] = gas.split(' ');
  if (!isLevel(givesOff) || !isLevel(minds) || (ice !== 'y' && ice !== 'n' && ice !== 'conflict'))
    throw new Error(`not a line of the keeping table: ${text}`);
  return {
    key,
    humidity: published({ low, high }, wetFrom),
    ethylene: published({ givesOff, minds }, gasFrom),
    topIce: published(ice, iceFrom),
    life: published(life, lifeFrom),
  };
}

const keepings = new Map(
  storageTable
    .trim()
    .split('\n')
    .map(fromKeepingLine)
    .map((one) => [one.key, one]),
);

function fromRow(row: ProduceRow): Produce {
  const { range, freezing, chilling } = row;
  const keeping = keepings.get(row.key);
  if (keeping === undefined) throw new Error(`${row.key} has no line in the keeping table`);
  const respiration = respirationOf(row.key);
  return {
    ...keeping,
    key: row.key,
    name: row.name,
    aliases: row.aliases ?? [],
    range: published(span(range[0], range[1]), range[2]),
    ...omitUndefined({
      freezing: freezing && published(fahrenheit(freezing[0]), freezing[1]),
      chilling:
        chilling === undefined
          ? undefined
          : {
              ...published(span(chilling[0], chilling[1]), chilling[2]),
              is: chilling[3] ?? 'floor',
            },
    }),
    alternatives: (row.others ?? []).flatMap(([field, value, source, note]) =>
      isSourceKey(source) ? [{ field, value: fahrenheit(value), source, note }] : [],
    ),
    ...omitUndefined({ note: row.note, respiration }),
  };
}

/** Every commodity of the table, by name. */
export const produceTable: readonly Produce[] = [...fruit, ...rootsAndFruiting, ...leafyAndStems]
  .map(fromRow)
  .sort((a, b) => (a.name < b.name ? -1 : 1));

const plain = (text: string) =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

const byName = new Map<string, Produce>();
for (const item of produceTable)
  for (const name of [item.key, item.name, ...item.aliases]) byName.set(plain(name), item);

/**
 * The commodity with this key, name or trade name; letter case and punctuation do not matter.
 * Undefined when the table lacks it: no nearest match is guessed.
 */
export function findProduce(name: string): Produce | undefined {
  return byName.get(plain(name));
}

/** The sources of a published value in words, best first; with `field` also the section of each source. */
export function cite(value: Published<unknown>, field?: PublishedField): string {
  return value.sources
    .map((key) => {
      const section = field === undefined ? undefined : sectionOf(key, field);
      return section === undefined ? sources[key] : `${sources[key]}, ${section}`;
    })
    .join('; ');
}

/** The highest published freezing point of a commodity: the one that is worse for the carrier. */
export function highestFreezingPoint(produce: Produce): Celsius | undefined {
  const values = produce.alternatives.filter((other) => other.field === 'freezing').map(({ value }) => value);
  if (produce.freezing !== undefined) values.push(produce.freezing.value);
  return values.reduce<Celsius | undefined>(
    (worst, value) => (worst === undefined || value > worst ? value : worst),
    undefined,
  );
}

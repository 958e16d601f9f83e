import { type Celsius, toCelsius } from '../model/temperature.js';
import { fruit } from './produce-fruit.js';
import { leafyAndStems } from './produce-leafy-and-stems.js';
import { rootsAndFruiting } from './produce-roots-and-fruiting.js';
import type { ProduceRow } from './produce-row.js';
import { isSourceKey, type SourceKey, sources } from './sources.js';

/** A published value with where it was read. */
export interface Published<T> {
  value: T;
  sources: SourceKey[];
  /** `from memory` as soon as any part of the value was not read in a source. */
  basis: 'read' | 'from memory';
}

export interface Span {
  low: Celsius;
  high: Celsius;
}

/** Published facts of one commodity, temperatures in °C. */
export interface Produce {
  key: string;
  name: string;
  aliases: readonly string[];
  range: Published<Span>;
  /** Highest freezing point as the main source gives it; see `worstFreezing`. */
  freezing?: Published<Celsius>;
  chilling?: Published<Span> & { is: 'floor' | 'band' };
  /** Where sources disagree: the other values, kept and shown. */
  alternatives: {
    field: 'freezing' | 'chilling' | 'range';
    value: Celsius;
    source: SourceKey;
    note: string;
  }[];
  note?: string;
}

const fahrenheit = (value: number): Celsius => toCelsius(value, '°F');

function published<T>(value: T, keys: string): Published<T> {
  const known = keys.split(' ').filter(isSourceKey);
  return { value, sources: known, basis: known.includes('M') ? 'from memory' : 'read' };
}

function span(low: number, high: number): Span {
  return { low: fahrenheit(low), high: fahrenheit(high) };
}

function fromRow(row: ProduceRow): Produce {
  const { range, freezing, chilling } = row;
  return {
    key: row.key,
    name: row.name,
    aliases: row.aliases ?? [],
    range: published(span(range[0], range[1]), range[2]),
    ...(freezing === undefined ? {} : { freezing: published(fahrenheit(freezing[0]), freezing[1]) }),
    ...(chilling === undefined
      ? {}
      : {
          chilling: {
            ...published(span(chilling[0], chilling[1]), chilling[2]),
            is: chilling[3] ?? 'floor',
          },
        }),
    alternatives: (row.others ?? []).flatMap(([field, value, source, note]) =>
      isSourceKey(source) ? [{ field, value: fahrenheit(value), source, note }] : [],
    ),
    ...(row.note === undefined ? {} : { note: row.note }),
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

/** The sources of a published value in words, best first. */
export function cite(value: Published<unknown>): string {
  return value.sources.map((key) => sources[key]).join('; ');
}

/** The highest of all published freezing points of a commodity: the one that is worse for the carrier. */
export function worstFreezing(produce: Produce): Celsius | undefined {
  const values = produce.alternatives.filter((other) => other.field === 'freezing').map(({ value }) => value);
  if (produce.freezing !== undefined) values.push(produce.freezing.value);
  return values.reduce<Celsius | undefined>(
    (worst, value) => (worst === undefined || value > worst ? value : worst),
    undefined,
  );
}

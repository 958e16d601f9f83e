import { extension } from './data/values/extension.js';
import { handbooks } from './data/values/handbooks.js';
import { law } from './data/values/law.js';
import { otherCountries } from './data/values/other-countries.js';
import { tables } from './data/values/tables.js';
import { thermal } from './data/values/thermal.js';
import { trade } from './data/values/trade.js';
import { ucDavisFruit } from './data/values/uc-davis-fruit.js';
import { ucDavisVegetables } from './data/values/uc-davis-vegetables.js';
import { type Source, sourceOf } from './sources.js';
import { parseValue, type ValueCell } from './value-cell.js';

/** What one source says of one quantity of some goods. */
export interface PublishedValue extends ValueCell {
  /** Key of the goods. */
  goods: string;
  source: Source;
  /** Table, section or paragraph of the source. */
  section: string;
  /** The sentence or table cell that the value stands in; see `quotationsOf`. */
  passage: string;
}

/**
 * Values of one file. A line `@ source` begins what a source says, a line `§ section` a part of it; every other line is
 * one passage: its number, the keys of the goods, and the values that stand in it, parted by ` ; `.
 */
function readValues(text: string): PublishedValue[] {
  let source: Source | undefined;
  let section = '';
  return text
    .trim()
    .split('\n')
    .flatMap((line): PublishedValue[] => {
      if (line.startsWith('@ ')) {
        source = sourceOf(line.slice(2));
        return [];
      }
      if (line.startsWith('§ ')) {
        section = line.slice(2);
        return [];
      }
      const [number = '', goods = '', values = ''] = line.split('|');
      const from = source;
      if (from === undefined || values === '') throw new Error(`not a line of values: ${line}`);
      const cells = values.split(' ; ').map(parseValue);
      return goods.split(' ').flatMap((key) =>
        cells.map((cell) => ({
          ...cell,
          goods: key,
          source: from,
          section,
          passage: `${from.id} ${number}`,
        })),
      );
    });
}

/** Values by goods, and the passages that they stand in. */
interface Library {
  values: readonly PublishedValue[];
  byGoods: ReadonlyMap<string, readonly PublishedValue[]>;
  passages: ReadonlyMap<string, Pick<PublishedValue, 'source' | 'section'>>;
}

function readLibrary(): Library {
  const files = [
    ucDavisFruit,
    ucDavisVegetables,
    handbooks,
    tables,
    extension,
    law,
    thermal,
    otherCountries,
    trade,
  ];
  const values = files
    .flatMap(readValues)
    .sort((a, b) => Number(a.source.status === 'secondary') - Number(b.source.status === 'secondary'));
  const byGoods = new Map<string, PublishedValue[]>();
  for (const value of values) {
    const of = byGoods.get(value.goods);
    if (of === undefined) byGoods.set(value.goods, [value]);
    else of.push(value);
  }
  const passages = new Map(
    values.map(({ passage, source, section }) => [passage, { source, section }] as const),
  );
  return { values, byGoods, passages };
}

let read: Library | undefined;
/** The library, read when somebody first asks for a value: most imports of it never do. */
const library = (): Library => {
  read ??= readLibrary();
  return read;
};

/** Every value of the library; those of sources that were read come first. */
export function publishedValues(): readonly PublishedValue[] {
  return library().values;
}

/** The source of a passage and the part of it; undefined when the library has no such passage. */
export function passageOf(passage: string): Pick<PublishedValue, 'source' | 'section'> | undefined {
  return library().passages.get(passage);
}

/** All values on the goods with this key. */
export function valuesOn(goods: string): readonly PublishedValue[] {
  return library().byGoods.get(goods) ?? [];
}

/**
 * The values that speak for the goods at large: without those that hold only for some cultivar, ripeness or time, and
 * without secondary ones where any source of the same quantity was read.
 */
export function generalValues(
  goods: string,
  quantities: readonly PublishedValue['quantity'][],
): readonly PublishedValue[] {
  const general = valuesOn(goods).filter(
    (value) => value.only === undefined && quantities.includes(value.quantity),
  );
  const fromRead = general.filter(({ source }) => source.status === 'read');
  return fromRead.length > 0 ? fromRead : general;
}

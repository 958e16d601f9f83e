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

/** One line of a file: a passage, and the values that stand in it. */
interface Passage {
  /** Keys of the goods that it is about. */
  goods: readonly string[];
  source: Source;
  section: string;
  /** Its name, as in `PublishedValue`. */
  name: string;
  /** Values as they are written, parted by ` ; `. */
  values: string;
}

/**
 * Passages of one file. A line `@ source` begins what a source says, a line `§ section` a part of it; every other line is
 * one passage: its number, the keys of the goods, and the values that stand in it, parted by ` ; `.
 */
function readPassages(text: string): Passage[] {
  let source: Source | undefined;
  let section = '';
  return text
    .trim()
    .split('\n')
    .flatMap((line): Passage[] => {
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
      return [{ goods: goods.split(' '), source: from, section, name: `${from.id} ${number}`, values }];
    });
}

/** What a passage says of each of the goods in turn. */
function valuesIn({ goods, source, section, name, values }: Passage): PublishedValue[] {
  const cells = values.split(' ; ').map(parseValue);
  return goods.flatMap((key) =>
    cells.map((cell) => ({ ...cell, goods: key, source, section, passage: name })),
  );
}

/** All passages, the same by name, and those about each of the goods. */
interface Library {
  passages: readonly Passage[];
  byName: ReadonlyMap<string, Passage>;
  byGoods: ReadonlyMap<string, readonly Passage[]>;
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
  const passages = files
    .flatMap(readPassages)
    .sort((a, b) => Number(a.source.status === 'secondary') - Number(b.source.status === 'secondary'));
  const byGoods = new Map<string, Passage[]>();
  for (const passage of passages)
    for (const key of passage.goods) {
      const of = byGoods.get(key);
      if (of === undefined) byGoods.set(key, [passage]);
      else of.push(passage);
    }
  return { passages, byName: new Map(passages.map((one) => [one.name, one])), byGoods };
}

let read: Library | undefined;
/** The library, read when somebody first asks for a value: most imports of it never do. */
const library = (): Library => {
  read ??= readLibrary();
  return read;
};

/** Values of those goods that somebody has asked for: a command asks for a few, and parsing all takes longer than it. */
const parsed = new Map<string, readonly PublishedValue[]>();

/** Every value of the library; those of sources that were read come first. */
export function publishedValues(): readonly PublishedValue[] {
  return library().passages.flatMap(valuesIn);
}

/** The source of a passage and the part of it; undefined when the library has no such passage. */
export function passageOf(passage: string): Pick<PublishedValue, 'source' | 'section'> | undefined {
  return library().byName.get(passage);
}

/** All values on the goods with this key. */
export function valuesOn(goods: string): readonly PublishedValue[] {
  const known = parsed.get(goods);
  if (known !== undefined) return known;
  const values = (library().byGoods.get(goods) ?? []).flatMap((passage) =>
    valuesIn({ ...passage, goods: [goods] }),
  );
  parsed.set(goods, values);
  return values;
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

import { goodsLines } from './data/goods.js';

/** Goods that something is published on. */
export interface Goods {
  /** Plain key, as rules and deliveries name the goods: `lettuce-romaine`. */
  key: string;
  name: string;
  /** Other trade names that mean the same goods. */
  synonyms: readonly string[];
  spanish: string;
  spanishSynonyms: readonly string[];
}

const listOf = (cell: string) => (cell === '' ? [] : cell.split('; '));

function fromLine(line: string): Goods {
  const [key = '', name = '', synonyms = '', spanish = '', spanishSynonyms = ''] = line.split('|');
  if (key === '' || name === '' || spanish === '') throw new Error(`not a line of goods: ${line}`);
  return { key, name, synonyms: listOf(synonyms), spanish, spanishSynonyms: listOf(spanishSynonyms) };
}

/** All goods of the library, by name. */
export const goodsTable: readonly Goods[] = goodsLines
  .trim()
  .split('\n')
  .map(fromLine)
  .sort((a, b) => (a.name < b.name ? -1 : 1));

const plain = (text: string) =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

const byName = new Map<string, Goods>();
for (const goods of goodsTable) {
  const { key, name, synonyms, spanish, spanishSynonyms } = goods;
  for (const one of [key, name, ...synonyms, spanish, ...spanishSynonyms]) byName.set(plain(one), goods);
}

/** Words of a name that say of any goods that they are frozen. */
const FROZEN = /(?:^| )(?:frozen|quick frozen|deep frozen|congelad[oa]s?|ultracongelad[oa]s?)(?: |$)/u;

/**
 * The goods with this key, name or trade name, English or Spanish; letter case and punctuation do not matter. A name
 * that says frozen, of goods without frozen ones of their own, is frozen food. Otherwise undefined: no nearest match
 * is guessed.
 */
export function findGoods(name: string): Goods | undefined {
  const wanted = plain(name);
  return byName.get(wanted) ?? (FROZEN.test(wanted) ? byName.get('frozen food') : undefined);
}

import type { Delivery } from '../../core/model/delivery.js';
import { goodsTable } from '../../core/reference/goods.js';
import type { FactNames } from '../../core/words/facts.js';
import { type TranslateRemark, untranslated } from '../../core/words/remarks.js';

/**
 * Short name of a stop in tables: its place up to the first comma where that tells the stops apart. The whole place
 * is on the cover and in the table of stops.
 */
function shortPlaces(places: readonly string[]): string[] {
  const short = places.map((place) => place.split(',')[0]?.trim() ?? place);
  const clear = short.every(
    (name, i) => name.length > 3 && short.every((other, j) => name !== other || places[i] === places[j]),
  );
  return clear ? short : [...places];
}

/** `lettuce-romaine` in words, where no better name is known. */
export const commonName = (key: string): string => {
  const words = key.replace(/-/g, ' ').trim();
  return words.charAt(0).toUpperCase() + words.slice(1);
};

/** Goods by their key in the reference library, in the language of the pages; another name as written. */
function goodsName(key: string, remark: TranslateRemark): string {
  const table = goodsTable.find((one) => one.key === key)?.name;
  const words = table === undefined ? undefined : remark('goods', table);
  return words === undefined || words === table ? commonName(key) : words;
}

/** Names of the delivery's lines and stops. */
export function factNames(
  delivery: Pick<Delivery, 'lines' | 'stops'>,
  remark: TranslateRemark = untranslated,
): FactNames {
  const lines = new Map(delivery.lines.map((line) => [line.id, line.name ?? goodsName(line.goods, remark)]));
  const short = shortPlaces(delivery.stops.map((stop) => stop.place));
  const called = new Map(delivery.stops.map((stop, i) => [stop.id, short[i] ?? stop.place]));
  return { line: (id) => lines.get(id) ?? id, stop: (id) => called.get(id) ?? id };
}

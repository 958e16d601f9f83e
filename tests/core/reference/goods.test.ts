import { describe, expect, it } from 'vitest';
import { findGoods, goodsTable } from '../../../src/core/reference/goods.js';
import { valuesOn } from '../../../src/core/reference/published-values.js';

describe('goods', () => {
  it.each([
    ['lettuce-romaine', 'lettuce-romaine'],
    ['ROMAINE', 'lettuce-romaine'],
    ['lechuga romana', 'lettuce-romaine'],
    ['Sweet Corn', 'sweet-corn'],
    ['elotes', 'sweet-corn'],
    ['green onions', 'onions-green'],
    ['durazno', 'peaches-nectarines'],
    ['fresh-cut produce', 'produce-cut'],
    ['huevo', 'eggs-shell'],
    ['snow peas', 'peas-edible-pod'],
  ])('%s are found', (name, key) => {
    expect(findGoods(name)?.key).toBe(key);
  });

  it.each(['frozen blueberries', 'Blueberries, frozen', 'frozen french fries', 'fresas congeladas'])(
    '%s are frozen food by their name',
    (name) => {
      expect(findGoods(name)?.key).toBe('frozen-food');
    },
  );
  it('but frozen goods of their own are themselves', () => {
    expect(findGoods('frozen poultry')?.key).toBe('poultry-frozen');
    expect(findGoods('frozen fish')?.key).toBe('fish-frozen');
  });

  it.each(['dragon fruit', 'unfrozen', 'berries', ''])('%j is not guessed', (name) => {
    expect(findGoods(name)).toBeUndefined();
  });

  it('have names that each mean one thing', () => {
    const names = goodsTable.flatMap(({ key, name, synonyms, spanish, spanishSynonyms }) => [
      ...new Set([key, name, ...synonyms, spanish, ...spanishSynonyms].map((one) => one.toLowerCase())),
    ]);
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
  });

  it('have something published on each', () => {
    expect(goodsTable.filter(({ key }) => valuesOn(key).length === 0)).toEqual([]);
  });

  it('are 140 or more with temperature, humidity and life', () => {
    const has = (key: string, pattern: RegExp) =>
      valuesOn(key).some(({ quantity }) => pattern.test(quantity));
    const whole = goodsTable.filter(({ key }) =>
      [/^(storage|transport|storage-or-transport)$/, /^humidity$/, /^life$/].every((one) => has(key, one)),
    );
    expect(whole.length).toBeGreaterThanOrEqual(140);
  });
});

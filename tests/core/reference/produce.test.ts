import { describe, expect, it } from 'vitest';
import { fromCelsius } from '../../../src/core/model/temperature.js';
import {
  cite,
  findProduce,
  highestFreezingPoint,
  produceTable,
} from '../../../src/core/reference/produce.js';

const F = (celsius: number | undefined) => Number(fromCelsius(celsius ?? Number.NaN, '°F').toFixed(6));

describe('published produce temperatures', () => {
  it('every row has a source for each value, in an order that makes sense', () => {
    expect(produceTable.length).toBeGreaterThanOrEqual(20);
    for (const item of produceTable) {
      expect(item.range.sources.length, item.key).toBeGreaterThan(0);
      expect(item.range.value.low, item.key).toBeLessThanOrEqual(item.range.value.high);
      if (item.freezing !== undefined) {
        expect(item.freezing.sources.length, item.key).toBeGreaterThan(0);
        expect(item.freezing.value, item.key).toBeLessThan(item.range.value.high);
      }
    }
  });

  it('keys and names are each used once', () => {
    const names = produceTable.flatMap((item) =>
      [item.key, ...item.aliases].map((name) => name.toLowerCase()),
    );
    expect(new Set(names).size).toBe(names.length);
  });

  it.each([
    // UC Davis fact sheet and New England Vegetable Management Guide, table 16.
    { name: 'lettuce-romaine', low: 32, high: 36, freezing: 31.7, basis: 'read' },
    // HB66-derived table L3.3; UC Davis.
    { name: 'Grapes', low: 30, high: 32, freezing: 28.1, basis: 'read' },
    // UC Davis.
    { name: 'CUCUMBERS', low: 50, high: 55, freezing: 31.1, basis: 'read' },
    // Mississippi State University Extension (2015); the freezing point from memory.
    { name: 'sweet potatoes', low: 55, high: 60, freezing: 29.7, basis: 'read' },
    // Partly from memory of USDA Agriculture Handbook 66.
    { name: 'plums', low: 31, high: 32, freezing: 30.5, basis: 'from memory' },
  ])('$name', ({ name, low, high, freezing, basis }) => {
    const item = findProduce(name);
    expect([F(item?.range.value.low), F(item?.range.value.high), F(item?.freezing?.value)]).toEqual([
      low,
      high,
      freezing,
    ]);
    expect(item?.range.basis).toBe(basis);
    if (item !== undefined) expect(cite(item.range)).not.toBe('');
  });

  it('where sources disagree both values are kept, and the worse one is named', () => {
    const garlic = findProduce('garlic');
    expect(F(garlic?.freezing?.value)).toBe(28.4);
    expect(garlic?.alternatives).toMatchObject([{ field: 'freezing', source: 'CT' }]);
    if (garlic !== undefined) expect(F(highestFreezingPoint(garlic))).toBe(30.6);
  });

  it('what the table lacks is not guessed', () => {
    expect(findProduce('dragon fruit')).toBeUndefined();
  });
});

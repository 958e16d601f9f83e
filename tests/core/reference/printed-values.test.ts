import { describe, expect, it } from 'vitest';
import { fromCelsius } from '../../../src/core/model/temperature.js';
import {
  cite,
  findProduce,
  type Produce,
  type Published,
  produceTable,
} from '../../../src/core/reference/produce.js';
import { sectionOf, sources } from '../../../src/core/reference/sources.js';
import CSV from './printed-values.csv?raw';

/**
 * The table as it was copied by hand from the sources, kept apart from the code: a value that is changed in one place
 * only fails here.
 */
const PRINTED = CSV.trim().split('\n').slice(1);

const F = (celsius: number | undefined) =>
  celsius === undefined ? '' : String(Number(fromCelsius(celsius, '°F').toFixed(6)));
const from = (value: Published<unknown> | undefined) => value?.sources.join(' ') ?? '';

function row(item: Produce): string {
  return [
    item.key,
    F(item.range.value.low),
    F(item.range.value.high),
    from(item.range),
    F(item.freezing?.value),
    from(item.freezing),
    F(item.chilling?.value.low),
    F(item.chilling?.value.high),
    from(item.chilling),
    `${item.humidity.value.low}-${item.humidity.value.high}`,
    from(item.humidity),
    item.ethylene.value.givesOff,
    item.ethylene.value.minds,
    from(item.ethylene),
    item.topIce.value,
    from(item.topIce),
    item.life.value,
    from(item.life),
  ].join(',');
}

describe('the reference table', () => {
  it('has at least sixty commodities', () => {
    expect(produceTable.length).toBeGreaterThanOrEqual(60);
  });

  it.each(PRINTED.map((line) => [line.split(',', 1)[0] ?? '', line]))('%s is as printed', (key, line) => {
    const item = findProduce(key);
    expect(item && row(item)).toBe(line);
  });

  it('has nothing besides', () => {
    expect(produceTable.map((item) => item.key).sort()).toEqual(PRINTED.map((line) => line.split(',', 1)[0]));
  });

  it('says of every value from memory that it is', () => {
    for (const item of produceTable)
      for (const value of [item.range, item.freezing, item.chilling, item.humidity, item.ethylene, item.life])
        if (value !== undefined) {
          expect(value.sources.length, item.key).toBeGreaterThan(0);
          expect(value.basis === 'from memory', item.key).toBe(value.sources.includes('M'));
          if (value.basis === 'from memory') expect(cite(value)).toContain('From memory');
        }
  });

  it('names the part of the source', () => {
    const lettuce = findProduce('romaine');
    expect(lettuce?.freezing && cite(lettuce.freezing, 'freezing')).toBe(
      `${sources.UCD}, section Freezing Injury`,
    );
    expect(sectionOf('PD', 'chilling')).toBe('table 20.5, p. 639');
  });

  // Where published sources disagree: UC Davis sheets, Cantwell (2001), Produce Degradation tables, container table.
  it.each([
    ['grapes', 'freezing', 28.1, 27.1],
    ['kiwifruit', 'freezing', 30.4, 29.3],
    ['garlic', 'freezing', 28.4, 30.6],
    ['avocado', 'freezing', 31.5, 29.1],
    ['cucumbers', 'chilling', 50, 45],
    ['bell peppers', 'chilling', 45, 40],
    ['sweet potatoes', 'freezing', 29.7, 28.6],
  ] as const)('%s keeps both words on %s', (name, field, first, second) => {
    const item = findProduce(name);
    const main = field === 'freezing' ? item?.freezing?.value : item?.chilling?.value.low;
    expect(F(main)).toBe(String(first));
    expect(
      item?.alternatives.filter((other) => other.field === field).map((other) => F(other.value)),
    ).toEqual([String(second)]);
  });
});

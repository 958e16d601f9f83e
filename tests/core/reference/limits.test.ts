import { describe, expect, it } from 'vitest';
import { fromCelsius, toCelsius } from '../../../src/core/model/temperature.js';
import { givesMuchEthylene, harmedByEthylene } from '../../../src/core/reference/company.js';
import {
  chillingFloors,
  compareWithSources,
  distanceOutside,
  freezingPoints,
  recommendedTemperatures,
} from '../../../src/core/reference/limits.js';
import { generalValues, publishedValues } from '../../../src/core/reference/published-values.js';
import { printedAmount } from '../../../src/core/reference/value-cell.js';

const recommended = (goods: string) =>
  recommendedTemperatures(goods).map(({ value }) => [value.source.name, printedAmount(value)]);

describe('recommended temperatures stand source by source', () => {
  it('romaine: 32 °F by UC Davis, 32 to 36 °F by the New England guide', () => {
    expect(recommended('lettuce-romaine')).toEqual([
      ['UC Davis', '0 °C (32 °F)'],
      ['New England guide', '32 to 36 °F'],
      ['Western Australia', '0 °C'],
    ]);
  });

  it('of oranges, Arizona Valencia alone has 48 °F', () => {
    expect(recommended('oranges-california-arizona')).toContainEqual(['UC Davis', '3 to 8 °C (38 to 46 °F)']);
    expect(recommended('oranges-california-arizona').flat().join()).not.toContain('48 °F');
  });

  it.each([
    ['lettuce-romaine', 32, ['UC Davis', 'New England guide', 'Western Australia'], []],
    ['lettuce-romaine', 36, ['New England guide'], ['UC Davis', 'Western Australia']],
    ['lettuce-romaine', 40, [], ['UC Davis', 'New England guide', 'Western Australia']],
    // The upper end in °C is 54.5 °F; the sheet prints 55 °F beside it, and both count.
    ['cucumbers', 55, ['UC Davis'], undefined],
    ['frozen-food', -10, ['Vermont 20-031-014', 'Maine 01-001 ch. 344', 'Arkansas 25-0115'], []],
  ])('%s at %d °F', (goods, fahrenheit, within, outside) => {
    const found = compareWithSources(recommendedTemperatures(goods), toCelsius(fahrenheit, '°F'));
    const names = (ranges: typeof found.within) => [...new Set(ranges.map(({ value }) => value.source.name))];
    expect(names(found.within)).toEqual(expect.arrayContaining(within));
    if (outside !== undefined) {
      expect(names(found.within)).toEqual(within);
      expect(names(found.outside)).toEqual(outside);
    }
  });

  it('the distance is that to the nearest', () => {
    const found = distanceOutside(recommendedTemperatures('lettuce-romaine'), toCelsius(41, '°F'));
    expect(found?.side).toBe('above');
    expect(((found?.kelvin ?? 0) * 9) / 5).toBeCloseTo(5, 9);
  });
});

describe('where sources disagree all are kept', () => {
  it.each([
    // Highest freezing points, °F: grapes −2.1 °C (28.1 °F) by an older sheet of UC Davis, −2.7 °C (27.1 °F) by the current one.
    ['grapes-table', [28.22, 27.14]],
    ['kiwifruit', [30.38, 29.3]],
    ['garlic', [30.56, 30.56, 28.4]],
    ['lettuce-romaine', [31.7]],
  ])('freezing of %s', (goods, fahrenheit) => {
    const points = freezingPoints(goods).map(({ high }) => fromCelsius(high, '°F'));
    expect(new Set(points.map((point) => point.toFixed(1)))).toEqual(
      new Set(fahrenheit.map((point) => point.toFixed(1))),
    );
    expect([...points].sort((a, b) => b - a)).toEqual(points);
  });

  it('chilling of cucumbers: 50 °F and 45 °F', () => {
    const floors = chillingFloors('cucumbers').map(({ value }) => [value.source.name, printedAmount(value)]);
    expect(floors).toEqual([
      ['UC Davis', '10 °C (50 °F)'],
      ['Produce Degradation (2005)', '7 °C (45 °F)'],
      ['Utah State', '45 °F'],
    ]);
  });
});

describe('what may reach a finding', () => {
  it('is never restricted to a cultivar, a ripeness or a time, and secondary only where nothing was read', () => {
    for (const { goods, quantity } of publishedValues()) {
      const general = generalValues(goods, [quantity]);
      expect(general.every(({ only }) => only === undefined)).toBe(true);
      expect(new Set(general.map(({ source }) => source.status)).size).toBeLessThanOrEqual(1);
    }
  });

  it('ethylene, by the words of the sources', () => {
    expect(givesMuchEthylene('apples').map(({ source }) => source.name)).toEqual([
      'Cantwell (2001)',
      'ASHRAE',
    ]);
    expect(harmedByEthylene('lettuce-romaine').map(({ words }) => words)).toEqual(['sensitive']);
    // Apricots: M by Cantwell, Moderate by ASHRAE.
    expect(givesMuchEthylene('apricots')).toEqual([]);
    expect(harmedByEthylene('celery')).toEqual([]);
  });
});

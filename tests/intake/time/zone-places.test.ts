import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { zone } from '../../../src/core/model/time.js';
import { ZONE_NAMES } from '../../../src/core/model/zone-names.js';
import { usualOrder } from '../../../src/intake/time/country-order.js';
import { zonesOfPlace } from '../../../src/intake/time/zone-places.js';
import { zoneOfWord } from '../../../src/intake/time/zone-words.js';

describe('the zone of a place', () => {
  it.each([
    ['America/Phoenix', ['America/Phoenix']],
    ['Arizona', ['America/Phoenix']],
    ['Yuma AZ', ['America/Phoenix']],
    ['Yuma, Arizona', ['America/Phoenix']],
    ['Los Angeles', ['America/Los_Angeles']],
    ['Omaha NE', ['America/Chicago']],
    ['Nebraska', ['America/Chicago', 'America/Denver']],
    ['El Paso, TX', ['America/Denver']],
    ['Somewhere TX', ['America/Chicago', 'America/Denver']],
    ['Charleston, West Virginia', ['America/New_York']],
    ['London', ['Europe/London']],
    ['London, Ontario', ['America/Toronto']],
    ['Hermosillo, Sonora', ['America/Hermosillo']],
    ['Querétaro', ['America/Mexico_City']],
    ['España', ['Europe/Madrid', 'Atlantic/Canary']],
    ['Madrid, Spain', ['Europe/Madrid']],
    ['the yard', []],
    ['', []],
  ])('%s', (text, zones) => {
    expect(zonesOfPlace(text)).toEqual(zones);
  });

  it('gives zones of the list, or none, for any text', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        for (const found of zonesOfPlace(text)) expect(ZONE_NAMES).toContain(found);
      }),
    );
  });
});

describe('the words for a zone', () => {
  it.each([
    ['ET', 'America/Phoenix', { zone: 'America/New_York' }],
    ['pdt', 'America/Chicago', { zone: 'America/Los_Angeles', offset: -420 }],
    ['Pacific', 'America/Chicago', { zone: 'America/Los_Angeles' }],
    ['Mountain Time', 'America/Chicago', { zone: 'America/Denver' }],
    ['Mountain Standard Time', 'America/Chicago', { zone: 'America/Denver', offset: -420 }],
    ['Central Daylight Time', 'America/Chicago', { zone: 'America/Chicago', offset: -300 }],
    ['CEST', 'Europe/Madrid', { zone: 'Europe/Berlin', offset: 120 }],
    ['BST', 'Europe/London', { zone: 'Europe/London', offset: 60 }],
    ['CST', 'Asia/Shanghai', undefined],
    ['noon', 'America/Chicago', undefined],
  ])('%s near %s', (word, near, meant) => {
    expect(zoneOfWord(word, zone.parse(near))).toEqual(meant);
  });
});

describe('the order of day and month in a country', () => {
  it.each([
    ['America/Chicago', 'month-day-year'],
    ['America/Indiana/Knox', 'month-day-year'],
    ['US/Central', 'month-day-year'],
    ['America/Mexico_City', 'day-month-year'],
    ['Europe/London', 'day-month-year'],
    ['America/Toronto', undefined],
    ['UTC', undefined],
  ])('%s', (name, order) => {
    expect(usualOrder(zone.parse(name))).toBe(order);
  });
});

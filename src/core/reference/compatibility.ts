import type { SourceKey } from './sources.js';
import { isSourceKey } from './sources.js';

/** Very low, low, medium, high, very high: the grades of the UC Davis table of properties. */
export type Grade = 'VL' | 'L' | 'M' | 'H' | 'VH';

/**
 * Compatibility of goods in one trailer: ethylene production and sensitivity, and recommended relative humidity,
 * percent.
 */
export interface Compatibility {
  gives: Grade;
  feels: Grade;
  ethyleneSources: SourceKey[];
  humidity: { low: number; high: number };
  /** Sources of temperature range and humidity together, as the table was collected. */
  humiditySources: SourceKey[];
}

/**
 * By key of the produce table: ethylene production and sensitivity with sources, lowest and highest humidity with
 * sources.
 */
const rows: readonly (readonly [
  key: string,
  gives: Grade,
  feels: Grade,
  ethylene: string,
  low: number,
  high: number,
  humidity: string,
])[] = [
  ['lettuce-iceberg', 'VL', 'H', 'UCD', 95, 100, 'UCD NE16'],
  ['lettuce-romaine', 'VL', 'H', 'UCD', 95, 100, 'UCD NE16'],
  ['lettuce-leaf', 'VL', 'H', 'M', 95, 100, 'NE16'],
  ['broccoli', 'VL', 'H', 'UCD', 95, 100, 'UCD PD'],
  ['strawberries', 'L', 'L', 'UCD', 90, 95, 'UCD SL'],
  ['blueberries', 'L', 'L', 'UCD M', 90, 95, 'UCD SL'],
  ['raspberries', 'L', 'L', 'UCD', 90, 95, 'UCD SL'],
  ['blackberries', 'L', 'L', 'UCD CT', 90, 95, 'UCD SL'],
  ['cranberries', 'L', 'L', 'CT', 90, 95, 'UCD SL'],
  ['apples', 'VH', 'H', 'CW', 90, 95, 'CW M'],
  ['apples-chilling-sensitive', 'VH', 'H', 'CW', 90, 95, 'CW PD'],
  ['carrots', 'VL', 'H', 'M', 90, 100, 'NE16 PD'],
  ['celery', 'VL', 'M', 'CT UCD', 98, 100, 'UCD'],
  ['cauliflower', 'VL', 'H', 'UCD', 95, 98, 'UCD PD'],
  ['cabbage', 'VL', 'H', 'CT', 90, 100, 'NE16 PD'],
  ['spinach', 'VL', 'H', 'UCD', 95, 98, 'UCD'],
  ['sweet-corn', 'VL', 'L', 'CT', 95, 98, 'UCD NCS'],
  ['grapes-table', 'VL', 'L', 'UCD CT', 90, 95, 'UCD SL'],
  ['cherries-sweet', 'VL', 'L', 'CT', 90, 95, 'SL PD'],
  ['peaches-nectarines', 'H', 'M', 'M', 90, 95, 'SL PD'],
  ['plums', 'M', 'M', 'M', 90, 95, 'PD M'],
  ['apricots', 'M', 'H', 'CW', 90, 95, 'CW'],
  ['pears-bartlett', 'H', 'H', 'UCD M', 90, 95, 'UCD SL'],
  ['oranges-california-arizona', 'VL', 'M', 'UCD CH', 90, 95, 'UCD'],
  ['oranges-florida-texas', 'VL', 'M', 'UCD CH', 85, 90, 'UCD SL'],
  ['grapefruit', 'VL', 'M', 'M', 85, 95, 'SL PD'],
  ['lemons', 'VL', 'M', 'M', 85, 95, 'PD GAG'],
  ['limes', 'VL', 'M', 'M', 85, 95, 'SL PD'],
  ['bananas-green', 'M', 'H', 'CT M', 90, 95, 'UCD SL'],
  ['avocados-hass', 'H', 'H', 'CW', 85, 95, 'UCD CW'],
  ['tomatoes-mature-green', 'L', 'H', 'UCD M', 90, 95, 'UCD NCS'],
  ['tomatoes-ripe', 'H', 'L', 'UCD M', 90, 95, 'UCD USU NCS'],
  ['peppers-bell', 'L', 'L', 'M', 90, 95, 'USU NE16'],
  ['cucumbers', 'L', 'H', 'UCD', 95, 95, 'UCD'],
  ['beans-snap', 'L', 'M', 'CT', 95, 100, 'NE16 PD'],
  ['squash-summer', 'L', 'M', 'CT', 80, 95, 'USU'],
  ['eggplant', 'L', 'M', 'CT M', 90, 95, 'PD NE16'],
  ['potatoes-table', 'VL', 'M', 'M', 90, 95, 'M'],
  ['sweet-potatoes', 'VL', 'L', 'M', 85, 90, 'M'],
  ['onions-dry', 'VL', 'L', 'CW', 65, 70, 'CW UCD'],
  ['onions-green', 'L', 'H', 'CW', 95, 100, 'CW NE16'],
  ['garlic', 'VL', 'L', 'CW', 60, 70, 'CW PD'],
  ['leeks', 'VL', 'M', 'CW', 95, 100, 'CW'],
  ['cantaloupe', 'H', 'M', 'CT', 90, 95, 'UCD WF'],
  ['honeydew', 'M', 'H', 'M', 90, 95, 'WF PD'],
  ['watermelon', 'VL', 'H', 'M', 85, 95, 'WF USU PD'],
  ['pineapple', 'L', 'L', 'CW', 85, 90, 'CW SL'],
  ['mangoes', 'M', 'M', 'UCD M', 85, 95, 'UCD SL'],
  ['papaya', 'M', 'M', 'M', 85, 90, 'SL M'],
  ['asparagus', 'VL', 'M', 'CW', 95, 100, 'UCD NE16'],
  ['mushrooms', 'VL', 'M', 'CW', 90, 95, 'CW'],
  ['kiwifruit', 'L', 'H', 'CW', 90, 95, 'UCD CW'],
  ['radishes', 'VL', 'L', 'M', 95, 100, 'M'],
  ['parsley', 'VL', 'H', 'M', 95, 100, 'NE16'],
  ['basil', 'VL', 'H', 'M', 90, 95, 'NE16'],
  ['cilantro', 'VL', 'H', 'M', 95, 100, 'M'],
  ['dill', 'VL', 'H', 'CW', 95, 100, 'CW'],
  ['chives', 'L', 'H', 'CW', 95, 100, 'CW'],
  ['artichokes', 'VL', 'L', 'CW', 95, 100, 'CW'],
  ['brussels-sprouts', 'VL', 'H', 'M', 90, 100, 'NE16 PD'],
  ['okra', 'L', 'M', 'CW', 90, 95, 'CW NE16'],
  ['beets', 'VL', 'L', 'M', 95, 98, 'NE16 PD'],
  ['peas-green', 'VL', 'M', 'M', 90, 98, 'NE16'],
];

const keysOf = (text: string) => text.split(' ').filter(isSourceKey);
const table = new Map<string, Compatibility>(
  rows.map(([key, gives, feels, ethylene, low, high, humidity]) => [
    key,
    {
      gives,
      feels,
      ethyleneSources: keysOf(ethylene),
      humidity: { low, high },
      humiditySources: keysOf(humidity),
    },
  ]),
);

/** The compatibility of goods by their key in the produce table; undefined when the table lacks them. */
export function compatibilityOf(key: string): Compatibility | undefined {
  return table.get(key);
}

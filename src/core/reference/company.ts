import { generalValues, type PublishedValue } from './published-values.js';

/** Words by which sources say that goods give off much ethylene. */
const MUCH = /^(?:very high|high|vh|h)$/i;
/** Words by which sources say that goods are harmed by ethylene. */
const HARMED = /^(?:(?:extremely |highly )?sensitive|very high|high|vh|h)$/i;

const saying = (goods: string, quantity: 'ethylene-production' | 'ethylene-sensitivity', pattern: RegExp) =>
  generalValues(goods, [quantity]).filter(({ words }) => words !== undefined && pattern.test(words));

/** What sources say of goods that give off much ethylene; empty where none says so. */
export const givesMuchEthylene = (goods: string): readonly PublishedValue[] =>
  saying(goods, 'ethylene-production', MUCH);

/** What sources say of goods that ethylene harms; empty where none says so. */
export const harmedByEthylene = (goods: string): readonly PublishedValue[] =>
  saying(goods, 'ethylene-sensitivity', HARMED);

/** Recommended relative humidity of one source, percent. */
export interface HumidityRange {
  low: number;
  high: number;
  value: PublishedValue;
}

/** Recommended relative humidities of the goods, source by source. */
export function recommendedHumidities(goods: string): readonly HumidityRange[] {
  return generalValues(goods, ['humidity']).flatMap((value) => {
    const [printed] = value.printed;
    return printed === undefined ? [] : [{ low: printed.low ?? 0, high: printed.high ?? 100, value }];
  });
}

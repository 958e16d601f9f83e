import type { InspectedDefect } from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { parseTemperature, type Temperature } from '../core/model/temperature.js';

const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
const NATURE = /[\s,;(]+(permanent|quality|condition|permanente|calidad|condici[oó]n)\)?$/i;
const SERIOUS_WORD = String.raw`(?:serious(?:\s+damage)?|graves?)`;
const SERIOUS = [
  new RegExp(
    String.raw`[\s,;(]+(?:of which|incl(?:uding|\.)?|de ellos)?\s*${SERIOUS_WORD}\s*[:=]?\s*(${NUMBER})\s*%?\)?$`,
    'i',
  ),
  new RegExp(
    String.raw`[\s,;(]+(?:of which|incl(?:uding|\.)?|de ellos)?\s*(${NUMBER})\s*%?\s*${SERIOUS_WORD}\)?$`,
    'i',
  ),
];
const NAME_FIRST = new RegExp(String.raw`^(.*?)[\s:=]*(?<![\d.,])(${NUMBER})\s*%?$`);
const SHARE_FIRST = new RegExp(String.raw`^(${NUMBER})\s*%\s*(.*)$`);

/** Percentages of a defect or of a total before the schema checks them. */
export type TypedShares = Pick<InspectedDefect, 'percent' | 'serious'>;

/** `tipburn 8% serious 3%`, `8% tipburn (3% serious)`, `seedstems 4% permanent`; undefined for anything else. */
export function parseDefect(text: string): InspectedDefect | undefined {
  const { rest, nature, shares, name } = parts(text);
  if (rest === undefined || name === '') return undefined;
  return { name, ...shares, ...omitUndefined({ nature }) };
}

/** `15% serious 9%`; undefined for anything else. */
export function parseShares(text: string): TypedShares | undefined {
  const { rest, shares, name, nature } = parts(text);
  return rest === undefined || name !== '' || nature !== undefined ? undefined : shares;
}

/** Several defects, one after another with semicolons or bars between them; undefined as soon as one is not understood. */
export function splitDefects(text: string): string[] {
  return text
    .split(/[;|]/)
    .map((one) => one.trim())
    .filter((one) => one !== '');
}

function parts(text: string): {
  rest: string | undefined;
  name: string;
  nature: InspectedDefect['nature'];
  shares: TypedShares;
} {
  let rest = ` ${text.trim()}`;
  const natureWord = NATURE.exec(rest)?.[1]?.toLowerCase();
  rest = rest.replace(NATURE, '');
  const form = SERIOUS.find((one) => one.test(rest));
  const serious = form?.exec(rest)?.[1];
  if (form !== undefined) rest = rest.replace(form, '');
  rest = rest.trim().replace(/[,;(]+$/, '');
  const [, name = '', before] = NAME_FIRST.exec(rest) ?? [];
  const [, first, after = ''] = SHARE_FIRST.exec(rest) ?? [];
  const percent = before ?? first;
  return {
    rest: percent === undefined ? undefined : rest,
    name: (before === undefined ? after : name).trim().replace(/[:,]$/, ''),
    nature: natureWord === undefined ? undefined : /^cond/.test(natureWord) ? 'condition' : 'permanent',
    shares: {
      percent: toNumber(percent),
      ...omitUndefined({ serious: serious === undefined ? undefined : toNumber(serious) }),
    },
  };
}

const toNumber = (text = '') => Number(text.replace(',', '.'));

/** `41F to 44F`, `41-44 F`, `5 °C`: the lowest and the highest; undefined for anything else. */
export function parseTemperatureRange(text: string): { low: Temperature; high: Temperature } | undefined {
  const [, from = '', to] =
    /^\s*(.+?)(?:\s*(?:\bto\b|\ba\b|–|\/|(?<=[\d°CF])\s*-)\s*(.+?))?\s*$/i.exec(text) ?? [];
  const high = parseTemperature(to ?? from);
  const low =
    to === undefined ? high : (parseTemperature(from) ?? parseTemperature(`${from}${high?.unit ?? ''}`));
  return low === undefined || high === undefined ? undefined : { low, high };
}

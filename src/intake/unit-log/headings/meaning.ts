import { omitUndefined } from '../../../core/model/omit-undefined.js';
import type { TemperatureUnit } from '../../../core/model/temperature.js';
import { withoutAccents } from '../../time/months.js';
import { namesOtherQuantity, statesOtherUnit } from './other-quantities.js';
import { type Statistic, statisticIn } from './statistics.js';
import type { HeadingMeaning, WordList } from './word-list.js';
import { FILLERS, HEADING_WORDS } from './words.js';

/**
 * Lower case, no accents, words apart, no filler words, no unit, no number of the instrument: `SetPoint_(°F)` gives
 * `set point`, `2. Temp, °C (serial 4711)` gives `temp`.
 */
export function plainHeading(heading: string): string {
  const text = withoutAccents(heading.replaceAll('ß', 'ss').replaceAll(/[°º˚∘]/g, ' deg '))
    // The number of the column in its table.
    .replace(/^\s*#?\d{1,2}[.)]\s+(?=\p{L})/u, '')
    .replace(/(?<=.)\b(?:\p{L}{1,6}\s+)?s\/n\b.*$/iu, ' ')
    .replaceAll(/([a-z])([A-Z])/g, '$1 $2')
    .replaceAll(/\([^)]*\)|\[[^\]]*\]/g, ' ')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    // `probe1` is `probe 1`.
    .replaceAll(/(\p{L}{2,})(\d)/gu, '$1 $2')
    .trim()
    .replace(/(?: deg(?:rees?)?)? o?[cf]$| deg[cf]$|(?: deg(?:rees?)?)? (?:fahrenheit|celsius)$/, '');
  return text
    .split(' ')
    .filter((word) => !FILLERS.has(word))
    .join(' ')
    .trim();
}

/** Words beyond which a heading is a sentence about something. */
const MOST_WORDS = 9;

/** How well a heading says something: more words of it explained, fewer left over. 0 is not at all. */
function strength(heading: string, list: WordList): { strength: number; weak: boolean } {
  const words = heading.split(' ');
  if (list.not?.some((word) => words.includes(word)) === true) return { strength: 0, weak: false };
  let best = 0;
  for (const phrase of list.words) {
    if (!` ${heading} `.includes(` ${phrase} `)) continue;
    const explained = phrase.split(' ').length;
    best = Math.max(best, 10 * explained - (words.length - explained));
  }
  if (best > 0) return { strength: best, weak: false };
  return { strength: list.weak?.some((word) => words.includes(word)) === true ? 0.5 : 0, weak: true };
}

export interface HeadingReading {
  means: HeadingMeaning;
  strength: number;
  /** Said by a word that could be of anything, such as `temperature`. */
  weak: boolean;
  /** The number in a heading such as `Probe 2`. */
  number?: number;
  /** The words of the heading, without those of a statistic. */
  plain: string;
  /** The mean, or another statistic, of what the words name. */
  statistic?: Statistic;
  /** Degrees or the word temperature stand in it. */
  ofTemperature: boolean;
  unit?: TemperatureUnit;
  /** The letter T and what it is of: a temperature where its numbers are. */
  symbol?: true;
}

const SYMBOL = /^T(?:[ _.-]\p{Ll}[\p{L}\d ]{1,20}|(?:air|soil|water|in|out|amb))$/u;

const TEMPERATURES: ReadonlySet<HeadingMeaning> = new Set([
  'set-point',
  'return-air',
  'supply-air',
  'ambient',
  'probe',
]);

/**
 * What a heading most likely means, by the word lists of all languages. A heading with degrees, or with a word that has
 * temperature in it, is a probe by that alone; one with another unit or quantity is no temperature.
 */
export function headingMeaning(heading: string): HeadingReading | undefined {
  if (heading.length > 200) return undefined;
  const words = plainHeading(heading);
  // A sentence is a remark.
  if (words === '' || words.length > 80 || words.split(' ').length > MOST_WORDS) return undefined;
  const statistic = statisticIn(words);
  const plain = statistic?.of ?? words;
  const unit = unitIn(heading);
  const ofTemperature = unit !== undefined || /temp(?:erat|\b|$)|\btmp\b/.test(plain);
  let best: { means: HeadingMeaning; strength: number; weak: boolean } | undefined;
  for (const lists of Object.values(HEADING_WORDS))
    for (const list of lists) {
      const said = strength(TEMPERATURES.has(list.means) ? plain : words, list);
      if (said.strength > (best?.strength ?? 0)) best = { means: list.means, ...said };
    }
  if (best === undefined && ofTemperature && !isRuledOut(plain))
    best = { means: 'probe', strength: 0.4, weak: true };
  // The letter of physics: `T_amont`, `Tair`; a T alone is as often the time.
  const symbol = best === undefined && SYMBOL.test(heading.trim()) && !isRuledOut(plain);
  if (symbol) best = { means: 'probe', strength: 0.3, weak: true };
  if (best === undefined) return undefined;
  if (TEMPERATURES.has(best.means) && (statesOtherUnit(heading) || namesOtherQuantity(words)))
    return undefined;
  const number = /(?:^| )(\d{1,2})(?: |$)/.exec(plain)?.[1];
  return {
    ...best,
    plain,
    ofTemperature,
    ...omitUndefined({
      number: number === undefined ? undefined : Number(number),
      unit,
      symbol: symbol ? true : undefined,
      statistic: TEMPERATURES.has(best.means) ? statistic?.is : undefined,
    }),
  };
}

/** Whether a word stands in it that makes a temperature one of an engine, a coil or water. */
function isRuledOut(plain: string): boolean {
  const words = plain.split(' ');
  return Object.values(HEADING_WORDS).some((lists) =>
    lists.some((list) => list.means === 'probe' && list.not?.some((word) => words.includes(word)) === true),
  );
}

/** Degrees that a heading or a line of units states. */
export function unitIn(heading: string): TemperatureUnit | undefined {
  // A ring above is a degree sign to whoever typed it.
  const text = heading.slice(0, 200).replaceAll(/[˚∘]/g, '°').normalize('NFKC').trim();
  const match =
    /(?:°|º|\bdeg(?:rees?)?\.?)[\s_]*([CF])(?![a-z])/i.exec(text) ??
    // A mark in front that is no letter may be what is left of a degree sign in another encoding.
    /[([{]\s*(?:[^\p{L}\p{N}\s()[\]{}%]{0,2}|\u00f8|\u00c2.)\s*(?:[oº°]|deg(?:rees?)?\.?)?\s*([CF])(?:elsius|ahrenheit)?\s*[)\]}]/iu.exec(
      text,
    ) ??
    /(?:^|[\s_,/.-])o?([CF])$/.exec(text) ??
    /(?:^|[^\p{L}])(?:temp(?:erature?)?|tmp)[\s_.-]?([CF])(?=[\s_.-])/iu.exec(text) ??
    /_([cf])$/.exec(text) ??
    /(?:^|[^\p{L}])([CF])(?:ahrenheit|elsius)(?!\p{L})/iu.exec(text) ??
    /(?:[a-z]|\bdeg)([CF])$/.exec(text) ??
    /deg([cf])$/.exec(text);
  if (match === null) return undefined;
  return match[1]?.toUpperCase() === 'F' ? '°F' : '°C';
}

import type { TemperatureUnit } from '../../../core/model/temperature.js';
import { withoutAccents } from '../../time/months.js';
import type { HeadingMeaning, WordList } from './word-list.js';
import { FILLERS, HEADING_WORDS } from './words.js';

/** Lower case, no accents, words apart, no filler words: `SetPoint_(°F)` gives `set point`. */
export function plainHeading(heading: string): string {
  const text = withoutAccents(heading.replaceAll(/[°º]/g, ' deg '))
    .replaceAll(/([a-z])([A-Z])/g, '$1 $2')
    .replaceAll(/\([^)]*\)|\[[^\]]*\]/g, ' ')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    // `probe1` is `probe 1`.
    .replaceAll(/(\p{L}{2,})(\d)/gu, '$1 $2')
    .trim()
    .replace(/(?: deg)? [cf]$|(?: deg)? (?:fahrenheit|celsius)$/, '');
  return text
    .split(' ')
    .filter((word) => !FILLERS.has(word))
    .join(' ')
    .trim();
}

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
}

/** What a heading most likely means, by the word lists of all languages. */
export function headingMeaning(heading: string): HeadingReading | undefined {
  if (heading.length > 200) return undefined;
  const plain = plainHeading(heading);
  if (plain === '' || plain.length > 80) return undefined;
  let best: HeadingReading | undefined;
  for (const lists of Object.values(HEADING_WORDS))
    for (const list of lists) {
      const said = strength(plain, list);
      if (said.strength > (best?.strength ?? 0)) best = { means: list.means, ...said };
    }
  const number = /(?:^| )(\d{1,2})(?: |$)/.exec(plain)?.[1];
  return best === undefined || number === undefined ? best : { ...best, number: Number(number) };
}

/** Degrees that a heading or a line of units states. */
export function unitIn(heading: string): TemperatureUnit | undefined {
  const text = heading.slice(0, 200).normalize('NFKC').trim();
  const match =
    /(?:°|º|\bdeg(?:rees)?\.?)\s*([CF])(?![a-z])/i.exec(text) ??
    /[([{]\s*([CF])\s*[)\]}]/i.exec(text) ??
    /(?:^|[\s_,/-])([CF])$/.exec(text) ??
    /_([cf])$/.exec(text) ??
    /\b([CF])(?:ahrenheit|elsius)\b/i.exec(text) ??
    /[a-z]([CF])$/.exec(text);
  if (match === null) return undefined;
  return match[1]?.toUpperCase() === 'F' ? '°F' : '°C';
}

/** A heading that states the clock's zone is universal time. */
export function statesUtc(heading: string): boolean {
  return /\b(?:UTC|GMT|Zulu)\b/i.test(heading.replaceAll('_', ' '));
}

import type { TemperatureUnit } from '../../model/temperature.js';
import { HEADING_WORDS, type Meaning, type WordList } from './words.js';

/** Lower case, no accents, words apart: `SetPoint_(°F)` gives `set point`. */
export function plainHeading(heading: string): string {
  return heading
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/([a-z])([A-Z])/g, '$1 $2')
    .replaceAll(/\([^)]*\)|\[[^\]]*\]/g, ' ')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .replace(/(?: deg)? [cf]$|(?: deg)? (?:fahrenheit|celsius)$/, '')
    .trim();
}

/** How well a heading says something: more words of it explained, fewer left over. 0 is not at all. */
function strength(heading: string, list: WordList): number {
  const words = heading.split(' ');
  if (list.not?.some((word) => words.includes(word)) === true) return 0;
  let best = 0;
  for (const phrase of list.words) {
    if (!` ${heading} `.includes(` ${phrase} `)) continue;
    const explained = phrase.split(' ').length;
    best = Math.max(best, 10 * explained - (words.length - explained));
  }
  return best;
}

export interface HeadingMeaning {
  means: Meaning;
  strength: number;
}

/** What a heading most likely means, by the word lists of all languages. */
export function meaningOf(heading: string): HeadingMeaning | undefined {
  const plain = plainHeading(heading);
  if (plain === '' || plain.length > 80) return undefined;
  let best: HeadingMeaning | undefined;
  for (const list of Object.values(HEADING_WORDS).flat()) {
    const s = strength(plain, list);
    if (s > 0 && s > (best?.strength ?? 0)) best = { means: list.means, strength: s };
  }
  return best;
}

/** Degrees that a heading or a line of units states. */
export function unitIn(heading: string): TemperatureUnit | undefined {
  const text = heading.normalize('NFKC').trim();
  const match =
    /(?:°|º|\bdeg(?:rees)?\.?)\s*([CF])(?![a-z])/i.exec(text) ??
    /[([{]\s*([CF])\s*[)\]}]/i.exec(text) ??
    /(?:^|[\s_,/-])([CF])$/.exec(text) ??
    /_([cf])$/.exec(text) ??
    /\b([CF])(?:ahrenheit|elsius)\b/i.exec(text);
  if (match === null) return undefined;
  return match[1]?.toUpperCase() === 'F' ? '°F' : '°C';
}

/** A heading that states the clock's zone is universal time. */
export function saysUtc(heading: string): boolean {
  return /\b(?:UTC|GMT|Zulu)\b/i.test(heading.replaceAll('_', ' '));
}

import { parseAcceleration } from '../../core/model/acceleration.js';
import { axleGroup } from '../../core/model/evidence.js';
import { parseMilliseconds } from '../../core/model/milliseconds.js';
import { parseWeight } from '../../core/model/weight.js';
import type { WordReading } from './word-reading.js';

/** Words of a scale ticket: `steer 11,840 lb`, `gross 77360lb`, `ticket 4471`. */
export function ofScale(words: readonly string[], at: number): WordReading | undefined {
  const plain = (words[at] ?? '').toLowerCase();
  if (plain === 'ticket' && words[at + 1] !== undefined)
    return { field: 'ticket', text: words[at + 1] ?? '', length: 2 };
  const named = [...axleGroup.options, 'gross'].find((name) => name === plain);
  const weighed = named === undefined ? undefined : weightAt(words, at + 1);
  return named === undefined || weighed === undefined
    ? undefined
    : { field: named, text: weighed.text, length: weighed.length + 1 };
}

/** Words of a row of pallets: `each 1,800 lb`. */
export function ofPalletWeight(words: readonly string[], at: number): WordReading | undefined {
  const weighed = words[at]?.toLowerCase() === 'each' ? weightAt(words, at + 1) : undefined;
  return weighed === undefined
    ? undefined
    : { field: 'palletWeight', text: weighed.text, length: weighed.length + 1 };
}

/** Words of a shock: its peak, how long it lasted, and the threshold. */
export function ofShock(words: readonly string[], at: number): WordReading | undefined {
  const word = words[at] ?? '';
  const plain = word.toLowerCase();
  if (plain === 'threshold') {
    const peak = peakAt(words, at + 1);
    return peak === undefined ? undefined : { field: 'threshold', text: peak.text, length: peak.length + 1 };
  }
  if (/^\d+(?:[.,]\d+)?m?s$/.test(plain) && parseMilliseconds(plain) !== undefined)
    return { field: 'duration', text: word, length: 1 };
  if (/^m?s$/i.test(words[at + 1] ?? '') && parseMilliseconds(`${word} ${words[at + 1]}`) !== undefined)
    return { field: 'duration', text: `${word} ${words[at + 1]}`, length: 2 };
  const peak = peakAt(words, at);
  return peak === undefined ? undefined : { field: 'word', ...peak };
}

/** Words of pallets as they were found: `rows 7-8`, `count 2`, `e71` for a photograph. */
export function ofPallets(words: readonly string[], at: number): WordReading | undefined {
  const word = words[at] ?? '';
  const plain = word.toLowerCase();
  const next = words[at + 1];
  if (/^rows?$/.test(plain) && next !== undefined) return { field: 'rows', text: next, length: 2 };
  if (plain === 'count' && next !== undefined) return { field: 'count', text: next, length: 2 };
  if (/^pallets?$/.test(plain)) return { field: '', text: '', length: 1 };
  return /^e[1-9]\d*$/.test(plain) ? { field: 'photo', text: plain, length: 1 } : undefined;
}

function weightAt(words: readonly string[], at: number): { text: string; length: number } | undefined {
  return longest(words, at, (text) => parseWeight(text) !== undefined) ?? bare(words[at]);
}

function peakAt(words: readonly string[], at: number): { text: string; length: number } | undefined {
  return longest(words, at, (text) => parseAcceleration(text) !== undefined) ?? bare(words[at]);
}

function longest(
  words: readonly string[],
  at: number,
  reads: (text: string) => boolean,
): { text: string; length: number } | undefined {
  for (const length of [2, 1]) {
    const text = words.slice(at, at + length).join(' ');
    if (words.length >= at + length && reads(text)) return { text, length };
  }
  return undefined;
}

/** A bare number is taken as it stands, and asked about later with the choices of its unit. */
const bare = (word: string | undefined): { text: string; length: number } | undefined =>
  word !== undefined && /^\d+(?:[.,]\d+)*$/.test(word) ? { text: word, length: 1 } : undefined;

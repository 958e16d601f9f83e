import { dateParts, readTimeOfDay } from '../time/wall-time.js';
import { isZoneWord } from '../time/zone-words.js';

/** The words of a line, and the free text after them. */
export interface NoteWords {
  words: string[];
  /** After `note`, or after a colon that is not part of a time. */
  free?: string;
}

/** Longest line that is read. */
const LONGEST = 2_500;

export function splitNote(line: string): NoteWords {
  const text = line.slice(0, LONGEST);
  const words: string[] = [];
  let rest = text;
  for (;;) {
    const match = /^\s*(\S+)/.exec(rest);
    if (match === null) return { words };
    const [all, word = ''] = match;
    rest = rest.slice(all.length);
    const free = rest.trim();
    if (word.toLowerCase() === 'note' || word.toLowerCase() === 'note:' || word === ':')
      return { words, free };
    if (word.endsWith(':')) {
      words.push(word.slice(0, -1));
      // A colon that ends the line belongs to a heading.
      return free === '' ? { words } : { words, free };
    }
    words.push(word.replace(/[,;]$/, ''));
  }
}

/** The words of a date at a place in the line; `Jul 14 2026` takes three. */
export function dateAt(words: readonly string[], at: number): { text: string; length: number } | undefined {
  for (const length of [3, 1]) {
    const text = words.slice(at, at + length).join(' ');
    // A number alone is a seal, a count or a temperature; only spreadsheets write days so.
    const date = words.length >= at + length && !/^\d{1,7}$/.test(text) ? dateParts(text) : undefined;
    if (date !== undefined && date.clock === undefined) return { text, length };
  }
  return undefined;
}

/** The words of a time of day: `04:10`, `2:05 pm`, `14:05 MST`, `04:10 -07:00`. */
export function timeOfDayAt(
  words: readonly string[],
  at: number,
): { text: string; length: number } | undefined {
  const word = words[at] ?? '';
  const half = /^[ap]\.?m\.?$/i.test(words[at + 1] ?? '') ? ` ${words[at + 1]}` : '';
  const clock = `${word}${half}`;
  if (!/\d/.test(word) || /^\d+$/.test(clock) || readTimeOfDay(clock) === undefined) return undefined;
  const length = half === '' ? 1 : 2;
  const zone = zoneAt(words, at + length);
  return zone === undefined
    ? { text: clock, length }
    : { text: `${clock} ${zone.text}`, length: length + zone.length };
}

/** `MST`, `PT`, `Pacific Time`, `-07:00`. */
function zoneAt(words: readonly string[], at: number): { text: string; length: number } | undefined {
  for (const length of [3, 2, 1]) {
    const text = words.slice(at, at + length).join(' ');
    if (words.length < at + length) continue;
    if (isZoneWord(text) || (length === 1 && /^(?:UTC|Z|[+-]\d{2}:?\d{2})$/.test(text)))
      return { text, length };
  }
  return undefined;
}

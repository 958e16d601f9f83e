import type { Channel, StateColumn } from '../../../core/model/evidence.js';
import { ENGLISH } from './languages/english.js';
import { FRENCH } from './languages/french.js';
import { GERMAN } from './languages/german.js';
import { SPANISH } from './languages/spanish.js';
import type { WordList } from './word-list.js';

/** What a column of a log can be. `time` holds date and time, `date` and `clock` one each. */
export type Meaning = 'time' | 'date' | 'clock' | Channel | StateColumn;

/** Probes in the box or the load, in the order of their numbers. */
export const PROBES = ['probe', 'probe-2', 'probe-3', 'probe-4'] as const satisfies readonly Channel[];

/** Trade words on column headings, by language (BCP 47). A further language is a further list. */
export const HEADING_WORDS: Readonly<Record<string, readonly WordList[]>> = {
  en: ENGLISH,
  es: SPANISH,
  fr: FRENCH,
  de: GERMAN,
};

/** Words between words: `temperatura del aire de retorno` is `temperatura aire retorno`. */
export const FILLERS: ReadonlySet<string> = new Set([
  ...['of', 'the', 'and', 'in', 'at'],
  ...['de', 'del', 'la', 'el', 'y', 'en'],
  ...['d', 'du', 'l', 'le', 'les', 'et', 'a', 'au'],
]);

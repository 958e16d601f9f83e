import type { Channel, StateColumn } from '../../../core/model/evidence.js';
import { ENGLISH } from './languages/english.js';
import { FRENCH } from './languages/french.js';
import { SPANISH } from './languages/spanish.js';

/** What a heading can mean; probes are numbered once all columns are known. */
export type HeadingMeaning =
  | 'time'
  | 'date'
  | 'clock'
  | 'set-point'
  | 'return-air'
  | 'supply-air'
  | 'ambient'
  | 'probe'
  | StateColumn;

/** What a column of a log can be. `time` holds date and time, `date` and `clock` one each. */
export type Meaning = 'time' | 'date' | 'clock' | Channel | StateColumn;

/** Probes in the box or the load, in the order of their numbers. */
export const PROBES = ['probe', 'probe-2', 'probe-3', 'probe-4'] as const satisfies readonly Channel[];

export interface WordList {
  means: HeadingMeaning;
  /** Headings or parts of headings, in lower case, without accents, punctuation or filler words. */
  words: readonly string[];
  /** Words that say it only where no other column says it better. */
  weak?: readonly string[];
  /** A heading with one of these is something else. */
  not?: readonly string[];
}

/** Trade words on column headings, by language (BCP 47). A further language is a further list. */
export const HEADING_WORDS: Readonly<Record<string, readonly WordList[]>> = {
  en: ENGLISH,
  es: SPANISH,
  fr: FRENCH,
};

/** Words between words: `temperatura del aire de retorno` is `temperatura aire retorno`. */
export const FILLERS: ReadonlySet<string> = new Set([
  ...['of', 'the', 'and', 'in', 'at'],
  ...['de', 'del', 'la', 'el', 'y', 'en'],
  ...['d', 'du', 'l', 'le', 'les', 'et', 'a', 'au'],
]);

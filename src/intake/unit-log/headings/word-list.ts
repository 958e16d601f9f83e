import type { StateColumn } from '../../../core/model/evidence.js';

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

export interface WordList {
  means: HeadingMeaning;
  /** Headings or parts of headings, in lower case, without accents, punctuation or filler words. */
  words: readonly string[];
  /** Words that say it only where no other column says it better. */
  weak?: readonly string[];
  /** A heading with one of these is something else. */
  not?: readonly string[];
}

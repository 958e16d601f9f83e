import type { Delivery } from '../../core/model/delivery.js';
import { dateAt, type NoteWords } from './words.js';

/** Date, stop and name for the following lines, until one changes them. */
export interface NoteContext {
  date?: string;
  stop?: string;
  by?: string;
}

/** The context of a line that holds nothing but a date, a stop or `by` a name; undefined for other lines. */
export function noteContextOf({ words, free }: NoteWords, delivery: Delivery): NoteContext | undefined {
  if (free !== undefined) return undefined;
  const context: NoteContext = {};
  for (let i = 0; i < words.length; ) {
    const word = words[i] ?? '';
    const date = dateAt(words, i);
    const stop = delivery.stops.find(({ id }) => id.toLowerCase() === word.toLowerCase());
    if (date !== undefined) {
      context.date = date.text;
      i += date.length;
    } else if (stop !== undefined) {
      context.stop = stop.id;
      i += 1;
    } else if (word.toLowerCase() === 'by' && i + 1 < words.length) {
      context.by = words.slice(i + 1).join(' ');
      i = words.length;
    } else return undefined;
  }
  return Object.keys(context).length === 0 ? undefined : context;
}

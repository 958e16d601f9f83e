import { type Block, plain } from '../../core/words/blocks.js';
import type { View } from './context.js';

/** Rows of one table: two or three pages. What goes beyond is for a spreadsheet. */
export const MOST_ROWS = 100;

/** What one table shows, and the sentence that says where the rest is. */
export interface ShownRows<T> {
  shown: readonly T[];
  note: Block[];
}

/** The first rows, where there are more than a table shows. `file` is the attachment that has all of them. */
export function firstRows<T>(view: View, all: readonly T[], file: string): ShownRows<T> {
  const shown = all.slice(0, MOST_ROWS);
  return { shown, note: noteOf(view, 'first', shown.length, all.length, file) };
}

/**
 * The rows that weigh most, in the order in which they stand, where there are more than a table shows.
 * @param what how they are called: a label of the group `rows`
 */
export function heaviestRows<T>(
  view: View,
  all: readonly T[],
  weight: (one: T) => number,
  what: string,
  file: string,
): ShownRows<T> {
  if (all.length <= MOST_ROWS) return { shown: all, note: [] };
  const heaviest = new Set(
    all
      .map((one, i) => ({ i, weight: weight(one) }))
      .sort((a, b) => b.weight - a.weight || a.i - b.i)
      .slice(0, MOST_ROWS)
      .map(({ i }) => i),
  );
  return {
    shown: all.filter((_, i) => heaviest.has(i)),
    note: noteOf(view, what, heaviest.size, all.length, file),
  };
}

/** A sentence such as: the first 100 of 8,000; all are in the attached file. */
export function noteOf(view: View, what: string, shown: number, all: number, file: string): Block[] {
  if (shown >= all) return [];
  const { format, labels } = view;
  const sentence = labels(`rows.${what}`)
    .replace('SHOWN', format.number(shown))
    .replace('ALL', format.number(all))
    .replace('FILE', file);
  return [{ is: 'paragraph', of: plain(sentence) }];
}

import { type Inline, plain, text } from '../../../core/words/blocks.js';

/** Words with the exhibits behind them in brackets. */
export const withExhibits = (words: string, links: readonly Inline[]): Inline[] =>
  links.length === 0 ? plain(words) : [text(`${words} (`), ...links, text(')')];

/** Pieces one after the other. */
export const joined = (parts: readonly Inline[][], between = '; '): Inline[] =>
  parts.flatMap((part, i) => (i === 0 ? part : [text(between), ...part]));

import { plainSpaces } from './spaces.js';

/**
 * Breaks text into lines at its spaces, and inside a word where that is longer than a line. What keeps together, such
 * as a number and its unit, has no-break spaces, which come out as plain ones.
 */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    let rest = [...word];
    if (line !== '' && lengthOf(line) + 1 + rest.length > width) {
      lines.push(line);
      line = '';
    }
    while (rest.length > width) {
      lines.push(rest.slice(0, width).join(''));
      rest = rest.slice(width);
    }
    line = line === '' ? rest.join('') : `${line} ${rest.join('')}`;
  }
  return [...lines, line].map(plainSpaces);
}

/** Wrapped text with a mark before its first line; the others begin under the text, or as said. */
export function hanging(
  text: string,
  width: number,
  mark: string,
  further = ' '.repeat(lengthOf(mark)),
): string[] {
  return wrap(text, width - Math.max(lengthOf(mark), lengthOf(further))).map(
    (line, i) => `${i === 0 ? mark : further}${line}`,
  );
}

/** In characters as Unicode counts them. */
export const lengthOf = (text: string): number => [...text].length;

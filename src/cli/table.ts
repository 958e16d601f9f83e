import { plainSpaces } from '../core/words/spaces.js';
import { lengthOf, wrap } from '../core/words/wrap.js';
import { escapeControls, type Output } from './output.js';

/** Narrowest readable last column, in characters. */
const ROOM = 24;

/** Cells in columns, cut to the width; the last column takes the rest and wraps. */
export function tableLines(rows: readonly (readonly string[])[], width: number): string[] {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  if (columns === 0) return [];
  const clean = rows.map((row) => row.map(escapeControls));
  const natural = Array.from({ length: columns }, (_, i) =>
    Math.max(...clean.map((row) => lengthOf(row[i] ?? ''))),
  );
  const narrow = natural.slice(0, -1).map((w) => Math.min(w, Math.max(8, Math.floor(width / columns) + 8)));
  const left = (widths: readonly number[]) => width - widths.reduce((sum, w) => sum + w + 2, 0);
  // No column wraps its cells while the last column has room enough.
  const fixed = left(natural.slice(0, -1)) >= ROOM ? natural.slice(0, -1) : narrow;
  const last = Math.max(16, left(fixed));
  return clean.flatMap((row) => {
    const cells = row.map((cell, i) => wrap(cell, i === columns - 1 ? last : (fixed[i] ?? last)));
    const height = Math.max(1, ...cells.map((lines) => lines.length));
    return Array.from({ length: height }, (_, y) =>
      cells
        .map((lines, i) => pad(lines[y] ?? '', i === columns - 1 ? 0 : (fixed[i] ?? 0)))
        .join('  ')
        .trimEnd(),
    );
  });
}

/**
 * Prints the head of a table, and gives what prints its rows, one line each, as they come. What is longer than its column
 * pushes the rest to the right.
 * @param widths of all columns but the last
 */
export function rowPrinter(
  output: Output,
  widths: readonly number[],
  head: readonly string[],
): (row: readonly string[]) => void {
  const print = (row: readonly string[]) => {
    output.line(
      row
        .map((cell, i) => pad(plainSpaces(escapeControls(cell)), widths[i] ?? 0))
        .join('  ')
        .trimEnd(),
    );
  };
  print(head);
  return print;
}

const pad = (text: string, width: number) => text + ' '.repeat(Math.max(0, width - lengthOf(text)));

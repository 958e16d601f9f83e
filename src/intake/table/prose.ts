import { type Delimiter, splitLine } from './delimiter.js';

/** Lines from the top that are looked at. */
const MOST_LINES = 200;
/** Share of cells with a figure from which lines with commas are rows: own judgement, no source. */
const FIGURES = 0.2;
/** Headings of the tables that people write. */
const WRITTEN = /^\s*"?(?:file|kind|time|what|subject)\b/i;

/**
 * Whether lines that a comma cuts into pieces are sentences and lists of people's writing, and no rows: the commas
 * stand before blanks, and the pieces are words, hardly ever a figure alone.
 */
export function isProse(lines: readonly string[], delimiter: Delimiter): boolean {
  const full = lines.filter((line) => line.trim() !== '').slice(0, MOST_LINES);
  if (delimiter !== ',' || WRITTEN.test(full[0] ?? '')) return false;
  const text = full.join('\n');
  const commas = text.match(/,/g)?.length ?? 0;
  const spaced = text.match(/,(?:[ \t]|$)/gm)?.length ?? 0;
  if (spaced < commas * 0.8) return false;
  const cells = full.flatMap((line) => splitLine(line, delimiter)).map((cell) => cell.trim());
  const figures = cells.filter((cell) => /^[+\-−]?[\d.,:/%° -]*\d[\d.,:/%° TZ-]*[CF]?$/.test(cell)).length;
  return figures < cells.length * FIGURES;
}

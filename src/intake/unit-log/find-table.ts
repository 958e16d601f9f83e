import { DELIMITERS, type Delimiter, guessDelimiter, linesOf, splitLine } from '../table/delimiter.js';
import { type Assignment, assignColumns, type ColumnChoice, type Columns } from './columns.js';
import { unitIn } from './headings.js';

export interface FoundTable {
  delimiter: Delimiter;
  /** Last line of the header, counted from 1: the headings, or the line of units under them. */
  headerRow: number;
  headings: string[];
  /** Lines above the header, in cells. */
  preamble: string[][];
  /** Cells of a line of units under the headings. */
  unitRow: string[];
  sample: string[][];
  columns: Columns;
}

export type TableSearch =
  | { is: 'found'; table: FoundTable }
  | {
      is: 'not-found';
      headings: string[];
      row: number;
      why: Exclude<Assignment['is'], 'columns'> | 'no-rows';
      column?: string;
    };

/** Headings come within this many lines, after whatever the download says about itself. */
const PREAMBLE_LINES = 100;
const SAMPLE_ROWS = 200;

/** Looks for the header line and the delimiter under which its words make the best log. */
export function findTable(head: string, choice?: ColumnChoice): TableSearch {
  const lines = linesOf(head);
  let best: { table: FoundTable; score: number } | undefined;
  for (const delimiter of DELIMITERS) {
    if (!lines.some((line) => line.includes(delimiter))) continue;
    const split = lines.slice(0, PREAMBLE_LINES + SAMPLE_ROWS).map((line) => splitLine(line, delimiter));
    for (let i = 0; i < Math.min(lines.length, PREAMBLE_LINES); i++) {
      const headings = split[i] ?? [];
      if (headings.length < 2) continue;
      // A line of values is no header.
      if (headings.filter((cell) => /^\s*[-+−]?\d/.test(cell)).length > headings.length / 3) continue;
      const rows = split.slice(i + 1, i + 1 + SAMPLE_ROWS);
      const found = assignColumns(headings, rows, choice);
      if (found.is !== 'columns' || found.score <= (best?.score ?? 0)) continue;
      const unitRow = isUnitRow(rows[0] ?? []) ? (rows[0] ?? []) : [];
      const skip = unitRow.length > 0 ? 1 : 0;
      best = {
        score: found.score,
        table: {
          delimiter,
          headerRow: i + 1 + skip,
          headings: headings.map((h) => h.trim()),
          preamble: split.slice(0, i),
          unitRow,
          sample: rows.slice(skip),
          columns: found.columns,
        },
      };
    }
  }
  if (best !== undefined) return { is: 'found', table: best.table };
  return explainLack(lines, choice);
}

function isUnitRow(cells: readonly string[]): boolean {
  const full = cells.filter((cell) => cell.trim() !== '');
  return full.length > 0 && full.some((c) => unitIn(c) !== undefined) && full.every((c) => !/\d/.test(c));
}

/** The line that looks most like a header, and what it lacks. */
function explainLack(lines: readonly string[], choice: ColumnChoice | undefined): TableSearch {
  const delimiter = guessDelimiter(lines) ?? ',';
  const split = lines.slice(0, PREAMBLE_LINES).map((line) => splitLine(line, delimiter));
  const width = Math.max(0, ...split.map((cells) => cells.length));
  const row = Math.max(
    0,
    split.findIndex((cells) => cells.length === width),
  );
  const headings = (split[row] ?? []).map((h) => h.trim());
  const rest = split.slice(row + 1).filter((cells) => cells.some((cell) => cell.trim() !== ''));
  const found = assignColumns(headings, rest, choice);
  return {
    is: 'not-found',
    headings,
    row: row + 1,
    why:
      rest.length === 0 && found.is === 'time-without-date'
        ? 'no-rows'
        : found.is === 'columns'
          ? 'no-time'
          : found.is,
    ...(found.is !== 'columns' && found.column !== undefined ? { column: found.column } : {}),
  };
}

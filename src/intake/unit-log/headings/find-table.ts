import { omitUndefined } from '../../../core/model/omit-undefined.js';
import { DELIMITERS, type Delimiter, guessDelimiter, linesOf } from '../../table/delimiter.js';
import { type RowOfText, rowsOfText } from '../../table/rows.js';
import { readWithUnit } from '../cells/numbers.js';
import { unitOfCell } from '../cells/unit-cell.js';
import { dateOfLine } from '../rows/date-lines.js';
import { valuesOf } from './column-values.js';
import { type Assignment, assignColumns, type ColumnChoice, type Columns } from './columns.js';
import { fittedHeadings } from './fitted-headings.js';
import { type HeadingReading, headingMeaning, unitIn } from './meaning.js';
import { isOtherUnit } from './other-quantities.js';

export interface FoundTable {
  delimiter: Delimiter;
  /** Line of the header, or of the units under it, counted from 1; 0 for a table without one. */
  headerRow: number;
  headings: string[];
  /** Lines above the header, in cells. */
  preamble: string[][];
  /** Cells of a line of units under or over the headings. */
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
      why: Exclude<Assignment['is'], 'columns'> | 'no-rows' | 'no-headings' | 'too-many-columns';
      column?: string;
    };

export interface TableChoice {
  columns?: ColumnChoice | undefined;
  delimiter?: Delimiter | undefined;
  /** Line of the headings, counted from 1; 0 when there is none. */
  headerRow?: number | undefined;
}

/** Headings come within this many rows, after whatever the download says about itself. */
const PREAMBLE_ROWS = 100;
const SAMPLE_ROWS = 200;
/** A table of a unit's download has a few dozen columns. */
export const MOST_COLUMNS = 1_000;

/** Looks for the header line and the delimiter under which its words make the best log. */
export function findTable(head: string, choice: TableChoice = {}): TableSearch {
  const said = remembered();
  let best: { table: FoundTable; score: number } | undefined;
  for (const delimiter of choice.delimiter === undefined ? DELIMITERS : [choice.delimiter]) {
    if (!head.includes(delimiter)) continue;
    const rows = rowsOfText(head, delimiter, PREAMBLE_ROWS + SAMPLE_ROWS);
    for (const at of candidates(rows, choice.headerRow)) {
      const table = tableAt(rows, at, choice, said);
      if (table === undefined || table.score <= (best?.score ?? 0)) continue;
      best = { score: table.score, table: { ...table.table, delimiter } };
    }
  }
  const table = best?.table ?? withoutHeadings(head, choice, said);
  return table === undefined ? explainNotFound(head, choice) : { is: 'found', table };
}

/** A table without headings whose cells say all: one column of times, and temperatures with their unit in each cell. */
function withoutHeadings(
  head: string,
  choice: TableChoice,
  said: (heading: string) => HeadingReading | undefined,
): FoundTable | undefined {
  if (choice.headerRow !== undefined || Object.keys(choice.columns ?? {}).length > 0) return undefined;
  for (const delimiter of choice.delimiter === undefined ? DELIMITERS : [choice.delimiter]) {
    if (!head.includes(delimiter)) continue;
    const rows = rowsOfText(head, delimiter, PREAMBLE_ROWS + SAMPLE_ROWS);
    const sample = rows.map(({ cells }) => cells);
    if (!isRowOfValues(sample[0] ?? [])) continue;
    const found = tableAt(rows, -1, choice, (heading) => {
      const column = Number(heading.replace('column ', '')) - 1;
      const units = new Set(sample.map((row) => readWithUnit(row[column] ?? '', '.')?.unit));
      const [unit] = units;
      return units.size === 1 && unit !== undefined ? said(`column (${unit})`) : undefined;
    });
    if (found !== undefined) return { ...found.table, delimiter };
  }
  return undefined;
}

/** Places in `rows` that may be the header; −1 stands for a table without one. */
function candidates(rows: readonly RowOfText[], headerRow: number | undefined): number[] {
  if (headerRow === 0) return [-1];
  if (headerRow !== undefined)
    return [rows.findIndex(({ line }) => line === headerRow)].filter((i) => i >= 0);
  return rows.slice(0, PREAMBLE_ROWS).flatMap(({ cells }, i) => {
    if (cells.length < 2 || cells.length > MOST_COLUMNS || isLineOfUnits(cells)) return [];
    // A line of values is no header; `1. Temperature` is no value.
    const values = cells.filter((cell) => /^\s*[-+−]?\d(?!\d?[.)]\s+\p{L})/u.test(cell)).length;
    return values > cells.length / 3 ? [] : [i];
  });
}

function tableAt(
  rows: readonly RowOfText[],
  at: number,
  { columns }: TableChoice,
  said: (heading: string) => HeadingReading | undefined,
): { table: Omit<FoundTable, 'delimiter'>; score: number } | undefined {
  const below = rows.slice(at + 1, at + 1 + SAMPLE_ROWS).map(({ cells }) => cells);
  const width = Math.min(MOST_COLUMNS, Math.max(0, ...below.map((cells) => cells.length)));
  const headings =
    at < 0
      ? Array.from({ length: width }, (_, i) => `column ${i + 1}`)
      : fittedHeadings(rows[at]?.cells ?? [], below).map((cell) => cell.trim());
  const under = at >= 0 && isUnitRow(below[0] ?? []) ? (below[0] ?? []) : [];
  const over = at > 0 && under.length === 0 ? unitsOver(rows[at - 1]?.cells ?? []) : [];
  const unitRow = [...(under.length > 0 ? under : over)];
  const sample = below.slice(under.length > 0 ? 1 : 0);
  // A unit over or under a heading says of its column what one in the heading would.
  const withUnit = (heading: string, column: number) => {
    const beside = unitBeside(headings, sample, column);
    // Degrees beside a heading that says nothing are of a setting as often as of a reading.
    if (beside !== '' && (unitOfCell(beside) === undefined || said(heading) === undefined)) return undefined;
    const unit = (unitRow[column] ?? '').trim() || beside;
    return said(unitOfCell(unit) !== undefined || isOtherUnit(unit) ? `${heading} (${unit})` : heading);
  };
  // A line between the rows that states their date is none of them.
  const ownRows = sample.filter((cells) => dateOfLine(cells) === undefined);
  const looked = ownRows.length > 0 ? ownRows : sample;
  const whole = assignColumns(headings, looked, columns, withUnit);
  const found =
    whole.is === 'time-without-date' && hasDateLines(rows.slice(0, Math.max(0, at)), sample)
      ? assignColumns(headings, looked, columns, withUnit, 'above')
      : whole;
  if (found.is !== 'columns') return undefined;
  const header = rows[under.length > 0 ? at + 1 : at];
  return {
    score: found.score,
    table: {
      headerRow: header?.line ?? 0,
      headings,
      preamble: rows.slice(0, Math.max(0, at)).map(({ cells }) => cells),
      unitRow,
      sample,
      columns: found.columns,
    },
  };
}

/**
 * The unit in the cells of the column behind a column, whose heading says that it holds units: `Value,O2_Unit` over
 * `202.8,µmol/L`. Empty where that is none, or says several.
 */
function unitBeside(
  headings: readonly string[],
  sample: readonly (readonly string[])[],
  column: number,
): string {
  if (!/(?:^|[^\p{L}])units?$/iu.test(headings[column + 1] ?? '')) return '';
  const units = new Set(sample.map((row) => (row[column + 1] ?? '').trim()).filter((cell) => cell !== ''));
  const [unit = '', other] = units;
  return other === undefined ? unit : '';
}

/** Whether the date of each row stands in a line above it: between the rows, or one alone above the headings. */
function hasDateLines(preamble: readonly RowOfText[], below: readonly (readonly string[])[]): boolean {
  const above = new Set(preamble.flatMap(({ cells }) => dateOfLine(cells) ?? []));
  const first = below[0];
  if (first !== undefined && dateOfLine(first) !== undefined) return true;
  return above.size === 1;
}

/** The cells of a line above the headings that holds units and little else, column by column. */
function unitsOver(cells: readonly string[]): readonly string[] {
  const full = cells.filter((cell) => cell.trim() !== '');
  const units = full.filter((cell) => unitOfCell(cell) !== undefined || isOtherUnit(cell));
  // The form of the dates may stand over their column.
  return units.length >= 2 && units.length >= full.length - 2 ? cells : [];
}

/** Units alone are no headings, though each of them says something of its column. */
function isLineOfUnits(cells: readonly string[]): boolean {
  const full = cells.filter((cell) => cell.trim() !== '');
  return full.length > 0 && full.every((cell) => unitOfCell(cell) !== undefined || isOtherUnit(cell));
}

function isUnitRow(cells: readonly string[]): boolean {
  const full = cells.filter((cell) => cell.trim() !== '');
  return (
    full.length > 0 &&
    full.some((c) => unitIn(c) !== undefined || unitOfCell(c) !== undefined) &&
    full.every((c) => !/\d/.test(c))
  );
}

/** Values stand in many rows that may be headers: each text is looked at once. */
function remembered(): (heading: string) => HeadingReading | undefined {
  const known = new Map<string, HeadingReading | undefined>();
  return (heading) => {
    if (known.has(heading)) return known.get(heading);
    const said = headingMeaning(heading);
    if (known.size < 50_000) known.set(heading, said);
    return said;
  };
}

/** A date or a count of time beside a number is no line of headings. */
function isRowOfValues(cells: readonly string[]): boolean {
  const values = cells.map((_, column) => valuesOf([cells], column));
  return (
    values.some((v) => v.dates > v.numbers || v.counted > 0) && values.some((v) => v.readable > v.counted)
  );
}

/** The line that looks most like a header, and what it lacks. */
function explainNotFound(head: string, choice: TableChoice): TableSearch {
  const delimiter = choice.delimiter ?? guessDelimiter(linesOf(head)) ?? ',';
  const rows = rowsOfText(head, delimiter, PREAMBLE_ROWS);
  const width = Math.max(0, ...rows.map(({ cells }) => cells.length));
  const given = choice.headerRow;
  const row = rows.find(({ cells, line }) => (given ? line === given : cells.length === width));
  const headings = (row?.cells ?? []).map((h) => h.trim());
  const rest = rows.filter(({ line }) => line > (row?.line ?? 0)).map(({ cells }) => cells);
  const lack = { is: 'not-found', headings: headings.slice(0, MOST_COLUMNS), row: row?.line ?? 1 } as const;
  if (headings.length > MOST_COLUMNS) return { ...lack, why: 'too-many-columns' };
  if (choice.headerRow === undefined && isRowOfValues(headings)) return { ...lack, why: 'no-headings' };
  const found = assignColumns(headings, rest, choice.columns);
  if (rest.length === 0 && found.is === 'time-without-date') return { ...lack, why: 'no-rows' };
  return {
    ...lack,
    why: found.is === 'columns' ? 'no-time' : found.is,
    ...omitUndefined({
      column: found.is !== 'columns' && found.column !== undefined ? found.column : undefined,
    }),
  };
}

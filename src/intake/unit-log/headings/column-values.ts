import { dateParts, readTimeOfDay } from '../../time/wall-time.js';
import { unwrapped } from '../cells/cell-value.js';
import { isFaultMark } from '../cells/fault-marks.js';
import { readNumber, readWithUnit } from '../cells/numbers.js';
import { epochOf } from '../rows/epoch.js';

/** What the first cells of a column are, counted. */
export interface ColumnValues {
  /** Cells that are not empty. */
  filled: number;
  numbers: number;
  integers: number;
  /** Numbers, fault marks and nothing else. */
  readable: number;
  dates: number;
  /** Dates without a time of day. */
  datesAlone: number;
  clocks: number;
  /** Seconds or milliseconds since 1970. */
  counted: number;
}

/** Rows of a sample that are looked at: enough to tell a name from a number. */
const LOOKED_AT = 25;

export function valuesOf(sample: readonly (readonly string[])[], column: number): ColumnValues {
  const found: ColumnValues = {
    ...{ filled: 0, numbers: 0, integers: 0, readable: 0, dates: 0, datesAlone: 0, clocks: 0, counted: 0 },
  };
  for (const row of sample.slice(0, LOOKED_AT)) {
    const cell = unwrapped((row[column] ?? '').trim());
    if (cell === '') continue;
    found.filled += 1;
    const number = eitherDecimal(cell);
    if (Number.isNaN(number)) countText(cell, found);
    else countNumber(cell, number, found);
  }
  return found;
}

function countNumber(cell: string, number: number, found: ColumnValues): void {
  found.numbers += 1;
  found.readable += 1;
  if (Number.isInteger(number)) found.integers += 1;
  if (epochOf(number) !== undefined) found.counted += 1;
  // A day of a spreadsheet, eight digits, or a part of a day; `14.07` is hours and minutes.
  if (cell.length >= 5) countDate(cell, found);
  if (readTimeOfDay(cell) !== undefined) found.clocks += 1;
}

function countText(cell: string, found: ColumnValues): void {
  if (cell.length > LONGEST) return;
  if (
    readWithUnit(cell, '.') !== undefined ||
    readWithUnit(cell, ',') !== undefined ||
    isFaultMark(cell, false)
  )
    found.readable += 1;
  countDate(cell, found);
  if (readTimeOfDay(cell) !== undefined) found.clocks += 1;
}

function countDate(cell: string, found: ColumnValues): void {
  const date = /\d/.test(cell) ? dateParts(cell) : undefined;
  if (date === undefined) return;
  found.dates += 1;
  if (date.clock === undefined) found.datesAlone += 1;
}

/** No date, number or mark is written longer. */
const LONGEST = 64;

function eitherDecimal(cell: string): number {
  const pointed = readNumber(cell, '.');
  return Number.isNaN(pointed) ? readNumber(cell, ',') : pointed;
}

/** Whether the cells can be temperatures: most that are not empty are numbers or marks of a fault. */
export function canBeTemperatures({ filled, readable }: ColumnValues): boolean {
  return readable * 2 >= filled;
}

/** Whether nearly all cells are dates: a column of times whatever its heading says. */
export function areDates({ filled, dates, numbers }: ColumnValues): boolean {
  // A number can be a spreadsheet's day; alone it shows nothing.
  return filled > 0 && dates >= 0.9 * filled && numbers < dates;
}

import type { Delivery } from '../core/model/delivery.js';
import { DossierError, type Problem } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { ReadingDraft } from './draft.js';
import { READING_COLUMNS, type RowNote, UnreadableRow } from './readings/columns.js';
import { readReadingRow } from './readings/row.js';
import type { WrittenTable } from './table/written-table.js';
import { DateOrderEvidence } from './time/date-order.js';
import type { DateOrder } from './time/wall-time.js';

/** A table with a column `kind` and a column `time` or `value` is one of readings. */
export function isReadingsTable(headings: readonly string[]): boolean {
  return headings.includes('kind') && (headings.includes('time') || headings.includes('value'));
}

export interface ReadReadings {
  readings: ReadingDraft[];
  problems: Problem[];
  rowsLeftOut: number;
}

/** Parses every readable row; each other row is a problem with its row and column. */
export function readReadings(table: WrittenTable, fileName: string, delivery: Delivery): ReadReadings {
  const result: ReadReadings = { readings: [], problems: [], rowsLeftOut: 0 };
  const unknown = table.headings.filter((h) => h !== '' && !READING_COLUMNS.some((known) => known === h));
  for (const column of unknown)
    result.problems.push({
      code: 'bad-value',
      message: `column "${column}" is not read`,
      where: { file: fileName, row: 1, column },
      fix: `the columns are: ${READING_COLUMNS.join(', ')}`,
    });
  const order = dateOrder(table, delivery);
  for (const row of table.rows) {
    try {
      const { reading, notes } = readReadingRow(row.cells, delivery, order);
      result.readings.push({ row: row.row, reading });
      for (const note of notes) result.problems.push(problem(note, row.row, fileName));
    } catch (error) {
      if (!(error instanceof UnreadableRow)) throw error;
      result.rowsLeftOut += 1;
      result.problems.push(problem(error.note, row.row, fileName));
    }
  }
  if (table.rows.length === 0)
    result.problems.push(
      new DossierError('unsupported-file', 'the table has no rows', {
        where: { file: fileName },
      }).toProblem(),
    );
  return result;
}

function problem(said: RowNote, row: number, file: string): Problem {
  return {
    code: 'bad-value',
    message: said.message,
    where: { file, row, column: said.column },
    ...omitUndefined({ fix: said.fix }),
  };
}

/** Spreadsheets rewrite dates in their country's order: the whole column decides. */
function dateOrder(table: WrittenTable, delivery: Delivery): DateOrder | undefined {
  const evidence = new DateOrderEvidence();
  for (const row of table.rows) evidence.add(row.cells.get('time') ?? '');
  const near = delivery.stops.flatMap((s) => (s.planned === undefined ? [] : [Date.parse(`${s.planned}Z`)]));
  const verdict = evidence.verdict(near.filter((at) => !Number.isNaN(at)));
  switch (verdict.is) {
    case 'order':
      return verdict.order;
    case 'no-dates':
      return 'iso';
    case 'ambiguous':
      return undefined;
  }
}

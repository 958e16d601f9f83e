// Reads the sheets of a spreadsheet in the binary form of before 2007 ([MS-XLS]) or in OpenDocument (ISO/IEC 26300); a
// thread of its own with a bounded heap, since both can ask for a table of a billion cells in a few bytes.
import { read, SSF } from '@e965/xlsx';
import { answering } from '../../platform/node/worker/answering.js';
import { linesOf } from './cell-text.js';

/** More rows than a log may have, and the columns that one may have: a further one is kept, so that there being more is told. */
const MOST_ROWS = 1_000_500;
const MOST_COLUMNS = 1_000;
const DAY = 86_400_000;

/** @typedef {import('@e965/xlsx').CellObject} Cell */

/**
 * @param {Cell | undefined} cell
 * @param {boolean} from1904
 * @returns {unknown}
 */
function shownIn(cell, from1904) {
  if (cell === undefined || cell.v === undefined || cell.t === 'e' || cell.t === 'z') return undefined;
  if (typeof cell.v !== 'number' || cell.t !== 'n') return cell.v;
  if (cell.z === undefined || !SSF.is_date(String(cell.z))) return cell.v;
  // Day numbers count from 1899-12-30, or from 1904-01-01 ([MS-XLS] 2.4.77), in the clock of the sheet.
  return new Date(Date.UTC(from1904 ? 1904 : 1899, from1904 ? 0 : 11, from1904 ? 1 : 30) + cell.v * DAY);
}

answering((/** @type {ArrayBuffer} */ bytes) => {
  const book = read(bytes, {
    ...{ type: 'array', dense: true, cellDates: false, cellNF: true, cellHTML: false, cellFormula: false },
    sheetRows: MOST_ROWS,
  });
  const from1904 = book.Workbook?.WBProps?.date1904 === true;
  return book.SheetNames.flatMap((name) => {
    const sheet = book.Sheets[name];
    // A sheet of a chart has no cells.
    const rows =
      sheet === undefined ? undefined : /** @type {(Cell[] | undefined)[] | undefined} */ (sheet['!data']);
    if (rows === undefined) return [{ name, text: '' }];
    const texts = Array.from(rows, (row) =>
      Array.from(row?.slice(0, MOST_COLUMNS + 1) ?? [], (cell) => shownIn(cell, from1904)),
    );
    return [{ name, text: linesOf(texts) }];
  });
});

/** No clock time of a delivery lies before this year: a date there is a time of day. */
const FIRST_YEAR = 1905;

/**
 * A cell as text: dates as `2026-07-14 05:42:08`, times of day as `05:42:08`, numbers as plain decimals.
 * @param {unknown} cell
 * @returns {string}
 */
function textOf(cell) {
  if (cell === null || cell === undefined) return '';
  if (cell instanceof Date) {
    // Day numbers are binary fractions: the nearest second is what was meant.
    const at = new Date(Math.round(cell.getTime() / 1000) * 1000);
    if (Number.isNaN(at.getTime())) return '';
    const text = at.toISOString();
    return at.getUTCFullYear() < FIRST_YEAR ? text.slice(11, 19) : text.slice(0, 19).replace('T', ' ');
  }
  if (typeof cell === 'number') return plainNumber(cell);
  return String(cell);
}

/**
 * Twelve digits are more than any sensor gives, and hide what binary fractions add.
 * A part of one is written with at least three decimals, so that a time of day is not taken for hours and minutes.
 * @param {number} value
 */
function plainNumber(value) {
  // Thirteen digits of a whole number are a time counted in milliseconds.
  if (Number.isSafeInteger(value)) return String(value);
  const rounded = Number(value.toPrecision(12));
  if (Math.abs(rounded) > 0 && Math.abs(rounded) < 1)
    return rounded.toFixed(12).replace(/(\.\d{3,}?)0+$/, '$1');
  return Math.abs(rounded) < 1e21 ? String(rounded) : '';
}

/**
 * One line for each row of the sheet, tabs between the cells, quoted as in RFC 4180 §2.
 * @param {Iterable<readonly unknown[]>} rows
 */
export function linesOf(rows) {
  const lines = [];
  for (const row of rows) lines.push(Array.from(row, cellOf).join('\t'));
  return lines.join('\n');
}

/** @param {unknown} cell */
function cellOf(cell) {
  const text = textOf(cell).replace(/[\r\n\t]+/g, ' ');
  return text.includes('"') ? `"${text.replaceAll('"', '""')}"` : text;
}

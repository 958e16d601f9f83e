import { linesOf } from './cell-text.js';

/** Columns of a table, and levels at which a value may stand. */
export const MOST_COLUMNS = 1_000;
export const DEEPEST = 40;
/** Tables of one document that are told apart. */
export const MOST_LISTS = 100;

/** @typedef {Map<string, unknown>} Fields */

/**
 * One sheet: lines of what stands beside the records, the headings, the records.
 * @param {string} name
 * @param {Fields} above
 * @param {Fields[]} records
 */
export function sheetOf(name, above, records, losses = /** @type {string[]} */ ([])) {
  /** @type {Set<string>} */
  const names = new Set();
  for (const fields of records) {
    for (const key of fields.keys()) names.add(key);
    if (names.size > MOST_COLUMNS)
      throw new Error(`its records have more than ${MOST_COLUMNS} different names`);
  }
  const headings = [...names];
  const rows = records.map((fields) => headings.map((heading) => fields.get(heading)));
  return [{ name, text: linesOf([...above, headings, ...rows]), losses }];
}

/** @param {readonly string[]} names */
export const notRead = (names) =>
  names.length === 0 ? [] : [`lists within its records are not read: ${names.slice(0, 20).join(', ')}`];

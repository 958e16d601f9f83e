import { stringify } from 'csv-stringify/sync';

export type Cell = string | number | undefined;

/**
 * A header and rows as CSV (RFC 4180). Text that a spreadsheet would run as a formula gets a leading apostrophe (CWE-1236), and text
 * with any break of a line is quoted: a lone line feed that a person typed must not begin a row of its own. Numbers
 * stay as they are, also below zero.
 */
export function csvOf(header: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return stringify([header, ...rows], {
    escape_formulas: true,
    record_delimiter: 'windows',
    quoted_match: /[\r\n]/,
  });
}

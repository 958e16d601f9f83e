import { dateParts } from '../../time/wall-time.js';

/** Labels of dates on which something else was done than measured. */
const OTHER = /print|export|calibrat|download|report|creat|manufact|firmware|version|impres|imprim|druck/i;
/** Labels that make eight digits or a day's number a date. */
const LABEL = /\b(?:date|day|fecha|dia|datum|tag|jour)\b/i;

/**
 * The date that a line states by itself, such as `2026-07-14`, `Date: 14 July 2026` or a label and the date beside it;
 * undefined for any other line. Rows of values are none.
 */
export function dateOfLine(cells: readonly string[]): string | undefined {
  const full = cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
  if (full.length === 0 || full.length > 2 || OTHER.test(full[0] ?? '')) return undefined;
  const [first = '', second] = full;
  if (second !== undefined) return /\d/.test(first) ? undefined : plainDate(second, LABEL.test(first));
  const [label = '', ...rest] = first.split(':');
  const behind = rest.join(':').trim();
  return (
    plainDate(first, false) ??
    (behind === '' || /\d/.test(label) ? undefined : plainDate(behind, LABEL.test(label)))
  );
}

function plainDate(text: string, labelled: boolean): string | undefined {
  const date = dateParts(text);
  if (date === undefined || date.clock !== undefined) return undefined;
  return labelled || date.separator !== '' ? text : undefined;
}

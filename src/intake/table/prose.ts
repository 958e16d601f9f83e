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

const TIME = String.raw`(?:\d{1,4}[-/. ](?:\d{1,2}|[A-Za-z]{3,9})[-/. ]\d{1,4}[ T@,_-]+\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?(?:\s*[AP]M)?|1\d{9}(?:\d{3}|\.\d+)?)`;
const NUMBER = String.raw`[-+]?\d+(?:[.,]\d+)?`;
/** A time, and numbers with nothing but blanks between them. */
const ROW = new RegExp(`^\\s*${TIME}(?:\\s+${NUMBER}\\s*(?:°?[CF]|%)?)+\\s*$`, 'i');
/** A time, and somewhere behind it a number that is a temperature by its unit or the word before it. */
const SENTENCE = new RegExp(
  `^\\s*\\[?${TIME}.{0,80}(?:${NUMBER}\\s*(?:°|deg|º)?\\s?[CF]\\b|temp\\w*[\\s:=]+${NUMBER})`,
  'i',
);
/** Rows from which a text is taken for a log. */
const FEWEST_ROWS = 10;

/** Whether most lines of a text are a time and numbers with blanks between them, or a time and a temperature in words. */
export function hasRowsOfValues(text: string): boolean {
  const full = text.split(/\r\n|\n|\r/).filter((line) => line.trim() !== '' && line.length < 300);
  const rows = full.filter((line) => ROW.test(line) || SENTENCE.test(line)).length;
  return rows >= FEWEST_ROWS && rows > full.length / 2;
}

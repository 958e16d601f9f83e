// Reads the table of a log from the text of a PDF's pages, where its columns are clear. Nothing in the file is run,
// followed or fetched; it is read in a thread of its own with a bounded heap.
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { answering } from '../../platform/node/worker/answering.js';
import { linesOf } from './cell-text.js';

/** Lines that are read: ten thousand pages of fifty rows. */
const MOST_LINES = 500_000;
/** Rows from which a text is taken for a log. */
const FEWEST_ROWS = 10;

/** @typedef {{ from: number, to: number, text: string }} Cell */
/** @typedef {Cell[]} Line */

const DATE = /\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}|\d{1,2}[ -]\p{L}{3,}[ -]\d{2,4}/u;
const CLOCK = /\b\d{1,2}:\d{2}\b/;
const NUMBER = /^[-−+]?\d{1,3}(?:[.,]\d+)?\s*(?:°?\s*[CF])?$/;

/** @param {Line} line */
const textOf = (line) => line.map((cell) => cell.text).join(' ');

/** @param {Line} line */
const hasTime = (line) => DATE.test(textOf(line)) && CLOCK.test(textOf(line));

/** A row of a log has a date, a time of day and a number. @param {Line} line */
const isRow = (line) => hasTime(line) && line.some((cell) => NUMBER.test(cell.text));

/**
 * Whether a line without a number is a row, of a sensor that gave nothing: its date begins where dates of the table do.
 * @param {Line} line
 * @param {NonNullable<ReturnType<typeof columnsOf>>} columns
 */
const isEmptyRow = (line, columns) =>
  hasTime(line) &&
  line.some(({ from, text }) =>
    columns.some((column) => column.dates && DATE.test(text) && Math.abs(from - column.from) < SAME_PLACE),
  );
/** Points by which a text that begins in a column may stand beside where the others begin. */
const SAME_PLACE = 3;

/**
 * Pieces of text in one line, joined where the gap between them is no wider than a blank.
 * @param {{ x: number, width: number, height: number, text: string }[]} pieces
 * @returns {Line}
 */
function cellsOf(pieces) {
  /** @type {Line} */
  const cells = [];
  for (const { x, width, height, text } of pieces.sort((a, b) => a.x - b.x)) {
    const before = cells.at(-1);
    const gap = before === undefined ? Number.POSITIVE_INFINITY : x - before.to;
    if (before !== undefined && gap < 0.6 * height) {
      before.text += gap > 0.1 * height ? ` ${text}` : text;
      before.to = x + width;
    } else cells.push({ from: x, to: x + width, text });
  }
  return cells.map((cell) => ({ ...cell, text: cell.text.replace(/\s+/g, ' ').trim() }));
}

/**
 * The lines of all pages from top to bottom.
 * @param {Uint8Array} bytes
 * @returns {Promise<Line[][]>}
 */
async function pagesOf(bytes) {
  // An optional package, which installs without it lack.
  const library = await import('pdfjs-dist/legacy/build/pdf.mjs').catch(() => undefined);
  if (library === undefined) return [];
  const { getDocument, VerbosityLevel } = library;
  const root = dirname(createRequire(import.meta.url).resolve('pdfjs-dist/package.json'));
  const task = getDocument({
    ...{
      data: bytes,
      isEvalSupported: false,
      enableXfa: false,
      disableFontFace: true,
      useSystemFonts: false,
    },
    ...{ useWorkerFetch: false, verbosity: VerbosityLevel.ERRORS },
    cMapUrl: `${join(root, 'cmaps')}/`,
    standardFontDataUrl: `${join(root, 'standard_fonts')}/`,
  });
  try {
    // One that is locked or damaged is told of as the paper that it is.
    const document = await task.promise.catch(() => undefined);
    if (document === undefined) return [];
    /** @type {Line[][]} */
    const pages = [];
    let count = 0;
    for (let number = 1; number <= document.numPages; number += 1) {
      const page = await document.getPage(number);
      const { items } = await page.getTextContent();
      /** @type {Map<number, { x: number, width: number, height: number, text: string }[]>} */
      const lines = new Map();
      for (const item of items) {
        if (!('str' in item) || item.str.trim() === '') continue;
        const [, , , , x = 0, y = 0] = item.transform;
        // Text of one line stands at one height, give or take a point.
        const at =
          [Math.round(y), Math.round(y) + 1, Math.round(y) - 1].find((key) => lines.has(key)) ??
          Math.round(y);
        const line = lines.get(at) ?? [];
        line.push({ x, width: item.width, height: item.height || 8, text: item.str });
        lines.set(at, line);
      }
      const inOrder = [...lines].sort(([a], [b]) => b - a).map(([, pieces]) => cellsOf(pieces));
      count += inOrder.length;
      if (count > MOST_LINES) throw new Error(`it has more than ${MOST_LINES} lines of text`);
      pages.push(inOrder);
      page.cleanup();
    }
    return pages;
  } finally {
    await task.destroy();
  }
}

/**
 * The places of the columns: where the cells of rows with the usual number of cells stand.
 * @param {Line[]} rows
 */
function columnsOf(rows) {
  /** @type {Map<number, Line[]>} */
  const byCount = new Map();
  for (const row of rows) byCount.set(row.length, [...(byCount.get(row.length) ?? []), row]);
  const usual = [...byCount.values()].reduce((a, b) => (b.length > a.length ? b : a));
  const columns = (usual[0] ?? []).map((_, i) => ({
    from: Math.min(...usual.map((row) => row[i]?.from ?? Number.POSITIVE_INFINITY)),
    to: Math.max(...usual.map((row) => row[i]?.to ?? Number.NEGATIVE_INFINITY)),
    dates: usual.every((row) => DATE.test(row[i]?.text ?? '')),
  }));
  const apart = columns.every((column, i) => i === 0 || column.from > (columns[i - 1]?.to ?? 0));
  return apart && usual.length >= 0.7 * rows.length ? columns : undefined;
}

/**
 * The cells of a line by the columns that they stand in; undefined when two stand in one.
 * @param {Line} line
 * @param {NonNullable<ReturnType<typeof columnsOf>>} columns
 */
function placed(line, columns) {
  const cells = columns.map(() => '');
  for (const cell of line) {
    const middle = (cell.from + cell.to) / 2;
    const distances = columns.map(({ from, to }) => Math.max(from - middle, middle - to, 0));
    const at = distances.indexOf(Math.min(...distances));
    if (cells[at] !== '') return undefined;
    cells[at] = cell.text;
  }
  return cells;
}

/**
 * Lines with a date and a time that stand outside the columns.
 * @param {{ page: number, text: string }[]} left
 */
function lossesOf(left) {
  const [first] = left;
  if (first === undefined) return [];
  const lines = left.length === 1 ? '1 line' : `${left.length} lines`;
  return [
    `${lines} with a date and a time outside the columns of its table not read, the first on page ${first.page}: "${first.text.slice(0, 80)}"`,
  ];
}

answering(async (/** @type {Uint8Array} */ bytes) => {
  const pages = await pagesOf(bytes);
  const rows = pages.flat().filter(isRow);
  if (rows.length < FEWEST_ROWS) return [];
  const columns = columnsOf(rows);
  if (columns === undefined)
    throw new Error(
      'the columns of its table are not clear: its rows have different numbers of cells, or cells that overlap',
    );
  // Tables that stand side by side on a page begin with a date each.
  const starts = columns.flatMap((column, i) => (column.dates ? [i] : []));
  const across = starts.length > 1 && columns.length % starts.length === 0 ? starts.length : 1;
  const width = columns.length / across;
  if (starts.length > 1 && !starts.every((start, i) => start === i * width))
    throw new Error('the columns of its table are not clear: it has several dates in a row');
  /** @type {string[][]} */
  const lines = [];
  /** @type {{ page: number, text: string }[]} */
  const left = [];
  pages.forEach((page, number) => {
    /** @type {string[][]} */
    const placedRows = [];
    const belongs = (/** @type {Line} */ line) => isRow(line) || isEmptyRow(line, columns);
    const first = page.findIndex(belongs);
    page.forEach((line, i) => {
      if (belongs(line)) {
        const cells = placed(line, columns);
        if (cells === undefined)
          throw new Error('the columns of its table are not clear: two values stand in one');
        placedRows.push(cells);
      } else if (i < first && lines.length < 100)
        // Headings stand over their columns; other lines are what the table says of itself.
        lines.push(
          (line.length > 1 ? placed(line, columns)?.slice(0, width) : undefined) ?? line.map((c) => c.text),
        );
      else if (i > first && hasTime(line)) left.push({ page: number + 1, text: textOf(line) });
    });
    for (let part = 0; part < across; part += 1)
      for (const row of placedRows) {
        const cells = row.slice(part * width, (part + 1) * width);
        if (cells.some((cell) => cell !== '')) lines.push(cells);
      }
  });
  return [{ name: 'pages', text: linesOf(lines), losses: lossesOf(left) }];
});

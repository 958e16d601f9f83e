import { DossierError, type Problem } from '../core/model/error.js';
import type { ExaminedFile, LogOptions } from './draft.js';
import {
  asDocument,
  asReadings,
  examineReadings,
  examineRecognised,
  orDocument,
  shockTable,
  type TableInput,
} from './examine-table.js';
import { isReadingsTable } from './readings.js';
import { asSource, readSheets, type SheetText } from './table/sheet.js';
import { headingsOf, parseWrittenTable } from './table/written-table.js';
import { recogniseLog } from './unit-log/examine-log.js';

/** What a file's tables are: the evidence of the first that is read, or what the likeliest lacks. */
type BookReading = { is: 'read'; examined: ExaminedFile } | { is: 'not-read'; lacking: Lack | undefined };

/** What a table lacks; it is close where one thing said would make it one that is read. */
interface Lack {
  problem: Problem;
  close: boolean;
}

/** Characters of a sheet in which its headings are. */
const HEAD = 16 * 1024;

/**
 * The first sheet that is a table of readings or a unit log, by the same rules as a CSV; the others are named. A
 * workbook without such a sheet is kept as a document, with what its likeliest sheet lacks.
 */
export async function examineSpreadsheet(input: TableInput, options: LogOptions): Promise<ExaminedFile> {
  const { path, file } = input;
  return orDocument(input, async () => {
    const all = await readSheets(path, file.name);
    const wanted = options.logMap?.sheet;
    const sheets = all.filter(({ name, text }) =>
      wanted === undefined ? text.trim() !== '' : name === wanted,
    );
    const names = all.map(({ name }) => `"${name}"`).join(', ');
    const reading = await readBook(input, options, sheets, (name) =>
      all.length === 1 ? `sheet "${name}"` : `sheet "${name}" of ${names}`,
    );
    if (reading.is === 'read') return reading.examined;
    const problem: Problem = reading.lacking?.problem ?? {
      code: 'unsupported-file',
      message:
        wanted === undefined ? 'its sheets are empty' : `there is no sheet "${wanted}"; there are: ${names}`,
      where: { file: file.name },
    };
    return asDocument(input, `a spreadsheet with no sheet of a log or of readings (${names})`, [problem]);
  });
}

/** Records in JSON or XML that are a log or readings; others are a text like any other. */
export async function examineRecords(input: TableInput, options: LogOptions): Promise<ExaminedFile> {
  return orDocument(input, async () => {
    const sheets = await readSheets(input.path, input.file.name);
    const reading = await readBook(input, options, sheets, (name) => `records "${name}"`);
    if (reading.is === 'read') return reading.examined;
    const lacking = reading.lacking?.close === true ? reading.lacking.problem : undefined;
    return lacking === undefined
      ? asDocument(input, 'text', [])
      : asDocument(input, 'records that are not known', [lacking]);
  });
}

/**
 * The log that stands as a table in the text of a PDF. Without one, or where its columns are not clear, the PDF is the
 * paper that it is.
 */
export async function examinePdfTable(
  input: TableInput,
  options: LogOptions,
  paper: ExaminedFile,
): Promise<ExaminedFile> {
  try {
    const sheets = await readSheets(input.path, input.file.name);
    const reading = await readBook(input, options, sheets, () => 'the table of its pages');
    if (reading.is === 'read') return reading.examined;
    const lacking = reading.lacking?.close === true ? [reading.lacking.problem] : [];
    return { ...paper, problems: [...paper.problems, ...lacking] };
  } catch (error) {
    if (!(error instanceof DossierError)) throw error;
    const problem = { ...error.toProblem(), where: { ...error.where, file: input.file.name } };
    return { ...paper, problems: [...paper.problems, problem] };
  }
}

async function readBook(
  input: TableInput,
  options: LogOptions,
  sheets: readonly SheetText[],
  named: (sheet: string) => string,
): Promise<BookReading> {
  let lacking: Lack | undefined;
  /** Of tables of shocks before the sheet that is read. */
  const ofShocks: Problem[] = [];
  for (const [place, sheet] of sheets.entries()) {
    const read = async (examined: ExaminedFile): Promise<BookReading> => ({
      is: 'read',
      examined: {
        ...examined,
        takenFor: `${examined.takenFor}; ${named(sheet.name)}`,
        problems: [
          ...examined.problems,
          ...lost(sheet, input.file.name),
          ...ofShocks,
          ...(await passedOver(input, options, sheets.slice(place + 1))),
        ],
      },
    });
    if (isReadingsTable(headingsOf(sheet.text.slice(0, HEAD))))
      return read(examineReadings(input, parseWrittenTable(sheet.text, input.file.name)));
    const log = { ...input, source: asSource(sheet), sheet: sheet.name };
    const recognition = await recogniseLog(log, options);
    if (recognition.is !== 'not-a-log') return read(await examineRecognised(input, log, recognition));
    const shocks = shockTable(input, { text: sheet.text, cut: false }, options);
    if (shocks?.is === 'shocks') return read(asReadings(input, shocks));
    if (shocks?.is === 'lacking') ofShocks.push(shocks.problem);
    else if (lacking === undefined || (recognition.close && !lacking.close)) lacking = recognition;
  }
  const [problem] = ofShocks;
  if (problem !== undefined) return { is: 'not-read', lacking: { problem, close: true } };
  return { is: 'not-read', lacking };
}

/** Sheets behind the one that is read which are looked at for another log. */
const MOST_LOOKED_AT = 20;

/** A file gives one table: further ones in it are told by name. */
async function passedOver(
  input: TableInput,
  options: LogOptions,
  sheets: readonly SheetText[],
): Promise<Problem[]> {
  const others: string[] = [];
  for (const sheet of sheets.slice(0, MOST_LOOKED_AT)) {
    if (await holdsTable(input, options, sheet)) others.push(`"${sheet.name}"`);
  }
  return others.length === 0
    ? []
    : [
        {
          code: 'unsupported-file',
          message: `of its tables the first is read; ${others.join(', ')} ${others.length === 1 ? 'is another and is' : 'are others and are'} not read`,
          where: { file: input.file.name },
          fix: 'save each of them as a file of its own and collect those too',
        },
      ];
}

/** A log, readings, or what a shock recorder marked. */
async function holdsTable(input: TableInput, options: LogOptions, sheet: SheetText): Promise<boolean> {
  if (isReadingsTable(headingsOf(sheet.text.slice(0, HEAD)))) return true;
  const log = await recogniseLog({ ...input, source: asSource(sheet), sheet: sheet.name }, options);
  return log.is !== 'not-a-log' || shockTable(input, { text: sheet.text, cut: false }, options) !== undefined;
}

/** What the text of a sheet leaves out of the file is told, each by itself. */
function lost({ losses = [] }: SheetText, file: string): Problem[] {
  return losses.map((message) => ({
    code: 'unreadable-file',
    message,
    where: { file },
    fix: 'save the table of the log as CSV and collect that too',
  }));
}

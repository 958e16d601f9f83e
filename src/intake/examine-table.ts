import type { Delivery } from '../core/model/delivery.js';
import { DossierError, type Problem } from '../core/model/error.js';
import type { FileRef } from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { Zone } from '../core/model/time.js';
import { CAPTION_COLUMNS } from './captions.js';
import { examineDocument } from './document.js';
import type { ExaminedFile, Hint, LogOptions } from './draft.js';
import { isReadingsTable, readReadings } from './readings.js';
import { readShockTable, type ShockTable } from './shock-table/examine.js';
import { headOf } from './table/bytes.js';
import { decode } from './table/encoding.js';
import { headingsOf, readWrittenTable, type WrittenTable } from './table/written-table.js';
import { countWithNoun, examineLog, type LogInput, recogniseLog } from './unit-log/examine-log.js';
import type { LogRecognition } from './unit-log/recognise.js';

export interface TableInput {
  path: string;
  file: FileRef;
  delivery: Delivery;
  hint: Hint;
}

/** A table is one of readings, a captions.csv, or a unit log; any other is kept as a document and reported. */
export async function examineTable(input: TableInput, options: LogOptions): Promise<ExaminedFile> {
  const { path, file } = input;
  return orDocument(input, async () => {
    const headings = headingsOf(decode(await headOf(path, 16 * 1024)));
    if (isReadingsTable(headings)) return examineReadings(input, await readWrittenTable(path, file.name));
    if (isCaptions(headings)) return asDocument(input, 'captions of other files', []);
    const log = { ...input, source: path };
    const recognition = await recogniseLog(log, options);
    const shocks = recognition.is === 'not-a-log' ? await shocksIn(input, options) : undefined;
    return shocks ?? examineRecognised(input, log, recognition);
  });
}

/** Above this a table is no list of what a recorder marked. */
const MOST_SHOCK_BYTES = 1024 * 1024;

async function shocksIn(input: TableInput, options: LogOptions): Promise<ExaminedFile | undefined> {
  const text = decode(await headOf(input.path, MOST_SHOCK_BYTES));
  const table = shockTable(input, { text, cut: input.file.bytes > MOST_SHOCK_BYTES }, options);
  if (table?.is === 'lacking')
    return asDocument(input, 'a table of shocks', [table.problem], table.zoneUnknown);
  return table === undefined ? undefined : asReadings(input, table);
}

/** What a shock recorder marked, or a list of hard braking; undefined for any other table. */
export function shockTable(
  { file, delivery, hint }: TableInput,
  { text, cut }: { text: string; cut: boolean },
  options: LogOptions,
): ShockTable | undefined {
  return readShockTable({ text, cut, fileName: file.name, delivery, options, place: hint.place });
}

/** A table whose rows are readings. */
export function asReadings(
  { file, hint }: TableInput,
  { readings, rowsLeftOut, problems, takenFor }: Omit<Extract<ShockTable, { is: 'shocks' }>, 'is'>,
): ExaminedFile {
  return {
    received: {
      kind: 'readings',
      file,
      time: { is: 'none', why: 'every row has its own time' },
      flags: [],
      ...hint,
      rows: readings.length,
      rowsLeftOut,
    },
    readings,
    problems,
    takenFor,
  };
}

/** An unreadable table is kept as a document, with the reason. */
export async function orDocument(
  input: TableInput,
  examine: () => Promise<ExaminedFile>,
): Promise<ExaminedFile> {
  try {
    return await examine();
  } catch (error) {
    if (!(error instanceof DossierError)) throw error;
    const problem = { ...error.toProblem(), where: { ...error.where, file: input.file.name } };
    return asDocument(input, 'a table that could not be read', [problem]);
  }
}

function isCaptions(headings: readonly string[]): boolean {
  return headings.includes('file') && CAPTION_COLUMNS.filter((c) => headings.includes(c)).length > 1;
}

export function examineReadings(input: TableInput, table: WrittenTable): ExaminedFile {
  const read = readReadings(table, input.file.name, input.delivery);
  const left = read.rowsLeftOut === 0 ? '' : `, ${read.rowsLeftOut} left out`;
  const takenFor = `readings table: ${countWithNoun(read.readings.length, 'row')}${left}`;
  return asReadings(input, { ...read, takenFor });
}

export async function examineRecognised(
  input: TableInput,
  log: LogInput,
  recognition: LogRecognition,
): Promise<ExaminedFile> {
  switch (recognition.is) {
    case 'not-a-log':
      return asDocument(input, 'a table that is not known', [recognition.problem]);
    case 'zone-needed':
      return {
        ...(await asDocument(input, 'a unit log whose zone is not known', [recognition.problem], true)),
        ...proposed(input.delivery),
      };
    case 'log': {
      const examined = await examineLog(log, recognition);
      if ('received' in examined) return examined;
      return asDocument(input, examined.what, examined.problems);
    }
  }
}

export async function asDocument(
  { path, file, hint }: TableInput,
  what: string,
  problems: Problem[],
  zoneUnknown = false,
): Promise<ExaminedFile> {
  const { received } = await examineDocument({ path, file, is: 'table', hint });
  const detail = "the zone of the log's clock is not known";
  return {
    received: {
      ...received,
      flags: zoneUnknown ? [{ is: 'time-zone-unknown', detail }] : [],
    },
    readings: [],
    problems,
    takenFor: `document: ${what}${problems.length > 0 ? ', kept as it is' : ''}`,
  };
}

/** The clock of a unit is most often set where the trip began: suggested, never assumed. */
function proposed(delivery: Delivery): { proposedZone?: Zone } {
  const first = delivery.stops.find((stop) => stop.does === 'load');
  return omitUndefined({ proposedZone: first?.zone });
}

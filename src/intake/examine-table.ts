import type { Delivery } from '../model/delivery.js';
import { DossierError, type Problem } from '../model/error.js';
import type { EvidenceId, FileRef } from '../model/evidence.js';
import { toInstant, type Zone } from '../model/time.js';
import { CAPTION_COLUMNS } from './captions.js';
import { examineDocument } from './document.js';
import type { Examined, Hint, LogOptions } from './draft.js';
import { onlyZone, plannedAt } from './place.js';
import { isReadingsTable, readReadings } from './readings.js';
import { headOf } from './table/bytes.js';
import { decode } from './table/encoding.js';
import { headingsOf, readWrittenTable } from './table/written-table.js';
import { type ReadLog, readUnitLog } from './unit-log/read.js';
import { recogniseUnitLog } from './unit-log/recognise.js';

export interface TableInput {
  path: string;
  file: FileRef;
  delivery: Delivery;
  hint: Hint;
}

/** Row problems of a log are told one by one up to this many; the evidence counts them all. */
const TOLD_ROWS = 20;

/** A table is one of readings, a captions.csv, or a unit log; any other is kept as a document and said so. */
export async function examineTable(input: TableInput, options: LogOptions): Promise<Examined> {
  const { path, file } = input;
  try {
    const headings = headingsOf(decode(await headOf(path, 16 * 1024)));
    if (isReadingsTable(headings)) return await examineReadings(input);
    if (headings.includes('file') && CAPTION_COLUMNS.filter((c) => headings.includes(c)).length > 1)
      return await asDocument(input, 'captions of other files', []);
    return await examineLog(input, options);
  } catch (error) {
    if (!(error instanceof DossierError)) throw error;
    const problem = { ...error.toProblem(), where: { ...error.where, file: file.name } };
    return asDocument(input, 'a table that could not be read', [problem]);
  }
}

async function examineReadings({ path, file, delivery, hint }: TableInput): Promise<Examined> {
  const table = await readWrittenTable(path, file.name);
  const { readings, problems, rowsLeftOut } = readReadings(table, file.name, delivery);
  const left = rowsLeftOut === 0 ? '' : `, ${rowsLeftOut} left out`;
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
    takenFor: `readings table: ${counted(readings.length, 'row')}${left}`,
  };
}

async function examineLog(input: TableInput, options: LogOptions): Promise<Examined> {
  const { path, file, delivery, hint } = input;
  const only = onlyZone(delivery);
  const recognition = await recogniseUnitLog(path, {
    ...options,
    fileName: file.name,
    ...(only === undefined ? {} : { onlyZone: only }),
    near: delivery.stops.flatMap((stop) => plannedAt(stop) ?? []),
  });
  switch (recognition.is) {
    case 'not-a-log':
      return asDocument(input, 'a table that is not known', [recognition.problem]);
    case 'zone-needed':
      return {
        ...(await asDocument(input, 'a unit log whose zone is not known', [recognition.problem], true)),
        ...proposed(delivery),
      };
    case 'log': {
      const { mapping, unused } = recognition;
      const log = await readUnitLog(path, mapping, { evidence: 'e1' as EvidenceId, addedSeconds: 0 });
      const [from, to] = [log.times[0], log.times.at(-1)];
      if (from === undefined || to === undefined)
        return asDocument(input, 'a unit log without a readable row', rowProblems(log, file.name));
      const columns = mapping.channels.map((c) => `${c.channel} in ${c.unit}`).join(', ');
      const faults = log.faultCount === 0 ? '' : `; ${counted(log.faultCount, 'sensor fault')} left out`;
      const notRead = unused.length === 0 ? '' : `; not read: ${unused.join(', ')}`;
      return {
        received: {
          kind: 'unit-log',
          file,
          time: { is: 'none', why: 'every row has its own time' },
          flags: [],
          ...hint,
          mapping,
          rows: log.times.length,
          rowsLeftOut: log.rowsLeftOut,
          from: toInstant(from),
          to: toInstant(to),
        },
        readings: [],
        problems: rowProblems(log, file.name),
        takenFor: `unit log: ${counted(log.times.length, 'row')}, clock ${zoneInWords(mapping.time.zone)}, ${columns}${faults}${notRead}`,
      };
    }
  }
}

async function asDocument(
  { path, file, hint }: TableInput,
  what: string,
  problems: Problem[],
  zoneUnknown = false,
): Promise<Examined> {
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

/** The clock of a unit is most often set where the trip began: offered, never assumed. */
function proposed(delivery: Delivery): { proposedZone?: Zone } {
  const first = delivery.stops.find((stop) => stop.does === 'load');
  return first === undefined ? {} : { proposedZone: first.zone };
}

function rowProblems(log: ReadLog, file: string): Problem[] {
  // A cell that the unit itself marked as a fault is honest data: it is counted, not complained about.
  const wrong = log.problems.filter((p) => p.is !== 'sensor-fault');
  const told: Problem[] = wrong.slice(0, TOLD_ROWS).map((p) => ({
    code: 'bad-value',
    message: `${p.is}: ${p.detail}`,
    where: { file, row: p.row },
  }));
  const more = log.problemCount - log.faultCount - told.length;
  if (more > 0)
    told.push({
      code: 'bad-value',
      message: `and ${counted(more, 'more problem')} of this kind`,
      where: { file },
    });
  return told;
}

function zoneInWords(zone: string): string {
  return zone === 'offset' ? 'with its own offset in each row' : `in ${zone}`;
}

function counted(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? '' : 's'}`;
}

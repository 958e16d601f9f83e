import type { Delivery } from '../../core/model/delivery.js';
import type { Problem } from '../../core/model/error.js';
import type { EvidenceId, FileRef, LogMapping } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { toInstant, zone as zoneSchema } from '../../core/model/time.js';
import type { ExaminedFile, Hint, LogOptions } from '../draft.js';
import { onlyZone, plannedAt } from '../place.js';
import type { ByteSource } from '../table/bytes.js';
import { logFlags } from './log-flags.js';
import { previewOf } from './preview.js';
import { type ReadLog, readUnitLog } from './read.js';
import { type LogRecognition, recogniseUnitLog } from './recognise.js';
import { rowProblems } from './row-problems.js';

export interface LogInput {
  source: ByteSource;
  /** Name of the sheet that the source stands for, where the file is a spreadsheet. */
  sheet?: string;
  file: FileRef;
  delivery: Delivery;
  hint: Hint;
}

/**
 * More than ten times the rows of sixty days by the minute. Held against what is taken in: a record may hold a longer
 * log from when more were allowed.
 */
const MOST_ROWS = 1_000_000;

/** How the log is read, by what a person said and what the delivery gives. Throws as `recogniseUnitLog`. */
export function recogniseLog(
  { source, sheet, file, delivery }: LogInput,
  options: LogOptions,
): Promise<LogRecognition> {
  const only = onlyZone(delivery);
  return recogniseUnitLog(source, {
    ...options,
    fileName: file.name,
    ...omitUndefined({ sheet, onlyZone: only }),
    near: delivery.stops.flatMap((stop) => plannedAt(stop) ?? []),
  });
}

/** Reads a log that is recognised; problems alone when not one row of it can be read. Throws as `readUnitLog`. */
export async function examineLog(
  input: LogInput,
  { mapping, unused }: { mapping: LogMapping; unused: string[] },
): Promise<ExaminedFile | { problems: Problem[] }> {
  const { source, sheet, file, delivery, hint } = input;
  const log = await readUnitLog(source, mapping, {
    evidence: 'e1' as EvidenceId,
    addedSeconds: 0,
    mostRows: MOST_ROWS,
  });
  const [from, to] = [log.times.at(0), log.times.at(-1)];
  const problems = rowProblems(log, {
    file: file.name,
    ...omitUndefined({ field: sheet === undefined ? undefined : `sheet ${sheet}` }),
  });
  if (from === undefined || to === undefined) return { problems };
  const columns = mapping.channels.map((c) => `${c.channel} in ${c.unit}`).join(', ');
  const notRead = unused.length === 0 ? '' : `; not read: ${unused.join(', ')}`;
  return {
    received: {
      kind: 'unit-log',
      file,
      time: { is: 'none', why: 'every row has its own time' },
      flags: logFlags(log, delivery),
      ...hint,
      mapping,
      rows: log.times.length,
      rowsLeftOut: log.rowsLeftOut,
      from: toInstant(from),
      to: toInstant(to),
    },
    readings: [],
    problems,
    takenFor: `unit log: ${countWithNoun(log.times.length, 'row')}, clock ${zoneInWords(mapping.time.zone)}, ${columns}${settled(log)}${notRead}`,
    log: previewOf(log, mapping, unused, delivery.stops[0]?.zone ?? zoneSchema.parse('UTC')),
  };
}

/** What was settled without loss, in numbers. */
function settled({ counts }: ReadLog): string {
  const faults = counts['sensor-fault'] ?? 0;
  const repeated = counts.repeated ?? 0;
  return [
    faults === 0 ? '' : `; ${countWithNoun(faults, 'sensor fault')} left out`,
    repeated === 0 ? '' : `; ${countWithNoun(repeated, 'row')} of a time that another row has too, joined`,
  ].join('');
}

function zoneInWords(zone: string): string {
  return zone === 'offset' ? 'with its own offset in each row' : `in ${zone}`;
}

export function countWithNoun(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? '' : 's'}`;
}

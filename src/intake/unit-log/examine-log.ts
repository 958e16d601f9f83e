import type { Delivery } from '../../core/model/delivery.js';
import { plannedAt } from '../../core/model/delivery-flags.js';
import type { Problem, Where } from '../../core/model/error.js';
import type { EvidenceId, FileRef } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { toInstant, zone as zoneSchema } from '../../core/model/time.js';
import { zoneRules } from '../../core/model/zone-rules.js';
import type { ExaminedFile, Hint, LogOptions } from '../draft.js';
import { onlyZone } from '../place.js';
import type { ByteSource } from '../table/bytes.js';
import { logFlags } from './log-flags.js';
import { previewOf } from './preview.js';
import {
  cellsCut,
  compartmentColumnMissing,
  halfDayClock,
  severalAtATime,
  severalInstruments,
} from './problems.js';
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
    ...omitUndefined({ sheet, onlyZone: only, compartments: delivery.equipment.trailer.compartments }),
    zones: [...new Set(delivery.stops.map((stop) => stop.zone))],
    near: delivery.stops.flatMap((stop) => plannedAt(stop) ?? []),
  });
}

/** Reads a log that is recognised; problems alone when no row of it can be read, or its rows are not of one log. Throws as `readUnitLog`. */
export async function examineLog(
  input: LogInput,
  { mapping, unused, names, missing }: Omit<Extract<LogRecognition, { is: 'log' }>, 'is'>,
): Promise<ExaminedFile | { what: string; problems: Problem[] }> {
  const { source, sheet, file, delivery, hint } = input;
  const log = await readUnitLog(source, mapping, {
    evidence: 'e1' as EvidenceId,
    addedSeconds: 0,
    mostRows: MOST_ROWS,
    names,
  });
  const mixed = mixture(log, { file: file.name });
  if (mixed !== undefined) return { what: 'a table that is not one log', problems: [mixed] };
  const [from, to] = [log.times.at(0), log.times.at(-1)];
  const where = {
    file: file.name,
    ...omitUndefined({ field: sheet === undefined ? undefined : `sheet ${sheet}` }),
  };
  const problems = [
    ...missing.map((one) => compartmentColumnMissing(where, one, mapping, unused)),
    ...rowProblems(log, where),
  ];
  if (from === undefined || to === undefined) return { what: 'a unit log without a readable row', problems };
  const columns = mapping.channels
    .map((c) => `${c.channel}${c.compartment === undefined ? '' : ` of ${c.compartment}`} in ${c.unit}`)
    .join(', ');
  const basis =
    mapping.unitBasis === undefined
      ? ''
      : ' as is usual in the countries of the stops: the log does not say it';
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
      ...omitUndefined({ stated: log.stated }),
    },
    readings: [],
    problems,
    takenFor: `unit log: ${countWithNoun(log.times.length, 'row')}, clock ${zoneInWords(mapping.time.zone)}, ${columns}${basis}${settled(log)}${notRead}`,
    log: previewOf(log, mapping, unused, delivery.stops[0]?.zone ?? zoneSchema.parse('UTC')),
  };
}

/** What was settled without loss, in numbers. */
function settled({ counts, moved }: ReadLog): string {
  const faults = counts['sensor-fault'] ?? 0;
  const repeated = counts.repeated ?? 0;
  return [
    faults === 0 ? '' : `; ${countWithNoun(faults, 'sensor fault')} left out`,
    moved === undefined
      ? ''
      : `; read as one instrument that moved, by column "${moved.heading}": ${[...moved.names].map(([name, rows]) => `${name} (${countWithNoun(rows, 'row')})`).join(', ')}`,
    repeated === 0 ? '' : `; ${countWithNoun(repeated, 'row')} of a time that another row has too, joined`,
  ].join('');
}

/** Why the rows are no log of one instrument and one clock, where they show it. */
function mixture(log: ReadLog, where: Where): Problem | undefined {
  if (log.several !== undefined) return severalInstruments(where, log.several);
  const { duplicate = 0, ragged = 0, 'time-steps-back': turns = 0 } = log.counts;
  const back = turns + (log.clockSteps?.length ?? 0);
  if (ragged > log.times.length) return cellsCut(where, ragged);
  const rows = log.times.length + duplicate;
  if (back > 0 && isHalfDayClock(log)) return halfDayClock(where);
  return duplicate > MOST_DUPLICATES && duplicate > rows * SHARE_OF_DUPLICATES
    ? severalAtATime(where, duplicate)
    : undefined;
}

/** An hour that a clock was put back costs fewer rows than this, and less of a log of days. */
const MOST_DUPLICATES = 5;
const SHARE_OF_DUPLICATES = 0.1;

/** Hours from 1 to 12, with noon or midnight and the hour behind it, and no other: a clock without AM and PM. */
function isHalfDayClock({ times, zone }: ReadLog): boolean {
  if (zone === 'offset') return false;
  const rules = zoneRules(zone);
  const step = Math.max(1, Math.floor(times.length / 500));
  const hours = new Set<number>();
  for (let i = 0; i < times.length; i += step) {
    const at = times[i] ?? 0;
    const hour = new Date(at + rules.offset(at) * 60_000).getUTCHours();
    if (hour === 0 || hour > 12) return false;
    hours.add(hour);
  }
  return hours.has(12) && hours.has(1);
}

function zoneInWords(zone: string): string {
  return zone === 'offset' ? 'with its own offset in each row' : `in ${zone}`;
}

export function countWithNoun(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? '' : 's'}`;
}

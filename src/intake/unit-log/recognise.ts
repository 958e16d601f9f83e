import type { Problem } from '../../core/model/error.js';
import type { LogMapping } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { TemperatureUnit } from '../../core/model/temperature.js';
import { type Zone, zone as zoneSchema } from '../../core/model/time.js';
import type { LogOptions } from '../draft.js';
import { type ByteSource, headOf } from '../table/bytes.js';
import { decode, detectEncoding } from '../table/encoding.js';
import { eachRow } from '../table/rows.js';
import { DateOrderEvidence, type OrderVerdict } from '../time/date-order.js';
import { type DateOrder, readWall } from '../time/wall-time.js';
import { unwrapped } from './cells/cell-value.js';
import { guessDecimal, readWithUnit } from './cells/numbers.js';
import { type FoundTable, findTable } from './headings/find-table.js';
import { statesUtc, unitIn } from './headings/meaning.js';
import * as say from './problems.js';

/** A log's table and how it is read, or why it cannot be. */
export type LogRecognition =
  | { is: 'log'; mapping: LogMapping; unused: string[] }
  /** Everything is known but the zone of the log's clock. */
  | { is: 'zone-needed'; problem: Problem }
  /** `close` when its columns are those of a log and something else is missing. */
  | { is: 'not-a-log'; problem: Problem; close: boolean };

export interface LogContext extends LogOptions {
  /** Name for problems. */
  fileName: string;
  /** The zone of all stops, when they have only one: used where nothing else is said. */
  onlyZone?: Zone;
  /** Planned moments, milliseconds UTC; they decide between July 8 and 7 August where nothing else does. */
  near?: readonly number[];
  /** Name of the sheet that the text stands for, where the file is a spreadsheet. */
  sheet?: string;
}

const HEAD = 256 * 1024;

/**
 * Finds out how a log's table is read: encoding, delimiter, header, columns by trade words, units, decimal
 * mark, order of dates (over the whole column where the head leaves it open), zone. What cannot be found out
 * comes back as a problem that shows the columns and says how to give the missing piece. Throws DossierError
 * only for what stops reading (an endless line, a file that cannot be opened).
 */
export async function recogniseUnitLog(source: ByteSource, context: LogContext): Promise<LogRecognition> {
  const head = await headOf(source, HEAD);
  const { logMap: map } = context;
  const encoding = context.sheet === undefined ? (map?.encoding ?? detectEncoding(head)) : 'utf-8';
  const text = decode(head, encoding);
  const where = { file: context.fileName };
  const notALog = (problem: Problem, close = true): LogRecognition => ({ is: 'not-a-log', problem, close });
  if (text.trim() === '') return notALog(say.noRows(where), false);

  const search = findTable(text, {
    columns: { ...context.logColumns, ...map?.columns },
    // A sheet has cells, not delimiters.
    delimiter: context.sheet === undefined ? map?.delimiter : undefined,
    headerRow: map?.header,
  });
  if (search.is === 'not-found') return notALog(say.columnsNotFound(where, search), false);
  const { table } = search;
  if (table.sample.every((row) => row.every((cell) => cell.trim() === '')))
    return notALog(say.noRows({ ...where, row: table.headerRow }));

  const decimal =
    map?.decimal ??
    guessDecimal(table.columns.channels.flatMap((c) => table.sample.map((row) => row[c.column] ?? '')));
  const units = channelUnits(table, decimal, context);
  const unknown = table.columns.channels.filter((c) => units.get(c.column) === undefined);
  if (unknown.length > 0)
    return notALog(
      say.unitUnknown(
        { ...where, row: table.headerRow },
        unknown.map((c) => table.headings[c.column] ?? ''),
      ),
    );

  const order = await dateOrder(source, { encoding, delimiter: table.delimiter }, table, context);
  if (order.is === 'ambiguous') return notALog(say.datesAmbiguous(where, order.example));
  if (order.is === 'no-dates') return notALog(say.noDates(where, table));

  const zone = logZone(table, order.order, context);
  if (zone === undefined) return { is: 'zone-needed', problem: say.zoneUnknown(where) };
  return {
    is: 'log',
    unused: table.columns.unused,
    mapping: {
      encoding,
      delimiter: table.delimiter,
      decimal,
      headerRow: table.headerRow,
      ...omitUndefined({ sheet: context.sheet }),
      time: { columns: table.columns.time, order: order.order, zone },
      channels: table.columns.channels.map((c) => ({
        ...c,
        unit: units.get(c.column) ?? '°C',
        heading: table.headings[c.column] ?? '',
      })),
      states: table.columns.states.map((s) => ({ ...s, heading: table.headings[s.column] ?? '' })),
    },
  };
}

/**
 * Unit of each temperature column: what a map says; its heading, the line of units, its cells; the unit that a
 * person said for those that do not show one; then the one unit of the others.
 */
function channelUnits(
  table: FoundTable,
  decimal: LogMapping['decimal'],
  { logMap, logUnit: said }: LogContext,
): Map<number, TemperatureUnit> {
  const units = new Map<number, TemperatureUnit>();
  const mapped = logMap?.units;
  for (const { column, channel } of table.columns.channels) {
    const unit =
      (typeof mapped === 'string' ? mapped : mapped?.[channel]) ??
      unitIn(table.headings[column] ?? '') ??
      unitIn(table.unitRow[column] ?? '') ??
      table.sample
        .map((row) => readWithUnit(row[column] ?? '', decimal)?.unit)
        .find((u) => u !== undefined) ??
      said;
    if (unit !== undefined) units.set(column, unit);
  }
  const [only, other] = [...new Set(units.values())];
  if (only !== undefined && other === undefined)
    for (const { column } of table.columns.channels) if (!units.has(column)) units.set(column, only);
  return units;
}

async function dateOrder(
  source: ByteSource,
  form: Pick<LogMapping, 'encoding' | 'delimiter'>,
  table: FoundTable,
  context: LogContext,
): Promise<OrderVerdict> {
  const [column = 0] = table.columns.time;
  const { logMap } = context;
  if (logMap?.dates !== undefined) return { is: 'order', order: logMap.dates };
  const evidence = new DateOrderEvidence();
  for (const row of table.sample) evidence.add(unwrapped(row[column] ?? ''));
  if (!evidence.settled && context.logDates !== undefined) return { is: 'order', order: context.logDates };
  if (evidence.settled) return evidence.verdict();
  const whole = new DateOrderEvidence();
  await eachRow(source, form, (cells, line) => {
    if (line > table.headerRow) whole.add(unwrapped(cells[column] ?? ''));
    return !whole.settled;
  });
  return whole.verdict(context.near);
}

/**
 * Every row's own offset; the zone that a person said; the zone that the lines above the header state; UTC
 * where the heading says so; the only zone there is.
 */
function logZone(table: FoundTable, order: DateOrder, context: LogContext): Zone | 'offset' | undefined {
  const stated = table.sample.map((row) => {
    const text = table.columns.time.map((c) => row[c] ?? '').join(' ');
    return readWall(text, order);
  });
  const read = stated.filter((wall) => wall !== undefined);
  const { zone: mapped } = context.logMap ?? {};
  if (mapped === 'offset') return mapped;
  if (read.length > 0 && read.every((wall) => wall.offset !== undefined)) return 'offset';
  const said = context.logZone ?? mapped ?? zoneAbove(table.preamble);
  if (said !== undefined) return said;
  if (table.columns.time.some((c) => statesUtc(table.headings[c] ?? ''))) return zoneSchema.parse('UTC');
  return context.onlyZone;
}

/** A zone of the IANA list beside a word such as "Clock zone" or "Time zone". */
function zoneAbove(preamble: readonly (readonly string[])[]): Zone | undefined {
  for (const cells of preamble) {
    const line = cells.join(' ');
    if (!/zone|\btz\b|clock/i.test(line)) continue;
    for (const word of line.split(/[\s,;:=()]+/)) {
      const zone = /^(?:UTC|GMT|[A-Za-z_]+\/[A-Za-z_/+-]+)$/.test(word)
        ? zoneSchema.safeParse(word)
        : undefined;
      if (zone?.success === true) return zone.data;
    }
  }
  return undefined;
}

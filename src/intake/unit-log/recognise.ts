import type { Problem } from '../../model/error.js';
import type { LogMapping } from '../../model/evidence.js';
import type { TemperatureUnit } from '../../model/temperature.js';
import { type Zone, zone as zoneSchema } from '../../model/time.js';
import { DateOrderEvidence, type OrderVerdict } from '../clock/date-order.js';
import { type DateOrder, readWall } from '../clock/wall-time.js';
import type { LogOptions } from '../draft.js';
import { type ByteSource, headOf } from '../table/bytes.js';
import { decode, detectEncoding } from '../table/encoding.js';
import { eachRow } from '../table/rows.js';
import { type FoundTable, findTable } from './find-table.js';
import { saysUtc, unitIn } from './headings.js';
import { guessDecimal, readWithUnit } from './numbers.js';
import * as say from './problems.js';

/** A log's table and how it is read, or why it cannot be. */
export type LogRecognition =
  | { is: 'log'; mapping: LogMapping; unused: string[] }
  /** Everything is known but the zone of the log's clock. */
  | { is: 'zone-needed'; problem: Problem }
  | { is: 'not-a-log'; problem: Problem };

export interface LogContext extends LogOptions {
  /** Name for problems. */
  fileName: string;
  /** The zone of all stops, when they have only one: used where nothing else is said. */
  onlyZone?: Zone;
  /** Planned moments, milliseconds UTC; they decide between July 8 and 7 August where nothing else does. */
  near?: readonly number[];
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
  const encoding = detectEncoding(head);
  const text = decode(head, encoding);
  const where = { file: context.fileName };
  const notALog = (problem: Problem): LogRecognition => ({ is: 'not-a-log', problem });
  if (text.trim() === '') return notALog(say.noRows(where));

  const search = findTable(text, context.logColumns);
  if (search.is === 'not-found') return notALog(say.columnsNotFound(where, search));
  const { table } = search;
  if (table.sample.every((row) => row.every((cell) => cell.trim() === '')))
    return notALog(say.noRows({ ...where, row: table.headerRow }));

  const decimal = guessDecimal(
    table.columns.channels.flatMap((c) => table.sample.map((row) => row[c.column] ?? '')),
  );
  const units = channelUnits(table, decimal, context.logUnit);
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
  if (order.is === 'no-dates') return notALog(say.noDates(where, table, search.table.headings));

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

/** Unit of each temperature column: its heading, the line of units, its cells; then what the person said; then the one unit of the others. */
function channelUnits(
  table: FoundTable,
  decimal: LogMapping['decimal'],
  said: TemperatureUnit | undefined,
): Map<number, TemperatureUnit> {
  const units = new Map<number, TemperatureUnit>();
  for (const { column } of table.columns.channels) {
    const unit =
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
  const evidence = new DateOrderEvidence();
  for (const row of table.sample) evidence.add(row[column] ?? '');
  if (!evidence.settled && context.logDates !== undefined) return { is: 'order', order: context.logDates };
  if (evidence.settled) return evidence.verdict();
  const whole = new DateOrderEvidence();
  await eachRow(source, form, (cells, line) => {
    if (line > table.headerRow) whole.add(cells[column] ?? '');
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
  if (read.length > 0 && read.every((wall) => wall.offset !== undefined)) return 'offset';
  const said = context.logZone ?? zoneAbove(table.preamble);
  if (said !== undefined) return said;
  if (table.columns.time.some((c) => saysUtc(table.headings[c] ?? ''))) return zoneSchema.parse('UTC');
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

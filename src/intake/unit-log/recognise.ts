import type { Compartment } from '../../core/model/compartment.js';
import type { Problem } from '../../core/model/error.js';
import type { LogMapping } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { type ByteSource, headOf } from '../table/bytes.js';
import { decode, judgeEncoding } from '../table/encoding.js';
import type { OrderVerdict } from '../time/date-order.js';
import { unwrapped } from './cells/cell-value.js';
import { guessDecimal, readNumber } from './cells/numbers.js';
import { compartmentColumns, type MissingColumn } from './headings/compartment-columns.js';
import { type FoundTable, findTable, type TableChoice, type TableSearch } from './headings/find-table.js';
import type { LogContext } from './log-context.js';
import * as say from './problems.js';
import { type Counted, epochOf } from './rows/epoch.js';
import { UTC, weighZone, type ZoneVerdict } from './weigh/clock-zone.js';
import { wallSpan, weighDateOrder } from './weigh/date-order.js';
import { chosenRows, type NameColumn, nameColumns, onlyTemperatures } from './weigh/instruments.js';
import { weighUnits } from './weigh/units.js';

/** A log's table and how it is read, or why it cannot be. */
export type LogRecognition =
  | { is: 'log'; mapping: LogMapping; unused: string[]; names: NameColumn[]; missing: MissingColumn[] }
  /** Everything is known but the zone of the log's clock. */
  | { is: 'zone-needed'; problem: Problem }
  /** `close` when its columns are those of a log and something else is missing. */
  | { is: 'not-a-log'; problem: Problem; close: boolean };

const HEAD = 256 * 1024;

/**
 * Finds out how a log's table is read: encoding, delimiter, header, columns by trade words and by what stands in them,
 * units, decimal mark, order of dates (over the whole column where the head leaves it open), zone. What cannot be found
 * out, and what can be read two ways, comes back as a problem that shows the columns or the first rows both ways and
 * says how to give the missing piece. Throws DossierError only for what stops reading (an endless line, a file that
 * cannot be opened).
 */
export async function recogniseUnitLog(source: ByteSource, context: LogContext): Promise<LogRecognition> {
  const { logMap: map } = context;
  const encoding =
    context.sheet === undefined ? (map?.encoding ?? (await judgeEncoding(source, HEAD))) : 'utf-8';
  const text = decode(await headOf(source, HEAD), encoding);
  const where = { file: context.fileName };
  const notALog = (problem: Problem, close = true): LogRecognition => ({ is: 'not-a-log', problem, close });
  if (text.trim() === '') return notALog(say.noRows(where), false);

  const { compartments = [] } = context;
  const search = searchTable(text, compartments, {
    columns: { ...context.logColumns, ...map?.columns },
    // A sheet has cells, not delimiters.
    delimiter: context.sheet === undefined ? map?.delimiter : undefined,
    headerRow: map?.header,
  });
  if (search.is === 'not-found') return notALog(say.columnsNotFound(where, search), false);
  const only =
    map?.only === undefined ? onlyTemperatures(search.table) : chosenRows(map.only, search.table.headings);
  if (map?.only !== undefined && only === undefined)
    return notALog(say.columnOfRowsUnknown(where, map.only, search.table));
  const chosen = only === undefined ? search.table : withRows(search.table, only);
  const { columns, missing } = compartmentColumns(chosen, compartments);
  const table = { ...chosen, columns };
  if (table.sample.every((row) => row.every((cell) => cell.trim() === '')))
    return notALog(say.noRows({ ...where, row: table.headerRow }));

  const decimal =
    map?.decimal ??
    guessDecimal(table.columns.channels.flatMap((c) => table.sample.map((row) => row[c.column] ?? '')));
  const { units, unitColumn } = weighUnits(table, decimal, context);
  const unknown = table.columns.channels.filter((c) => units.get(c.column) === undefined);
  if (unknown.length > 0)
    return notALog(
      say.unitUnknown(
        { ...where, row: table.headerRow },
        table,
        unknown.map((c) => c.column),
      ),
    );

  const form = { encoding, delimiter: table.delimiter };
  const count = countOf(table);
  const order: OrderVerdict =
    count === undefined ? await weighDateOrder(source, form, table, context) : { is: 'order', order: 'iso' };
  if (order.is === 'ambiguous') return notALog(say.datesAmbiguous(where, table, order));
  if (order.is === 'no-dates') return notALog(say.noDates(where, table));

  const zone: ZoneVerdict =
    count === undefined
      ? await weighZone(table, order.order, context, where, () => wallSpan(source, form, table, order.order))
      : { is: 'zone', zone: UTC };
  if (zone.is === 'doubt') return { is: 'zone-needed', problem: zone.problem };
  if (zone.is === 'unknown') return { is: 'zone-needed', problem: say.zoneUnknown(where) };
  return {
    is: 'log',
    missing,
    unused: table.columns.unused,
    names:
      only === undefined
        ? nameColumns(table)
        : nameColumns(table).filter((n) => !only.some((o) => o.column === n.column)),
    mapping: {
      encoding,
      delimiter: table.delimiter,
      decimal,
      headerRow: table.headerRow,
      ...omitUndefined({ sheet: context.sheet, only, unitColumn }),
      time: {
        columns: table.columns.time,
        order: order.order,
        zone: zone.zone,
        ...omitUndefined({ count }),
      },
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
 * The table; where no heading says what its columns are, those that delivery.yaml names for a compartment find it.
 */
function searchTable(text: string, compartments: readonly Compartment[], choice: TableChoice): TableSearch {
  const plain = findTable(text, choice);
  if (plain.is === 'found') return plain;
  for (const { columns } of compartments) {
    if (columns === undefined) continue;
    const named = findTable(text, { ...choice, columns: { ...columns, ...choice.columns } });
    if (named.is === 'found') return named;
  }
  return plain;
}

/** The table with those rows of its sample that are read. */
function withRows(table: FoundTable, only: NonNullable<LogMapping['only']>): FoundTable {
  const sample = table.sample.filter((row) =>
    only.every(({ column, is }) => (row[column] ?? '').trim() === is),
  );
  return { ...table, sample };
}

/** In what the times are counted, where all of them are counts since 1970; undefined for dates. */
function countOf({ sample, columns }: FoundTable): Counted | undefined {
  const [column = 0, clock] = columns.time;
  if (clock !== undefined) return undefined;
  const cells = sample.map((row) => unwrapped((row[column] ?? '').trim())).filter((cell) => cell !== '');
  const counts = cells.map((cell) => epochOf(readNumber(cell, '.')));
  const [first] = counts;
  return first !== undefined && counts.every((count) => count === first) ? first : undefined;
}

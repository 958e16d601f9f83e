import type { Compartment } from '../../core/model/compartment.js';
import type { Problem } from '../../core/model/error.js';
import type { LogMapping } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { type ByteSource, headOf } from '../table/bytes.js';
import { decode, judgeEncoding } from '../table/encoding.js';
import { eachRow } from '../table/rows.js';
import type { OrderVerdict } from '../time/date-order.js';
import { unwrapped } from './cells/cell-value.js';
import { guessDecimal, readNumber } from './cells/numbers.js';
import { compartmentColumns, type MissingColumn } from './headings/compartment-columns.js';
import { type FoundTable, findTable, type TableChoice, type TableSearch } from './headings/find-table.js';
import type { LogContext } from './log-context.js';
import * as say from './problems.js';
import { type Counted, epochOf } from './rows/epoch.js';
import { TimeShape } from './rows/time-shape.js';
import { UTC, weighZone, type ZoneVerdict } from './weigh/clock-zone.js';
import { type EveryRow, wallSpan, weighDateOrder } from './weigh/date-order.js';
import { chosenRows, type NameColumn, nameColumns, onlyTemperatures } from './weigh/instruments.js';
import { RowLetters } from './weigh/row-letters.js';
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
  const table = shaped({ ...chosen, columns });
  if (table.sample.every((row) => row.every((cell) => cell.trim() === '')))
    return notALog(say.noRows({ ...where, row: table.headerRow }));
  const form = { encoding, delimiter: table.delimiter };

  const decimal =
    map?.decimal ??
    guessDecimal(table.columns.channels.flatMap((c) => table.sample.map((row) => row[c.column] ?? '')));
  const count = countOf(table);
  const everyRow = rowsOf(source, form, table, 'dropped');
  const order: OrderVerdict =
    count === undefined ? await weighDateOrder(everyRow, table, context) : { is: 'order', order: 'iso' };
  if (order.is === 'no-dates') return notALog(say.noDates(where, table));

  const { units, unitColumn, unitBasis } = weighUnits(table, decimal, context);
  const unknown = table.columns.channels.filter((c) => units.get(c.column) === undefined);
  if (unknown.length > 0)
    return notALog(
      say.unitUnknown(
        { ...where, row: table.headerRow },
        table,
        unknown.map((c) => c.column),
      ),
    );
  if (order.is === 'ambiguous') return notALog(say.datesAmbiguous(where, table, order));

  const letters = await rowLetters(source, form, table);
  const zone: ZoneVerdict =
    count === undefined
      ? await weighZone(table, order.order, context, where, {
          span: () => wallSpan(everyRow, table, order.order),
          letters,
        })
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
      ...omitUndefined({ sheet: context.sheet, only, unitColumn, unitBasis }),
      time: {
        columns: columns.parts?.columns ?? columns.time,
        order: order.order,
        zone: zone.zone,
        ...omitUndefined({
          count,
          parts: columns.parts?.parts,
          dated: columns.dated,
          letters: zone.letters,
        }),
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

const timeForm = ({ columns: { time, parts, dated } }: FoundTable) => ({
  columns: parts?.columns ?? time,
  ...omitUndefined({ parts: parts?.parts, dated }),
});

/** The table whose rows have their times whole, without letters of a zone. */
function shaped(table: FoundTable): FoundTable {
  const shape = new TimeShape({ ...timeForm(table), letters: 'dropped' });
  for (const line of table.preamble) shape.above(line);
  return {
    ...table,
    sample: table.sample.flatMap((row) => [shape.row(row) ?? []].filter((r) => r.length > 0)),
  };
}

/** The rows of a whole table in the same form. */
function rowsOf(
  source: ByteSource,
  form: Pick<LogMapping, 'encoding' | 'delimiter'>,
  table: FoundTable,
  letters?: 'dropped',
): EveryRow {
  return async (onRow) => {
    const shape = new TimeShape({ ...timeForm(table), letters });
    await eachRow(source, form, (cells, line) => {
      if (line <= table.headerRow) {
        shape.above(cells);
        return true;
      }
      const row = shape.row(cells);
      return row === undefined ? true : onRow(row);
    });
  };
}

/** The letters of a zone in the rows, looked for in the whole table where its first rows have some. */
async function rowLetters(
  source: ByteSource,
  form: Pick<LogMapping, 'encoding' | 'delimiter'>,
  table: FoundTable,
): Promise<RowLetters> {
  const found = new RowLetters();
  const column = table.columns.time.at(-1) ?? 0;
  let rows = 0;
  await rowsOf(
    source,
    form,
    table,
  )((cells) => {
    found.add(cells[column] ?? '');
    rows += 1;
    return rows < LETTERS_WITHIN || found.letters.length > 0;
  });
  return found;
}

/** Rows without letters after which none are looked for. */
const LETTERS_WITHIN = 50;

/** In what the times are counted, where all of them are counts since 1970; undefined for dates. */
function countOf({ sample, columns }: FoundTable): Counted | undefined {
  const [column = 0, clock] = columns.time;
  if (clock !== undefined) return undefined;
  const cells = sample.map((row) => unwrapped((row[column] ?? '').trim())).filter((cell) => cell !== '');
  const counts = cells.map((cell) => epochOf(readNumber(cell, '.')));
  const [first] = counts;
  return first !== undefined && counts.every((count) => count === first) ? first : undefined;
}

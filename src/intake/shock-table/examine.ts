import {
  type Acceleration,
  type AccelerationUnit,
  parseAcceleration,
} from '../../core/model/acceleration.js';
import type { Delivery } from '../../core/model/delivery.js';
import type { Problem } from '../../core/model/error.js';
import type { Place, ReadingBody } from '../../core/model/evidence.js';
import type { Zone } from '../../core/model/time.js';
import type { LogOptions, ReadingDraft } from '../draft.js';
import { onlyZone } from '../place.js';
import { guessDelimiter, linesOf } from '../table/delimiter.js';
import { type RowOfText, rowsOfText } from '../table/rows.js';
import { DateOrderEvidence } from '../time/date-order.js';
import { TO_THE_SECOND, timeInZone, timeWithOffset } from '../time/event-time.js';
import { fixedZone, zoneIn } from '../time/stated-zone.js';
import { type DateOrder, readWall } from '../time/wall-time.js';
import { StatedReader } from '../unit-log/stated.js';
import { type ShockColumns, shockColumns, unitOf } from './headings.js';
import { eventIn, numberIn, type ShockRowContext, shockOf } from './row.js';

/** A recorder's table of shocks, or a list of hard braking, as it was read. */
export type ShockTable =
  | { is: 'shocks'; readings: ReadingDraft[]; problems: Problem[]; rowsLeftOut: number; takenFor: string }
  /** Its columns are those of such a table, and something is missing. */
  | { is: 'lacking'; problem: Problem; zoneUnknown: boolean };

export interface ShockTableInput {
  text: string;
  /** The text is the beginning of a longer one. */
  cut?: boolean;
  fileName: string;
  delivery: Delivery;
  options: LogOptions;
  /** Where the recorder lay. */
  place?: Place | undefined;
}

const PREAMBLE = 60;
/** A recorder marks events, not every step of its clock: more rows than this are no list of events. */
const MOST_ROWS = 2_000;

/** Reads a table of shocks or hard braking; undefined for any other. */
export function readShockTable(input: ShockTableInput): ShockTable | undefined {
  const { text, fileName } = input;
  const delimiter = guessDelimiter(linesOf(text)) ?? ',';
  const rows = rowsOfText(text, delimiter, PREAMBLE + MOST_ROWS + 1);
  const at = rows
    .slice(0, PREAMBLE)
    .findIndex(({ cells }) => cells.length >= 2 && shockColumns(cells) !== undefined);
  const header = rows[at];
  const columns = header === undefined ? undefined : shockColumns(header.cells);
  if (header === undefined || columns === undefined) return undefined;
  const [above, below] = [rows.slice(0, at), rows.slice(at + 1)];
  if (!holdsShocks(below, columns)) return undefined;
  const lack = (message: string, fix: string, zoneUnknown = false): ShockTable => ({
    is: 'lacking',
    problem: { code: 'unsupported-file', message, where: { file: fileName, row: header.line }, fix },
    zoneUnknown,
  });
  if (below.length > MOST_ROWS || input.cut === true)
    return lack(
      `more than ${below.length > MOST_ROWS ? `${MOST_ROWS.toLocaleString('en-US')} rows` : '1 MB'}, which is no list of events`,
      'save the rows at or above the threshold of the recorder as a table of their own',
    );
  const units = unitsOf(columns, above, below, input.options.shockUnit);
  if (units.is === 'unknown')
    return lack(
      `nothing says in what unit ${units.headings.map((one) => `"${one}"`).join(', ')} ${units.headings.length === 1 ? 'is' : 'are'}`,
      'say the unit of the peaks with --shock-unit g, m/s², ft/s², mph/s or km/h/s, and collect the file again',
    );
  const zone = zoneOf(input, above, header);
  if (zone === undefined && !statesOffsets(below, columns))
    return lack(
      "the rows do not state the zone of the recorder's clock, and the stops lie in different zones",
      'say the zone that the clock is set to with --log-zone, and collect the file again',
      true,
    );
  const order = orderOf(below, columns, input);
  if (order === undefined)
    return lack(
      'its dates can be read month first or day first, and nothing in the file decides it',
      'say the order of its dates with --log-dates month-day-year or --log-dates day-month-year',
    );
  return readRows(below, {
    columns,
    unit: units.unit,
    zone,
    order,
    threshold: thresholdAbove(above, units.unit),
    instrument: recorderIn(above),
    place: input.place,
    fileName,
  });
}

/** A table of events: a peak or the word of an event stands in most of its rows. */
function holdsShocks(rows: readonly RowOfText[], { peaks, event, time }: ShockColumns): boolean {
  if (rows.length === 0) return false;
  const dated = rows.filter(({ cells }) => /\d/.test(cells[time[0] ?? 0] ?? '')).length;
  if (dated * 2 < rows.length) return false;
  const peaked = rows.filter(({ cells }) =>
    peaks.some(({ column }) => holdsNumber(cells[column] ?? '')),
  ).length;
  const named = rows.filter(
    ({ cells }) => event !== undefined && eventIn(cells[event] ?? '') !== undefined,
  ).length;
  return peaked * 2 >= rows.length || named > 0;
}

const holdsNumber = (text: string) => numberIn(text) !== undefined || parseAcceleration(text) !== undefined;

type Units = { is: 'known'; unit: AccelerationUnit | undefined } | { is: 'unknown'; headings: string[] };

/** One unit of all peaks: in the headings, the cells, the lines above, or as a person says it. */
function unitsOf(
  { peaks }: ShockColumns,
  above: readonly RowOfText[],
  below: readonly RowOfText[],
  said: AccelerationUnit | undefined,
): Units {
  if (peaks.length === 0) return { is: 'known', unit: undefined };
  const inHeadings = peaks.flatMap(({ unit }) => unit ?? [])[0];
  const inCells = below.some(({ cells }) =>
    peaks.some(({ column }) => parseAcceleration(cells[column] ?? '') !== undefined),
  );
  const unit = inHeadings ?? said ?? unitAbove(above);
  return unit === undefined && !inCells
    ? { is: 'unknown', headings: peaks.map(({ heading }) => heading) }
    : { is: 'known', unit };
}

/** `Unit,g` or `Acceleration unit: m/s²` above the headings. */
function unitAbove(above: readonly RowOfText[]): AccelerationUnit | undefined {
  for (const { cells } of above)
    for (const [i, cell] of cells.entries()) {
      const [label = '', value = ''] = cell.split(/[:=]/);
      if (!/\b(?:units?|unidad(?:es)?|unite)\b/i.test(label)) continue;
      const unit = unitOf((value.trim() || (cells[i + 1] ?? '')).trim());
      if (unit !== undefined) return unit;
    }
  return undefined;
}

/** `Threshold,3 g` above the headings. */
function thresholdAbove(
  above: readonly RowOfText[],
  unit: AccelerationUnit | undefined,
): Acceleration | undefined {
  for (const { cells } of above)
    for (const [i, cell] of cells.entries()) {
      const [label = '', value = ''] = cell.split(/[:=]/);
      if (!/threshold|umbral|seuil|trigger/i.test(label)) continue;
      const text = (value.trim() || (cells[i + 1] ?? '')).trim();
      const number = numberIn(text);
      const stated =
        parseAcceleration(text) ??
        (number === undefined || unit === undefined
          ? undefined
          : { value: number, unit: unitOf(label) ?? unit });
      if (stated !== undefined) return stated;
    }
  return undefined;
}

function recorderIn(above: readonly RowOfText[]): string | undefined {
  const reader = new StatedReader();
  for (const { cells } of above) reader.add(cells);
  return reader.stated?.recorder;
}

function zoneOf(
  { options, delivery }: ShockTableInput,
  above: readonly RowOfText[],
  header: RowOfText,
): Zone | undefined {
  if (options.logZone !== undefined) return options.logZone;
  const near = delivery.stops.map((stop) => stop.zone);
  const labelled = above.flatMap(({ cells }) =>
    cells.flatMap((cell, i) =>
      /zone|zona|fuseau|clock|reloj/i.test(cell.split(/[:=]/)[0] ?? '')
        ? [`${cell} ${cells[i + 1] ?? ''}`]
        : [],
    ),
  );
  for (const text of [...header.cells.filter((cell) => /time|hora|heure/i.test(cell)), ...labelled]) {
    const stated = zoneIn(text, near);
    if (stated?.is === 'zone') return stated.zone;
    if (stated?.is === 'offset') return fixedZone(stated.minutes);
    if (stated?.is === 'word' && stated.named.offset === undefined) return stated.named.zone;
  }
  return onlyZone(delivery);
}

const timeText = ({ time }: ShockColumns, { cells }: RowOfText): string =>
  time
    .map((column) => cells[column] ?? '')
    .join(' ')
    .trim();

const statesOffsets = (rows: readonly RowOfText[], columns: ShockColumns): boolean =>
  rows.every((row) => readWall(timeText(columns, row), 'iso')?.offset !== undefined);

function orderOf(
  rows: readonly RowOfText[],
  columns: ShockColumns,
  { options, delivery }: ShockTableInput,
): DateOrder | undefined {
  if (options.logDates !== undefined) return options.logDates;
  const evidence = new DateOrderEvidence();
  for (const row of rows) evidence.add(timeText(columns, row));
  const near = delivery.stops.flatMap(({ planned }) =>
    planned === undefined ? [] : [Date.parse(`${planned}Z`)],
  );
  const verdict = evidence.verdict(near.filter((at) => !Number.isNaN(at)));
  return verdict.is === 'order' ? verdict.order : verdict.is === 'no-dates' ? 'iso' : undefined;
}

interface RowContext extends ShockRowContext {
  zone: Zone | undefined;
  order: DateOrder;
  fileName: string;
}

function readRows(rows: readonly RowOfText[], context: RowContext): ShockTable {
  const readings: ReadingDraft[] = [];
  const problems: Problem[] = [];
  const leave = (row: number, message: string) =>
    problems.push({ code: 'bad-value', message, where: { file: context.fileName, row } });
  for (const row of rows) {
    if (row.cells.every((cell) => cell.trim() === '')) continue;
    const time = rowTime(row, context);
    if (time === undefined) {
      leave(row.line, `"${timeText(context.columns, row).slice(0, 60)}" is not a date and time`);
      continue;
    }
    const said = shockOf(row.cells, context);
    if (typeof said === 'string') leave(row.line, said);
    else readings.push({ row: row.line, reading: { ...said, time } });
  }
  const { unit, threshold, zone } = context;
  const shown = [
    `table of shocks: ${readings.length} ${readings.length === 1 ? 'row' : 'rows'}`,
    ...(unit === undefined ? [] : [`peaks in ${unit}`]),
    threshold === undefined ? 'no threshold stated' : `threshold ${threshold.value} ${threshold.unit}`,
    zone === undefined ? 'each row states its own offset' : `clock in ${zone}`,
  ];
  return { is: 'shocks', readings, problems, rowsLeftOut: problems.length, takenFor: shown.join(', ') };
}

function rowTime(row: RowOfText, { columns, order, zone }: RowContext): ReadingBody['time'] | undefined {
  const text = timeText(columns, row);
  const wall = readWall(text, order);
  if (wall === undefined) return undefined;
  if (wall.offset !== undefined)
    return timeWithOffset({ wall: wall.wall, offset: wall.offset }, zone, TO_THE_SECOND, text);
  return zone === undefined ? undefined : timeInZone(wall.wall, zone, 'log-zone', TO_THE_SECOND, text).time;
}

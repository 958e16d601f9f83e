import type { LogMapping } from '../../../core/model/evidence.js';
import type { TemperatureUnit } from '../../../core/model/temperature.js';
import { readNumber, readWithUnit } from '../cells/numbers.js';
import { unitOfCell } from '../cells/unit-cell.js';
import type { FoundTable } from '../headings/find-table.js';
import { headingMeaning, unitIn } from '../headings/meaning.js';
import type { LogContext } from '../log-context.js';
import { usualUnit } from './usual-unit.js';

export interface WeighedUnits {
  /** Unit of each temperature column whose unit is known. */
  units: Map<number, TemperatureUnit>;
  /** The column whose cells say it for each row. */
  unitColumn?: number;
  /** Set where nothing but the countries of the stops says it. */
  unitBasis?: 'countries';
}

/**
 * Unit of each temperature column: what a map says; its heading, the line of units, its cells; a column of units; the
 * unit that a person said for those that do not show one; the one that the lines above the header name; then the one
 * unit of the other columns; and of a table that says nothing, the one that is in use where all stops are.
 */
export function weighUnits(
  table: FoundTable,
  decimal: LogMapping['decimal'],
  { logMap, logUnit: said, zones = [] }: Pick<LogContext, 'logMap' | 'logUnit' | 'zones'>,
): WeighedUnits {
  const units = new Map<number, TemperatureUnit>();
  const mapped = logMap?.units;
  const inCells = unitColumn(table);
  const above = unitAbove(table.preamble);
  // `Value` is of anything: what the lines above or the other columns say is not of it.
  const saysTemperature = (column: number): boolean => {
    const said = headingMeaning(table.headings[column] ?? '');
    return said === undefined || !said.weak || said.ofTemperature || said.symbol === true;
  };
  for (const { column, channel } of table.columns.channels) {
    const unit =
      (typeof mapped === 'string' ? mapped : mapped?.[channel]) ??
      unitIn(table.headings[column] ?? '') ??
      unitOfCell(table.unitRow[column] ?? '') ??
      unitIn(table.unitRow[column] ?? '') ??
      table.sample
        .map((row) => readWithUnit(row[column] ?? '', decimal)?.unit)
        .find((u) => u !== undefined) ??
      inCells?.unit ??
      said ??
      (saysTemperature(column) ? above : undefined);
    if (unit !== undefined) units.set(column, unit);
  }
  const [only, other] = [...new Set(units.values())];
  if (only !== undefined && other === undefined)
    for (const { column } of table.columns.channels)
      if (!units.has(column) && saysTemperature(column)) units.set(column, only);
  if (inCells !== undefined && mapped === undefined) return { units, unitColumn: inCells.column };
  const usual = units.size > 0 ? undefined : usualUnit(zones);
  const open = table.columns.channels.map(({ column }) => column);
  if (usual === undefined || !open.every(saysTemperature) || !isWeather(table, open, decimal))
    return { units };
  return { units: new Map(open.map((column) => [column, usual])), unitBasis: 'countries' };
}

/** What air, water or produce that is carried has in °C: own judgement, no source. */
const WEATHER = { from: -45, to: 60 };

/** Whether nearly all values of the columns, read in °C, are temperatures that air can have. */
function isWeather(
  { sample }: FoundTable,
  columns: readonly number[],
  decimal: LogMapping['decimal'],
): boolean {
  const values = columns.flatMap((column) =>
    sample.map((row) => readNumber(row[column] ?? '', decimal)).filter((value) => !Number.isNaN(value)),
  );
  const within = values.filter((value) => value >= WEATHER.from && value <= WEATHER.to).length;
  return values.length > 0 && within >= 0.95 * values.length;
}

/** A column that is read for nothing else, whose cells are degrees in the rows of the table. */
function unitColumn({
  sample,
  headings,
  columns,
}: FoundTable): { column: number; unit: TemperatureUnit } | undefined {
  const used = new Set([
    ...columns.time,
    ...(columns.parts?.columns ?? []),
    ...columns.channels.map((c) => c.column),
    ...columns.states.map((s) => s.column),
  ]);
  for (let column = 0; column < headings.length; column++) {
    if (used.has(column)) continue;
    const cells = sample.map((row) => (row[column] ?? '').trim()).filter((cell) => cell !== '');
    const degrees = cells.flatMap((cell) => unitOfCell(cell) ?? []);
    const [unit] = degrees;
    if (unit !== undefined && degrees.length === cells.length) return { column, unit };
  }
  return undefined;
}

/**
 * The unit that the lines above the header state: beside or under a label such as `Temperature unit`, else the only one
 * of °C and °F that stands in them.
 */
function unitAbove(preamble: readonly (readonly string[])[]): TemperatureUnit | undefined {
  const labelled = new Set<TemperatureUnit>();
  const named = new Set<TemperatureUnit>();
  preamble.forEach((cells, line) => {
    cells.forEach((cell, i) => {
      const [label = '', ...rest] = cell.split(/[:=]/);
      for (const found of degreesIn(cell)) named.add(found);
      if (!/unit|scale|einheit|unidad|unite/i.test(label) || /serial|id\b/i.test(label)) return;
      for (const value of [rest.join(':'), cells[i + 1], preamble[line + 1]?.[i]]) {
        const unit = unitOfCell(value ?? '');
        if (unit !== undefined) labelled.add(unit);
      }
    });
  });
  const [only, other] = labelled.size > 0 ? labelled : named;
  return other === undefined ? only : undefined;
}

/** Degrees that are written out: a letter alone can be of anything. */
function degreesIn(text: string): TemperatureUnit[] {
  return [
    ...text
      .slice(0, 500)
      .matchAll(/(?:°|º)\s*([CF])(?!\p{L})|(?<!\p{L})([CF])(?:elsius|ahrenheit)(?!\p{L})/giu),
  ].map(([, sign, word]) => ((sign ?? word)?.toUpperCase() === 'F' ? '°F' : '°C'));
}

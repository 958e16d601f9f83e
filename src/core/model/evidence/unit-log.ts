/** Unit logs, and how their tables are read. */
import { z } from 'zod';
import { temperatureUnit } from '../temperature.js';
import { zone } from '../time.js';
import { fileFields } from './fields.js';
import { evidenceId } from './ids.js';

/** What a column of temperatures measures; `probe` is the first of up to four probes in the box or the load. */
export const channel = z.enum([
  'set-point',
  'return-air',
  'supply-air',
  'ambient',
  'probe',
  'probe-2',
  'probe-3',
  'probe-4',
]);
/** What a column of temperatures in a unit log measures. */
export type Channel = z.infer<typeof channel>;

export const stateColumn = z.enum(['mode', 'defrost', 'door', 'power', 'alarm', 'fuel']);
/** What a column of states in a unit log tells. */
export type StateColumn = z.infer<typeof stateColumn>;

/** How a unit log's table is read: data that a person can see, give or correct. Columns count from 0. */
export const logMapping = z.strictObject({
  encoding: z.enum(['utf-8', 'utf-16le', 'utf-16be', 'latin1']),
  delimiter: z.enum([',', ';', '\t', '|']),
  decimal: z.enum(['.', ',']),
  /** Line of the header, counted from 1; 0 when the table has none. */
  headerRow: z.int().nonnegative(),
  /** Name of the sheet, where the file is a spreadsheet; its rows are then read as text. */
  sheet: z.string().optional(),
  time: z.strictObject({
    /** One column with date and time, or the date and then the time column. */
    columns: z.array(z.int().nonnegative()).min(1).max(2),
    order: z.enum(['iso', 'month-day-year', 'day-month-year']),
    /** The zone that the log's clock is set to; `offset` when every row states its own. */
    zone: z.union([z.literal('offset'), zone]),
    /** Times are counts since 1970 UTC; `order` and `zone` then say nothing. */
    count: z.enum(['seconds', 'milliseconds']).optional(),
  }),
  /** The rows that are read, of a table that holds several instruments or quantities: those with these texts. */
  only: z.array(z.strictObject({ column: z.int().nonnegative(), is: z.string() })).optional(),
  /** The column whose cells state °C or °F for their row. */
  unitColumn: z.int().nonnegative().optional(),
  channels: z.array(
    z.strictObject({
      channel,
      column: z.int().nonnegative(),
      unit: temperatureUnit,
      /** The column's heading, as in the file. */
      heading: z.string(),
    }),
  ),
  states: z.array(z.strictObject({ state: stateColumn, column: z.int().nonnegative(), heading: z.string() })),
});
export type LogMapping = z.infer<typeof logMapping>;

export const unitLogEvidence = z.strictObject({
  kind: z.literal('unit-log'),
  ...fileFields,
  mapping: logMapping,
  rows: z.int().nonnegative(),
  rowsLeftOut: z.int().nonnegative(),
  from: z.string(),
  to: z.string(),
  /** Numbers of trailer, unit and recorder in the lines above the header. */
  stated: z
    .strictObject({
      trailer: z.string().optional(),
      unit: z.string().optional(),
      recorder: z.string().optional(),
    })
    .optional(),
  /** The earlier reading of the same file that this one takes the place of; both stay in the record. */
  replaces: evidenceId.optional(),
});

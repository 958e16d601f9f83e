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

export const stateColumn = z.enum(['mode', 'operation', 'defrost', 'door', 'power', 'alarm', 'fuel']);
/** What a column of states in a unit log tells. */
export type StateColumn = z.infer<typeof stateColumn>;

/** The compartment that a column is of; a column without one is of the whole trailer. */
const compartment = z
  .string()
  .optional()
  .meta({ description: 'The compartment that the column is of, where the trailer has several' });

/** How a unit log's table is read: data that a person can see, give or correct. Columns count from 0. */
export const logMapping = z.strictObject({
  encoding: z.enum(['utf-8', 'utf-16le', 'utf-16be', 'latin1']).meta({ description: 'Encoding of the file' }),
  delimiter: z.enum([',', ';', '\t', '|']),
  decimal: z.enum(['.', ',']).meta({ description: 'Sign between whole and decimal digits' }),
  headerRow: z
    .int()
    .nonnegative()
    .meta({ description: 'Line of the header, counted from 1; 0 when the table has none' }),
  sheet: z.string().optional().meta({
    description: 'Name of the sheet, where the file is a spreadsheet; its rows are then read as text',
  }),
  time: z
    .strictObject({
      columns: z.array(z.int().nonnegative()).min(1).max(7).meta({
        description:
          'One column with date and time, or the date and then the time column, or one for each of `parts`',
      }),
      order: z.enum(['iso', 'month-day-year', 'day-month-year']),
      zone: z.union([z.literal('offset'), zone]).meta({
        description: "The zone that the log's clock is set to; `offset` when every row states its own",
      }),
      count: z
        .enum(['seconds', 'milliseconds'])
        .optional()
        .meta({ description: 'Times are counts since 1970 UTC; `order` and `zone` then say nothing' }),
      parts: z
        .array(z.enum(['year', 'month', 'day', 'day-of-year', 'hour', 'minute', 'second', 'hhmm', 'clock']))
        .optional()
        .meta({
          description:
            'What each of the columns holds, where date and time are spread over several; `hhmm` is 1330 for 13:30',
        }),
      dated: z
        .literal('above')
        .optional()
        .meta({ description: 'Rows have the time of day alone; a line above them states their date' }),
      letters: z.record(z.string(), z.int().nullable()).optional().meta({
        description:
          'Minutes east of UTC of the letters of a zone in the rows, such as EDT; null where they are passed over',
      }),
    })
    .meta({ description: 'How times are read; columns count from 0' }),
  only: z
    .array(z.strictObject({ column: z.int().nonnegative(), is: z.string() }))
    .optional()
    .meta({
      description:
        'The rows that are read, of a table that holds several instruments or quantities: those with these texts',
    }),
  unitColumn: z
    .int()
    .nonnegative()
    .optional()
    .meta({ description: 'The column whose cells state °C or °F for their row' }),
  unitBasis: z.literal('countries').optional().meta({
    description: 'The table states no unit: it is the one in use in the countries of all stops',
  }),
  channels: z
    .array(
      z.strictObject({
        channel,
        column: z.int().nonnegative(),
        unit: temperatureUnit,
        heading: z.string().meta({ description: "The column's heading, as in the file" }),
        compartment,
      }),
    )
    .meta({ description: 'Columns of temperatures: what each measures, and its unit' }),
  states: z
    .array(
      z.strictObject({ state: stateColumn, column: z.int().nonnegative(), heading: z.string(), compartment }),
    )
    .meta({ description: 'Columns of states, such as the run mode or the door' }),
});
export type LogMapping = z.infer<typeof logMapping>;

export const unitLogEvidence = z.strictObject({
  kind: z.literal('unit-log'),
  ...fileFields,
  mapping: logMapping.meta({ description: 'How its table is read' }),
  rows: z.int().nonnegative().meta({ description: 'Rows read' }),
  rowsLeftOut: z.int().nonnegative().meta({ description: 'Rows excluded' }),
  from: z.string().meta({ description: 'First time' }),
  to: z.string().meta({ description: 'Last time' }),
  stated: z
    .strictObject({
      trailer: z.string().optional(),
      unit: z.string().optional(),
      recorder: z.string().optional(),
    })
    .optional()
    .meta({ description: 'Numbers of trailer, unit and recorder in the lines above the header' }),
  replaces: evidenceId.optional().meta({
    description:
      'The earlier reading of the same file that this one takes the place of; both stay in the record',
  }),
});

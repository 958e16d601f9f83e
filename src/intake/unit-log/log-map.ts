import { z } from 'zod';
import { channel, logMapping, stateColumn } from '../../core/model/evidence.js';
import { type Zone, zone } from '../../core/model/time.js';
import { readYamlAs } from '../yaml.js';

const columnName = z
  .union([z.string().min(1).max(200), z.int().positive()])
  .meta({ description: 'The heading as it stands in the file, or the number of the column counted from 1.' });

const unit = z
  .enum(['F', 'C', '°F', '°C'])
  .transform((text) => (text === 'F' || text === '°F' ? ('°F' as const) : ('°C' as const)));

const DELIMITERS = { comma: ',', semicolon: ';', tab: '\t', bar: '|' } as const;

const names = [...channel.options, ...stateColumn.options] as const;

/** How to read a log whose columns do not say it themselves, as people write it. */
export const logMap = z
  .strictObject({
    columns: z
      .strictObject({
        time: columnName.optional().meta({ description: 'Date and time in one column.' }),
        date: columnName.optional(),
        clock: columnName.optional().meta({ description: 'The time of day, beside a column of dates.' }),
        ...optional(names, columnName),
        ignore: z
          .array(columnName)
          .optional()
          .meta({ description: 'Columns that are none of these, whatever their headings say.' }),
      })
      .prefault({}),
    units: z
      .union([unit, z.partialRecord(channel, unit)])
      .optional()
      .meta({ description: 'F or C for all temperatures, or one for each column.' }),
    zone: z
      .string()
      .transform((name, ctx): 'offset' | Zone => {
        if (name === 'offset') return name;
        const read = zone.safeParse(name);
        if (read.success) return read.data;
        ctx.addIssue({ code: 'custom', message: read.error.issues[0]?.message ?? 'not a time zone' });
        return z.NEVER;
      })
      .optional()
      .meta({
        description:
          'Zone of the log’s clock, such as America/Phoenix; offset when every row states its own.',
      }),
    dates: logMapping.shape.time.shape.order
      .optional()
      .meta({ description: 'Order of the numbers in a date; iso is the year first.' }),
    delimiter: z
      .enum(['comma', 'semicolon', 'tab', 'bar'])
      .transform((name) => DELIMITERS[name])
      .optional(),
    decimal: z
      .enum(['point', 'comma'])
      .transform((name) => (name === 'point' ? ('.' as const) : (',' as const)))
      .optional(),
    header: z
      .union([z.literal('none').transform(() => 0), z.int().positive()])
      .optional()
      .meta({ description: 'Line of the headings counted from 1, or none.' }),
    encoding: logMapping.shape.encoding.optional(),
    only: z
      .array(z.strictObject({ column: columnName, is: z.string().max(200) }))
      .max(4)
      .optional()
      .meta({
        description:
          'The rows that are read, of a table of several instruments: those with this text in this column.',
      }),
    sheet: z.string().min(1).max(100).optional().meta({ description: 'Name of the sheet in a spreadsheet.' }),
  })
  .superRefine((map, ctx) => {
    const byNumber = (name: unknown) => typeof name === 'number' || name === undefined;
    if (map.header === 0 && ![...Object.values(map.columns)].flat().every(byNumber))
      ctx.addIssue({
        code: 'custom',
        message: 'a table without headings has its columns by number, counted from 1',
        path: ['columns'],
      });
  });
export type LogMap = z.infer<typeof logMap>;

function optional<K extends string, S extends z.ZodType>(
  keys: readonly K[],
  schema: S,
): Record<K, z.ZodOptional<S>> {
  return Object.fromEntries(keys.map((key) => [key, schema.optional()])) as Record<K, z.ZodOptional<S>>;
}

/** Reads a map file. Throws DossierError `bad-usage` that names every line that cannot be read. */
export function parseLogMap(text: string, fileName: string): LogMap {
  return readYamlAs(logMap, text, fileName, 'bad-usage').read;
}

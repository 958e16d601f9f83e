import type { LogOptions } from '../../intake/draft.js';
import { DossierError } from '../../model/error.js';
import { channel, stateColumn } from '../../model/evidence.js';
import { parseTemperature } from '../../model/temperature.js';
import { zone as zoneSchema } from '../../model/time.js';

/** What a person says about a unit log, as typed. */
export interface TypedLogOptions {
  logZone?: string | undefined;
  logUnit?: string | undefined;
  /** `time=1,return-air=Return (°F)`: headings, or numbers from 1. */
  logColumns?: string | undefined;
  logDates?: string | undefined;
}

const MEANINGS = ['time', 'date', 'clock', ...channel.options, ...stateColumn.options];
const DATES = ['month-day-year', 'day-month-year'] as const;

/** Throws DossierError `bad-usage` with the choices for a word that can't be understood. */
export function readLogOptions({ logZone, logUnit, logColumns, logDates }: TypedLogOptions): LogOptions {
  const options: LogOptions = {};
  if (logZone !== undefined) {
    const read = zoneSchema.safeParse(logZone);
    if (!read.success) throw bad('--log-zone', read.error.issues[0]?.message ?? 'not a time zone');
    options.logZone = read.data;
  }
  if (logUnit !== undefined) {
    const read = parseTemperature(`0${logUnit}`);
    if (read === undefined)
      throw bad('--log-unit', `"${logUnit}" is not a unit of temperature`, 'Use F or C.');
    options.logUnit = read.unit;
  }
  if (logColumns !== undefined) options.logColumns = columnsOf(logColumns);
  if (logDates !== undefined) {
    const order = DATES.find((one) => one === logDates);
    if (order === undefined)
      throw bad('--log-dates', `"${logDates}" is not an order of dates`, `Use one of: ${DATES.join(', ')}.`);
    options.logDates = order;
  }
  return options;
}

function columnsOf(text: string): Record<string, string | number> {
  return Object.fromEntries(
    text.split(',').map((part) => {
      const [, name = '', column = ''] = /^\s*([^=]*?)\s*=\s*(.+?)\s*$/.exec(part) ?? [];
      if (!MEANINGS.some((meaning) => meaning === name))
        throw bad(
          '--log-columns',
          `"${part.trim()}" does not say which column is what`,
          `Write it like time=1,return-air=3, with headings or numbers of columns, of: ${MEANINGS.join(', ')}.`,
        );
      return [name, /^\d+$/.test(column) ? Number(column) : column];
    }),
  );
}

function bad(field: string, message: string, fix?: string): DossierError {
  return new DossierError('bad-usage', message, { where: { field }, ...(fix === undefined ? {} : { fix }) });
}

import { readFile } from 'node:fs/promises';
import { accelerationUnitNamed } from '../../core/model/acceleration.js';
import { DossierError } from '../../core/model/error.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { parseTemperature } from '../../core/model/temperature.js';
import type { LogOptions } from '../../intake/draft.js';
import { unreadable } from '../../record/disk/disk-error.js';
import { parseZoneOption } from '../typed/zone-option.js';

/** Typed options for reading a unit log. */
export interface TypedLogOptions {
  logZone?: string | undefined;
  logUnit?: string | undefined;
  /** Order of day and month where the dates do not show it. */
  logDates?: string | undefined;
  /** Unit of peaks of shocks whose table states none. */
  shockUnit?: string | undefined;
  /** A map file with the mapping of the log's columns. */
  map?: string | undefined;
}

const DATES = {
  'month-day-year': 'month-day-year',
  'day-month-year': 'day-month-year',
  'year-month-day': 'iso',
} as const;

/** Throws DossierError `bad-usage` with the choices for a word that can't be understood. */
export async function readLogOptions({
  logZone,
  logUnit,
  logDates,
  shockUnit,
  map,
}: TypedLogOptions): Promise<LogOptions> {
  const options: LogOptions = {};
  if (logZone !== undefined) {
    options.logZone = parseZoneOption(logZone, '--log-zone', undefined, 'bad-usage');
  }
  if (logUnit !== undefined) {
    const read = parseTemperature(`0${logUnit}`);
    if (read === undefined)
      throw bad('--log-unit', `"${logUnit}" is not a unit of temperature`, 'Use F or C.');
    options.logUnit = read.unit;
  }
  if (logDates !== undefined) {
    const order = Object.entries(DATES).find(([name]) => name === logDates);
    if (order === undefined)
      throw bad(
        '--log-dates',
        `"${logDates}" is not an order of dates`,
        `Use one of: ${Object.keys(DATES).join(', ')}.`,
      );
    options.logDates = order[1];
  }
  if (shockUnit !== undefined) {
    const unit = accelerationUnitNamed(shockUnit);
    if (unit === undefined)
      throw bad(
        '--shock-unit',
        `"${shockUnit}" is not a unit of acceleration`,
        'Use g, m/s², ft/s², mph/s or km/h/s.',
      );
    options.shockUnit = unit;
  }
  if (map !== undefined) {
    const { parseLogMap } = await import('../../intake/unit-log/log-map.js');
    options.logMap = parseLogMap(await readText(map), map);
  }
  return options;
}

async function readText(file: string): Promise<string> {
  return readFile(file, 'utf8').catch((cause: unknown) => {
    throw unreadable(file, cause);
  });
}

function bad(field: string, message: string, fix?: string): DossierError {
  return new DossierError('bad-usage', message, { where: { field }, ...omitUndefined({ fix }) });
}

import type { Channel, LogMapping, StateColumn } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { fromCelsius } from '../../core/model/temperature.js';
import { type Instant, toInstant, type Zone } from '../../core/model/time.js';
import { inZone } from '../../core/model/zoned-time.js';
import type { ReadLog } from './read.js';

/** One row of a log as it is understood. */
export interface PreviewRow {
  /** Line in the file, counted from 1. */
  row: number;
  utc: Instant;
  /** Wall-clock time in `zone`, with its offset: `2026-07-14 05:42:08 -07:00`. */
  local: string;
  temperatures: { channel: Channel; compartment?: string; celsius: number; fahrenheit: number }[];
  states: { state: StateColumn; compartment?: string; text: string }[];
}

/** How a log is read, for a person who looks before it is taken in. */
export interface LogPreview {
  mapping: LogMapping;
  /** Headings of columns that are not read. */
  unused: string[];
  /** Zone of `local`: that of the log's clock, or where its rows state their offset, that of the first stop. */
  zone: Zone;
  rows: PreviewRow[];
}

const SHOWN_ROWS = 5;

/** The columns of a compartment, or those of the whole trailer. */
const columnsOf = (log: ReadLog, compartment: string | undefined) =>
  log.compartments.find((one) => one.compartment === compartment) ?? log;

export function previewOf(log: ReadLog, mapping: LogMapping, unused: string[], placeZone: Zone): LogPreview {
  const zone = mapping.time.zone === 'offset' ? placeZone : mapping.time.zone;
  const rows = Array.from({ length: Math.min(SHOWN_ROWS, log.times.length) }, (_, i): PreviewRow => {
    const utc = toInstant(log.times.at(i) ?? 0);
    return {
      row: log.rows.at(i) ?? 0,
      utc,
      local: inZone(utc, zone).toFormat('yyyy-MM-dd HH:mm:ss ZZ'),
      temperatures: mapping.channels.flatMap(({ channel, compartment }) => {
        const celsius = columnsOf(log, compartment).channels[channel]?.at(i) ?? Number.NaN;
        const of = omitUndefined({ compartment });
        return Number.isNaN(celsius)
          ? []
          : [{ channel, ...of, celsius, fahrenheit: fromCelsius(celsius, '°F') }];
      }),
      states: mapping.states.flatMap(({ state, compartment }) => {
        const text = columnsOf(log, compartment).states[state]?.at(i) ?? '';
        return text === '' ? [] : [{ state, ...omitUndefined({ compartment }), text }];
      }),
    };
  });
  return { mapping, unused, zone, rows };
}

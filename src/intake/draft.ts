import type { AccelerationUnit } from '../core/model/acceleration.js';
import type { Problem } from '../core/model/error.js';
import type { Place, ReadingBody, ReceivedEvidence, Subject } from '../core/model/evidence.js';
import type { TemperatureUnit } from '../core/model/temperature.js';
import type { EventTime, Zone } from '../core/model/time.js';
import type { ColumnChoice } from './unit-log/headings/columns.js';
import type { LogMap } from './unit-log/log-map.js';
import type { LogPreview } from './unit-log/preview.js';

/** A union's members, each without some fields. */
type Without<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never;

/** A file's evidence before it has an id. */
export type ReceivedDraft = Without<ReceivedEvidence, 'evidence'>;
export type ReceivedDraftOf<K extends ReceivedDraft['kind']> = Extract<ReceivedDraft, { kind: K }>;

/** A row of a readings table; the caller adds its id, and `source` = the table's id and this row. */
export interface ReadingDraft {
  /** Line in the file, counted from 1. */
  row: number;
  reading: ReadingBody;
}

/** Description of a file by its folder or captions.csv. */
export interface Hint {
  subject?: Subject;
  place?: Place;
  line?: string;
  by?: string;
  caption?: string;
  /** When, where the file itself does not say it. */
  time?: EventTime;
}

/** Options for reading a unit log. */
export interface LogOptions {
  /** Zone that the log's clock is set to. */
  logZone?: Zone;
  /** Unit of columns whose heading states none. */
  logUnit?: TemperatureUnit;
  /** Order of day, month and year where the dates themselves do not show it. */
  logDates?: 'month-day-year' | 'day-month-year' | 'iso';
  /** Columns by heading or by number from 1, where the headings do not show their meaning. */
  logColumns?: ColumnChoice;
  /** Unit of peaks of shocks whose table states none. */
  shockUnit?: AccelerationUnit;
  /** A map file, which takes precedence over the log. */
  logMap?: LogMap;
}

/** A file in an e-mail or archive, to be recorded as evidence of its own. */
export interface NestedFile {
  /** Its name inside. */
  entry: string;
  bytes: number;
  read(): AsyncIterable<Uint8Array>;
  /** Its description by the e-mail or archive. */
  caption?: string;
}

/** The contents of an e-mail or archive. Call `close` after reading. */
export interface ContainerContents {
  files: NestedFile[];
  skipped: { name: string; why: string }[];
  close(): void;
}

/** The result of examining one file. */
export interface ExaminedFile {
  received: ReceivedDraft;
  readings: ReadingDraft[];
  problems: Problem[];
  /** One line for people: the kind of file recognised. */
  takenFor: string;
  /** How a unit log is read, with its first rows. */
  log?: LogPreview;
  /** Zone to suggest when the log's own is unknown and the file was kept as a document for that reason. */
  proposedZone?: Zone;
  /** Files inside it. */
  inside?: ContainerContents;
}

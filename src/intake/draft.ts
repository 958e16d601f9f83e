import type { Problem } from '../core/model/error.js';
import type { Place, Reading, ReceivedEvidence, Subject } from '../core/model/evidence.js';
import type { TemperatureUnit } from '../core/model/temperature.js';
import type { Zone } from '../core/model/time.js';
import type { ColumnChoice } from './unit-log/headings/columns.js';
import type { LogMap } from './unit-log/log-map.js';
import type { LogPreview } from './unit-log/preview.js';

/** A union's members, each without some fields. */
type Without<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never;

/** A file's evidence before it has its id. */
export type ReceivedDraft = Without<ReceivedEvidence, 'evidence'>;
export type ReceivedDraftOf<K extends ReceivedDraft['kind']> = Extract<ReceivedDraft, { kind: K }>;

/** A reading before it has an id and a source. */
export type ReadingBody = Without<Reading, 'evidence' | 'source'>;

/** A row of a readings table; the caller adds its own id, and `source` = the table's id and this row. */
export interface ReadingDraft {
  /** Line in the file, counted from 1. */
  row: number;
  reading: ReadingBody;
}

/** What the folder or its captions.csv says about a file. */
export interface Hint {
  subject?: Subject;
  place?: Place;
  line?: string;
  by?: string;
  caption?: string;
}

/** What only a person can say about a unit log. */
export interface LogOptions {
  /** Zone that the log's clock is set to. */
  logZone?: Zone;
  /** Unit of columns whose heading does not say. */
  logUnit?: TemperatureUnit;
  /** Order of day and month where the dates themselves do not show it. */
  logDates?: 'month-day-year' | 'day-month-year';
  /** Which column is what, by heading or by number from 1, where the headings do not show it. */
  logColumns?: ColumnChoice;
  /** A map file; what it says counts before what the log shows. */
  logMap?: LogMap;
}

/** A file in an e-mail or archive, to be taken in as evidence of its own. */
export interface NestedFile {
  /** Its name in there. */
  entry: string;
  bytes: number;
  read(): AsyncIterable<Uint8Array>;
  /** What the e-mail or archive says about it. */
  caption?: string;
}

/** What an e-mail or archive holds. `close` it when all that is wanted has been read. */
export interface ContainerContents {
  files: NestedFile[];
  skipped: { name: string; why: string }[];
  close(): void;
}

/** What became of one file. */
export interface ExaminedFile {
  received: ReceivedDraft;
  readings: ReadingDraft[];
  problems: Problem[];
  /** One line for people: what the file was taken for. */
  takenFor: string;
  /** How a unit log is read, with its first rows. */
  log?: LogPreview;
  /** Zone to offer when the log's own is not known and the file was kept as a document for that reason. */
  proposedZone?: Zone;
  /** Files that came in it. */
  inside?: ContainerContents;
}

import { omitUndefined } from '../../core/model/omit-undefined.js';
/** Headings of a readings table. The first ten are for all kinds; the others are for some. */
export const READING_COLUMNS = [
  'time',
  'kind',
  'value',
  'unit',
  'line',
  'position',
  'compartment',
  'stop',
  'by',
  'note',
  'from',
  'instrument',
  'run',
  'state',
  'event',
  'with',
  'how',
  'set-point',
  'fuel',
  'alarms',
  'rows',
  'blocks',
  'reason',
  'count',
  'steer',
  'drive',
  'trailer',
  'gross',
  'pallet-weight',
  'duration',
  'axis',
  'threshold',
  'lot',
  'certificate',
  'samples',
  'defects',
  'defect',
  'percent',
  'serious',
  'nature',
  'decay',
  'total',
  'pulps',
  'where',
  'ended',
  'requested-by',
  'requested-at',
  'dumped',
  'marks',
  'subject',
  'type',
  'serial',
  'owner',
  'accuracy',
  'calibrated',
  'serviced',
  'software',
  'ice-before',
  'ice-after',
  'on',
  'written-by',
  'signed-by',
  'said-by',
  'with-name',
] as const;
export type ReadingColumn = (typeof READING_COLUMNS)[number];

/** A remark on a cell. */
export interface RowNote {
  message: string;
  column: ReadingColumn;
  fix?: string;
}

/** Why a row is not recorded; caught by the loop over rows. */
export class UnreadableRow extends Error {
  readonly note: RowNote;

  constructor(message: string, column: ReadingColumn, fix?: string) {
    super(message);
    this.note = { message, column, ...omitUndefined({ fix }) };
  }
}

import { type Acceleration, parseAcceleration } from '../../core/model/acceleration.js';
import { palletState, type ReadingBody, shockAxis, shockEvent } from '../../core/model/evidence.js';
import { parseMilliseconds } from '../../core/model/milliseconds.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { HEAVIEST, kilograms, parseWeight, type Weight } from '../../core/model/weight.js';
import { type Cells, chosen, missing, rowsIn, short } from './cells.js';
import { type ReadingColumn, UnreadableRow } from './columns.js';

type Body<K extends ReadingBody['kind']> = Omit<
  Extract<ReadingBody, { kind: K }>,
  'kind' | 'time' | 'place' | 'line' | 'by'
>;

/** What a scale showed: a weight in each of the columns of axle groups, its unit beside it or in the column `unit`. */
export function scaleIn(cells: Cells): Body<'scale'> {
  const ticket = cells.get('certificate');
  const found = omitUndefined({
    steer: weightIn(cells, 'steer', HEAVIEST['axle-group']),
    drive: weightIn(cells, 'drive', HEAVIEST['axle-group']),
    trailer: weightIn(cells, 'trailer', HEAVIEST['axle-group']),
    gross: weightIn(cells, 'gross', HEAVIEST.gross) ?? weightIn(cells, 'value', HEAVIEST.gross),
  });
  if (Object.keys(found).length === 0)
    missing('gross', 'the weight of an axle group or of the whole vehicle');
  return {
    ...found,
    ...omitUndefined({ ticket: ticket === undefined ? undefined : short(ticket, 'certificate', 60) }),
  };
}

/** Weight of each pallet of the rows. */
export const palletWeightIn = (cells: Cells): Weight | undefined =>
  weightIn(cells, 'pallet-weight', HEAVIEST.pallet);

function weightIn(cells: Cells, column: ReadingColumn, most: number): Weight | undefined {
  const text = cells.get(column);
  if (text === undefined) return undefined;
  const written = /[a-z#]/i.test(text) ? text : `${text} ${cells.get('unit') ?? ''}`;
  const read = parseWeight(written);
  if (read === undefined)
    throw new UnreadableRow(
      `"${text.slice(0, 60)}" is not a weight with its unit`,
      column,
      'write a number with lb, kg or t, or the unit in the column unit',
    );
  if (kilograms(read) > most)
    throw new UnreadableRow(
      `${written.trim()} is heavier than it can be; is a figure or the unit wrong?`,
      column,
    );
  return read;
}

/** What a recorder marked. */
export function shockIn(cells: Cells): Body<'shock'> {
  const what = chosen(cells, 'state', shockEvent) ?? 'shock';
  const peak = accelerationIn(cells, 'value');
  if (peak === undefined && what === 'shock') missing('value', 'the peak with its unit, such as 5.2 g');
  const [lasted, instrument] = [cells.get('duration'), cells.get('instrument')];
  const milliseconds = lasted === undefined ? undefined : parseMilliseconds(lasted);
  if (lasted !== undefined && milliseconds === undefined)
    throw new UnreadableRow(
      `"${lasted.slice(0, 60)}" is not how long a shock lasts`,
      'duration',
      'write 11 ms or 0.4 s',
    );
  return {
    what,
    ...omitUndefined({
      peak,
      milliseconds,
      axis: chosen(cells, 'axis', shockAxis),
      threshold: accelerationIn(cells, 'threshold'),
      instrument: instrument === undefined ? undefined : short(instrument, 'instrument', 100),
    }),
  };
}

function accelerationIn(cells: Cells, column: ReadingColumn): Acceleration | undefined {
  const text = cells.get(column);
  if (text === undefined) return undefined;
  const read = parseAcceleration(/[a-z]/i.test(text) ? text : `${text} ${cells.get('unit') ?? ''}`);
  if (read !== undefined) return read;
  throw new UnreadableRow(
    `"${text.slice(0, 60)}" is not an acceleration with its unit`,
    column,
    'write a number with g, m/s², ft/s², mph/s or km/h/s, or the unit in the column unit',
  );
}

/** Pallets as they were found. */
export function palletsIn(cells: Cells): Body<'pallets'> {
  const count = cells.get('count');
  if (count !== undefined && !/^[1-9]\d?$/.test(count))
    throw new UnreadableRow(
      `"${count.slice(0, 60)}" is not a count of pallets`,
      'count',
      'write a whole number',
    );
  return {
    state:
      chosen(cells, 'state', palletState) ??
      chosen(cells, 'value', palletState) ??
      missing('state', palletState.options.join(', ')),
    documents: [],
    ...omitUndefined({
      rows: cells.has('rows') ? rowsIn(cells) : undefined,
      count: count === undefined ? undefined : Number(count),
    }),
  };
}

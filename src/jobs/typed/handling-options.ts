import { type Acceleration, parseAcceleration } from '../../core/model/acceleration.js';
import { DossierError } from '../../core/model/error.js';
import { axleGroup } from '../../core/model/evidence.js';
import { parseMilliseconds } from '../../core/model/milliseconds.js';
import { parseRowSpan } from '../../core/model/row-span.js';
import { parseWeight, type Weight } from '../../core/model/weight.js';
import type { TypedFields } from './typed-fields.js';

/** The fields of a scale ticket, before its schema checks them. Throws DossierError `bad-value` for what is no weight. */
export function scaleBody(word: string | undefined, typed: TypedFields): Record<string, unknown> {
  const gross = word ?? typed.gross;
  if (gross === undefined && axleGroup.options.every((group) => typed[group] === undefined))
    throw new DossierError('bad-value', 'a scale ticket that says no weight', {
      where: { field: '--steer' },
      fix: 'Give what it says: --steer 11,840lb --drive 33,420lb --trailer 32,100lb, or the gross weight.',
    });
  return {
    ...Object.fromEntries(axleGroup.options.map((group) => [group, typedWeight(typed[group], `--${group}`)])),
    gross: typedWeight(gross, 'gross'),
    ticket: typed.ticket,
  };
}

/** The fields of a shock, before its schema checks them. Throws DossierError `bad-value` for what has no unit. */
export function shockBody(word: string | undefined, typed: TypedFields): Record<string, unknown> {
  const what = typed.what ?? 'shock';
  if (word === undefined && what === 'shock')
    throw new DossierError('bad-value', 'not told how strong the shock was', {
      where: { field: 'peak' },
      fix: 'Give its peak, such as 5.2g, or say what else was marked: --what hard-braking.',
    });
  return {
    what,
    peak: typedAcceleration(word, 'peak'),
    threshold: typedAcceleration(typed.threshold, '--threshold'),
    milliseconds: typedDuration(typed.duration),
    axis: typed.axis,
    instrument: typed.instrument,
  };
}

/** The fields of pallets as they were found. Throws DossierError `bad-value` for rows, or a count, that are none. */
export function palletsBody(word: string | undefined, typed: TypedFields): Record<string, unknown> {
  const rows = typed.rows === undefined ? undefined : parseRowSpan(typed.rows);
  if (typed.rows !== undefined && rows === undefined)
    throw new DossierError('bad-value', `"${typed.rows}" are not rows`, {
      where: { field: '--rows' },
      fix: 'Count from the nose and write them like 7-8 or 7.',
    });
  const count = typed.count === undefined ? undefined : Number(typed.count);
  if (count !== undefined && !(Number.isInteger(count) && count > 0))
    throw new DossierError('bad-value', `"${typed.count}" is not a count of pallets`, {
      where: { field: '--count' },
      fix: 'Write a whole number, such as 2.',
    });
  const photos = typeof typed.photo === 'string' ? [typed.photo] : typed.photo;
  return { state: word, rows, count, note: typed.note, documents: photos };
}

/** A weight with its unit. Throws DossierError `bad-value`. */
export function typedWeight(text: string | undefined, field: string): Weight | undefined {
  const read = text === undefined ? undefined : parseWeight(text);
  if (text === undefined || read !== undefined) return read;
  const bare = /^[\d.,]+$/.test(text.trim());
  throw new DossierError(
    'bad-value',
    bare ? `nothing says whether ${text} is in lb or kg` : `"${text}" is not a weight`,
    {
      where: { field },
      fix: bare ? `Write ${text}lb or ${text}kg.` : 'Write it like 11,840lb, 5370kg or 5.37t.',
      ...(bare ? { choices: [`${text}lb`, `${text}kg`] } : {}),
    },
  );
}

function typedAcceleration(text: string | undefined, field: string): Acceleration | undefined {
  const read = text === undefined ? undefined : parseAcceleration(text);
  if (text === undefined || read !== undefined) return read;
  const bare = /^[+\-−]?[\d.,]+$/.test(text.trim());
  throw new DossierError(
    'bad-value',
    bare ? `nothing says in what unit ${text} is` : `"${text}" is not an acceleration that a load can have`,
    {
      where: { field },
      fix: 'Write it with its unit: 5.2g, 51m/s², 8.1mph/s.',
      ...(bare ? { choices: [`${text}g`, `${text}m/s²`] } : {}),
    },
  );
}

function typedDuration(text: string | undefined): number | undefined {
  const read = text === undefined ? undefined : parseMilliseconds(text);
  if (text === undefined || read !== undefined) return read;
  throw new DossierError('bad-value', `"${text}" is not how long a shock lasts`, {
    where: { field: '--duration' },
    fix: 'Write it like 11ms or 0.4s.',
  });
}

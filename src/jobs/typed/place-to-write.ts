import { realpath } from 'node:fs/promises';
import { basename, dirname, join, resolve, sep } from 'node:path';
import { DossierError } from '../../core/model/error.js';
import { CHECKPOINT, INTENT, LEDGER, ORIGINALS } from '../../record/commit.js';
import { DELIVERY_FILE } from '../delivery.js';

/** Files of a record that nothing may overwrite. */
const OWN = [LEDGER, CHECKPOINT, INTENT, DELIVERY_FILE];

/**
 * The real path of a file to be written, with links followed. Throws DossierError `bad-usage` for a file of the
 * delivery's record or a path among its originals.
 * @param field the option it was given by
 */
export async function placeToWrite(to: string, delivery: string, field: string): Promise<string> {
  const file = join(await followed(dirname(resolve(to))), basename(to));
  const record = await followed(resolve(delivery));
  const within = `${file}${sep}`.startsWith(`${join(record, ORIGINALS)}${sep}`);
  if (!within && !OWN.some((name) => file === join(record, name))) return file;
  throw new DossierError('bad-usage', 'that is part of the record, which nothing is written over', {
    where: { file: to, field },
    fix: `Name another file with ${field}.`,
  });
}

/** The folder's real path; of a missing one, as far as it exists. */
async function followed(folder: string): Promise<string> {
  try {
    return await realpath(folder);
  } catch {
    const above = dirname(folder);
    return above === folder ? folder : join(await followed(above), basename(folder));
  }
}

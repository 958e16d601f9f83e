import { realpath } from 'node:fs/promises';
import { basename, dirname, join, resolve, sep } from 'node:path';
import { DossierError } from '../core/model/error.js';
import { CHECKPOINT, INTENT, LEDGER, ORIGINALS } from '../record/commit.js';
import { DELIVERY_FILE } from './delivery.js';

/** Files of a record that nothing else may be written over. */
const OWN = [LEDGER, CHECKPOINT, INTENT, DELIVERY_FILE];

/**
 * The whole path of a file that a person named to be written, links on the way followed.
 * Throws DossierError `bad-usage` when it is a file of the delivery's record or lies among its originals.
 * @param field the option that it was named by
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

/** The folder without links; of one that is not there yet, as far as it is. */
async function followed(folder: string): Promise<string> {
  try {
    return await realpath(folder);
  } catch {
    const above = dirname(folder);
    return above === folder ? folder : join(await followed(above), basename(folder));
  }
}

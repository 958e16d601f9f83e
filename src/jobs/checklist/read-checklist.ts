import { readFile, stat } from 'node:fs/promises';
import { DossierError } from '../../core/model/error.js';
import { unreadable } from '../../record/disk/disk-error.js';

const MOST_BYTES = 256 * 1024;

/** The bytes of a typed checklist. @throws DossierError unreadable-file */
export async function readChecklist(file: string): Promise<Uint8Array> {
  try {
    const { size } = await stat(file);
    if (size <= MOST_BYTES) return await readFile(file);
  } catch (cause) {
    throw unreadable(file, cause);
  }
  throw new DossierError('unreadable-file', 'it is too long for a typed checklist', { where: { file } });
}

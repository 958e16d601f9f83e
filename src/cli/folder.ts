import { existsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { DossierError } from '../core/model/error.js';

/** The delivery folder: the one given, or the nearest parent folder that holds a delivery.yaml. */
export function deliveryFolder(given: string | undefined, from = process.cwd()): string {
  if (given !== undefined) {
    const folder = resolve(from, given);
    if (!existsSync(join(folder, 'delivery.yaml')))
      throw new DossierError('bad-usage', 'there is no delivery.yaml in this folder', {
        where: { file: given },
        fix: 'Name a delivery folder, or make one with: dossier new FOLDER',
      });
    return folder;
  }
  for (let folder = from; ; folder = dirname(folder)) {
    if (existsSync(join(folder, 'delivery.yaml'))) return folder;
    if (folder === dirname(folder))
      throw new DossierError('bad-usage', 'no delivery folder here or above', {
        fix: 'Go into a delivery folder, or name it with: -d FOLDER',
      });
  }
}

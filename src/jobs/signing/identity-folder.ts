import { homedir } from 'node:os';
import { join } from 'node:path';

/** The folder of the signing identity: the one given, DOSSIER_IDENTITY, or `.config/load-dossier` at home. */
export function identityFolder(given: string | undefined): string {
  return given ?? process.env.DOSSIER_IDENTITY ?? join(homedir(), '.config', 'load-dossier');
}

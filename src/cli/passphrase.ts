import { readFileSync } from 'node:fs';
import { DossierError } from '../model/error.js';
import { askSecret, canAsk } from './prompts.js';

/**
 * The passphrase of the signing key: from a file, from DOSSIER_PASSPHRASE, or asked for.
 * Never from the command line, where every user of the machine could read it.
 * @param isNew a new identity is about to be made, so it is asked for twice
 */
export async function readPassphrase(file: string | undefined, isNew: boolean): Promise<string> {
  if (file !== undefined) return fromFile(file);
  const set = process.env.DOSSIER_PASSPHRASE;
  if (set !== undefined && set !== '') return set;
  if (!canAsk())
    throw new DossierError(
      'identity',
      'the passphrase of the signing key is needed, and there is no terminal to ask on',
      {
        fix: 'Give --passphrase-file FILE, or set DOSSIER_PASSPHRASE.',
      },
    );
  const first = await askSecret(
    isNew ? 'Passphrase for your new signing identity' : 'Passphrase of your signing identity',
  );
  if (!isNew) return first;
  if (first.length < 8)
    throw new DossierError('identity', 'the passphrase is too short', { fix: 'Use at least 8 characters.' });
  if ((await askSecret('The same again')) !== first)
    throw new DossierError('identity', 'the two passphrases differ', { fix: 'Run the command again.' });
  return first;
}

function fromFile(file: string): string {
  try {
    return readFileSync(file, 'utf8').replace(/\r?\n$/, '');
  } catch (cause) {
    throw new DossierError('identity', 'the passphrase file cannot be read', { where: { file }, cause });
  }
}

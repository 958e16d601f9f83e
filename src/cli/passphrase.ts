import { readFileSync } from 'node:fs';
import { DossierError } from '../core/model/error.js';
import { isInteractive, promptSecret } from './prompts.js';

/** Source of the signing key's passphrase, from the command line. */
export interface PassphraseOptions {
  passphraseFile?: string | undefined;
  /** Number of an open file descriptor. */
  passphraseFd?: string | undefined;
}

/** A longer text is the wrong file, not a passphrase. */
const LONGEST = 4096;

/**
 * The passphrase of the signing key: from a file, from an open file descriptor, from DOSSIER_PASSPHRASE, or
 * prompted for. Never from the command line, where every user of the machine could read it.
 * @param isNew for a new identity it is prompted for twice
 */
export async function readPassphrase(
  from: PassphraseOptions | string | undefined,
  isNew: boolean,
): Promise<string> {
  const { passphraseFile, passphraseFd } = typeof from === 'object' ? from : { passphraseFile: from };
  if (passphraseFile !== undefined) return fromFile(passphraseFile);
  if (passphraseFd !== undefined) return fromDescriptor(passphraseFd);
  const set = process.env.DOSSIER_PASSPHRASE;
  if (set !== undefined && set !== '') return set;
  if (!isInteractive())
    throw new DossierError(
      'identity',
      'the passphrase of the signing key is needed, and there is no terminal to ask on',
      {
        fix: 'Give --passphrase-file FILE or --passphrase-fd NUMBER, or set DOSSIER_PASSPHRASE.',
      },
    );
  return isNew ? newPassphrase() : promptSecret('Passphrase of your signing identity');
}

/** Prompted for twice, and anew once when it is too short or the two differ. */
async function newPassphrase(): Promise<string> {
  const { requirePassphrase } = await import('../signing/identity-material.js');
  for (let tries = 1; ; tries += 1)
    try {
      const first = await promptSecret('Passphrase for your new signing identity');
      requirePassphrase(first);
      if ((await promptSecret('The same again')) === first) return first;
      throw new DossierError('identity', 'The two passphrases differ.', { fix: 'Run the command again.' });
    } catch (error) {
      if (!(error instanceof DossierError) || error.code !== 'identity' || tries === 2) throw error;
      process.stderr.write(`${error.message} Once more.\n`);
    }
}

async function fromFile(file: string): Promise<string> {
  try {
    return cleaned(readFileSync(file, 'utf8'));
  } catch (cause) {
    if (cause instanceof DossierError) throw cause;
    const { unreadable } = await import('../record/disk/disk-error.js');
    throw unreadable(file, cause, 'identity', 'Name the file that holds the passphrase on one line.');
  }
}

function fromDescriptor(text: string): string {
  if (!/^\d{1,4}$/.test(text))
    throw new DossierError('bad-usage', '--passphrase-fd takes the number of an open file descriptor', {
      fix: 'Such as: dossier build --passphrase-fd 3 3< FILE',
    });
  try {
    return cleaned(readFileSync(Number(text), 'utf8'));
  } catch (cause) {
    if (cause instanceof DossierError) throw cause;
    throw new DossierError('identity', `file descriptor ${text} cannot be read`, {
      fix: 'Open it in the shell, such as: dossier build --passphrase-fd 3 3< FILE',
      cause,
    });
  }
}

function cleaned(text: string): string {
  const passphrase = text.replace(/\r?\n$/, '');
  if (passphrase === '' || passphrase.length > LONGEST || /[\r\n]/.test(passphrase))
    throw new DossierError('identity', 'what was given does not hold one passphrase on one line');
  return passphrase;
}

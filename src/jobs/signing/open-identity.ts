import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { CERTIFICATE_FILE, type Identity, loadIdentity, makeIdentity } from '../../signing/identity.js';
import { passphraseStrength, strengthWords } from '../../signing/passphrase-strength.js';
import type { IdentityInput } from '../identity.js';
import { identityFolder } from './identity-folder.js';

/** The signing identity, made on first use. Throws DossierError `identity` when it can't be had. */
export async function openIdentity(input: IdentityInput): Promise<{ identity: Identity; notices: string[] }> {
  const folder = identityFolder(input.folder);
  if (existsSync(join(folder, CERTIFICATE_FILE))) {
    const { identity, warnings } = await loadIdentity(folder, await input.passphrase(false), input.now());
    return { identity, notices: warnings };
  }
  const passphrase = await input.passphrase(true);
  const identity = await makeIdentity(folder, {
    name: input.name,
    passphrase,
    now: input.now(),
    random: (count) => randomBytes(count),
  });
  return {
    identity,
    notices: [
      `Made a signing identity in ${folder}. Give ${CERTIFICATE_FILE} to those who should know your signature; keep the key and its passphrase to yourself, with a copy of both in a safe place.`,
      `Your passphrase ${strengthWords(passphraseStrength(passphrase))}.`,
    ],
  };
}

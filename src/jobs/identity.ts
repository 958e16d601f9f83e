import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { CERTIFICATE_FILE, type Identity, loadIdentity, makeIdentity } from '../seal/identity.js';

export interface IdentityInput {
  folder: string | undefined;
  /** Name for a new certificate. */
  name: string;
  now: () => Date;
  passphrase: (isNew: boolean) => Promise<string>;
}

/** The folder of the signing identity: the one given, DOSSIER_IDENTITY, or `.config/load-dossier` at home. */
export function identityFolder(given: string | undefined): string {
  return given ?? process.env.DOSSIER_IDENTITY ?? join(homedir(), '.config', 'load-dossier');
}

/** The signing identity, made on first use. Throws DossierError `identity` when it can't be had. */
export async function openIdentity(input: IdentityInput): Promise<{ identity: Identity; notices: string[] }> {
  const folder = identityFolder(input.folder);
  if (existsSync(join(folder, CERTIFICATE_FILE))) {
    const { identity, warnings } = await loadIdentity(folder, await input.passphrase(false), input.now());
    return { identity, notices: warnings };
  }
  const identity = await makeIdentity(folder, {
    name: input.name,
    passphrase: await input.passphrase(true),
    now: input.now(),
    random: (count) => randomBytes(count),
  });
  return {
    identity,
    notices: [
      `Made a signing identity in ${folder}. Give ${CERTIFICATE_FILE} to those who should know your signature; keep the key and its passphrase to yourself.`,
    ],
  };
}

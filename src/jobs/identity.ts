import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { Clock } from '../core/ports/clock.js';
import { CERTIFICATE_FILE, makeIdentity } from '../signing/identity.js';
import { makeIdentityBeside, renewIdentity, useIdentity } from '../signing/identity-change.js';
import { type PassphraseStrength, passphraseStrength } from '../signing/passphrase-strength.js';
import { type ShownIdentity, showIdentity } from '../signing/show-identity.js';
import type { Succession } from '../signing/succession.js';

import { identityFolder } from './signing/identity-folder.js';

export type { PassphraseStrength } from '../signing/passphrase-strength.js';
export type { ShownIdentity } from '../signing/show-identity.js';
export type { Succession } from '../signing/succession.js';

/** A signing identity to be made. */
export interface IdentityInput {
  folder: string | undefined;
  /** Name for a new certificate. */
  name: string;
  now: Clock;
  /** Gives the passphrase of the key, or the one for a key that is about to be made. */
  passphrase: (isNew: boolean) => Promise<string>;
}

/** The new or imported identity, and what its owner should do now. */
export interface IdentityReport extends ShownIdentity {
  certificateFile: string;
  /** The replaced certificate, kept for earlier dossiers. */
  oldCertificate?: string;
  /** Where the old key says, signed, that the new one follows it. */
  succession?: Succession;
  /** Of the passphrase that protects the key from now on. */
  passphrase?: PassphraseStrength;
}

/**
 * Makes an identity.
 * @param input with `beside` also where there is one, whose files are kept under other names
 * Throws DossierError `identity` when there is one already, or the name or the passphrase is unusable.
 */
export async function makeNewIdentity(input: IdentityInput & { beside?: boolean }): Promise<IdentityReport> {
  const folder = identityFolder(input.folder);
  const there = existsSync(join(folder, CERTIFICATE_FILE));
  const refused = there && input.beside !== true;
  // Rejected anyway when an identity exists, before the passphrase is prompted for.
  const passphrase = refused ? 'there is one already' : await input.passphrase(true);
  const wanted = {
    name: input.name,
    passphrase,
    now: input.now(),
    random: (count: number) => randomBytes(count),
  };
  const strength = { passphrase: passphraseStrength(passphrase) };
  if (there && !refused) {
    const { oldCertificate } = await makeIdentityBeside(folder, wanted);
    return { ...(await report(folder, oldCertificate)), ...strength };
  }
  await makeIdentity(folder, wanted);
  return { ...(await report(folder)), ...strength };
}

/** Imports a key with its certificates: PKCS#12, or PEM in one file or several. Throws DossierError `identity`. */
export async function useGivenIdentity(
  input: Omit<IdentityInput, 'name'> & { files: readonly string[]; replace: boolean },
): Promise<IdentityReport> {
  const folder = identityFolder(input.folder);
  const passphrase = await input.passphrase(false);
  const { oldCertificate } = await useIdentity(folder, {
    files: input.files,
    passphrase,
    now: input.now(),
    replace: input.replace,
  });
  return { ...(await report(folder, oldCertificate)), passphrase: passphraseStrength(passphrase) };
}

/** A new key and certificate of the same name. Throws DossierError `identity` for one that an authority issued. */
export async function renewOwnIdentity(input: Omit<IdentityInput, 'name'>): Promise<IdentityReport> {
  const folder = identityFolder(input.folder);
  await showIdentity(folder);
  const passphrase = await input.passphrase(false);
  const { oldCertificate, succession } = await renewIdentity(folder, {
    passphrase,
    now: input.now(),
    random: (count) => randomBytes(count),
  });
  return {
    ...(await report(folder, oldCertificate)),
    succession,
    passphrase: passphraseStrength(passphrase),
  };
}

/** The certificate's contents; needs no passphrase. Throws DossierError `identity` when there is none. */
export async function showOwnIdentity(folder: string | undefined): Promise<IdentityReport> {
  return report(identityFolder(folder));
}

async function report(folder: string, old?: string): Promise<IdentityReport> {
  return {
    ...(await showIdentity(folder)),
    certificateFile: join(folder, CERTIFICATE_FILE),
    ...omitUndefined({ oldCertificate: old === undefined ? undefined : join(folder, old) }),
  };
}

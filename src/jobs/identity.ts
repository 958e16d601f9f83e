import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { Clock } from '../core/ports/clock.js';
import { CERTIFICATE_FILE, makeIdentity } from '../signing/identity.js';
import { renewIdentity, useIdentity } from '../signing/identity-change.js';
import { type ShownIdentity, showIdentity } from '../signing/show-identity.js';

import { identityFolder } from './identity-folder.js';

export type { ShownIdentity } from '../signing/show-identity.js';

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
}

/** Makes an identity. Throws DossierError `identity` when there is one already, or the name is unusable. */
export async function makeNewIdentity(input: IdentityInput): Promise<IdentityReport> {
  const folder = identityFolder(input.folder);
  const there = existsSync(join(folder, CERTIFICATE_FILE));
  await makeIdentity(folder, {
    name: input.name,
    // Rejected anyway when an identity exists, before the passphrase is prompted for.
    passphrase: there ? 'there is one already' : await input.passphrase(true),
    now: input.now(),
    random: (count) => randomBytes(count),
  });
  return report(folder);
}

/** Imports a key with its certificates: PKCS#12, or PEM in one file or several. Throws DossierError `identity`. */
export async function useGivenIdentity(
  input: Omit<IdentityInput, 'name'> & { files: readonly string[]; replace: boolean },
): Promise<IdentityReport> {
  const folder = identityFolder(input.folder);
  const { oldCertificate } = await useIdentity(folder, {
    files: input.files,
    passphrase: await input.passphrase(false),
    now: input.now(),
    replace: input.replace,
  });
  return report(folder, oldCertificate);
}

/** A new key and certificate of the same name. Throws DossierError `identity` for one that an authority issued. */
export async function renewOwnIdentity(input: Omit<IdentityInput, 'name'>): Promise<IdentityReport> {
  const folder = identityFolder(input.folder);
  await showIdentity(folder);
  const { oldCertificate } = await renewIdentity(folder, {
    passphrase: await input.passphrase(false),
    now: input.now(),
    random: (count) => randomBytes(count),
  });
  return report(folder, oldCertificate);
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

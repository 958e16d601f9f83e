import { existsSync } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { DossierError } from '../core/model/error.js';
import { type NewIdentity, newIdentity, openIdentityFiles } from './identity.js';
import { CERTIFICATE_FILE, keepKey, replaceIdentity, writeNewIdentity } from './identity-folder.js';
import {
  type Identity,
  identityFrom,
  readCertificates,
  readKey,
  requirePassphrase,
  requireSigningUse,
  requireValid,
} from './identity-material.js';
import type { Pkcs12Contents } from './pkcs12.js';
import { sealKey } from './sealed-key.js';
import { showIdentity } from './show-identity.js';
import { type Succession, writeSuccession } from './succession.js';

/** Bytes that a given file may have; a key with its chain takes a few thousand. */
const LARGEST_GIVEN = 1024 * 1024;

/** Files that somebody else made: PKCS#12, or PEM with key and certificates in one file or several. */
export interface GivenIdentity {
  files: readonly string[];
  /** Opens the given files, and protects the key from now on. */
  passphrase: string;
  now: Date;
  /** Whether it replaces an identity that the folder holds. */
  replace: boolean;
}

/**
 * Takes a given key with its certificates into the folder.
 * @throws DossierError identity when the files do not hold one key with its certificate, the passphrase is wrong
 *   or too short, or the certificate is expired, not yet valid or not for signing; disk
 */
export async function useIdentity(
  folder: string,
  given: GivenIdentity,
): Promise<{ identity: Identity; oldCertificate?: string }> {
  const file = given.files.join(', ');
  const { key, certificates } = await openGiven(given, file);
  const { identity, certificate, chain } = identityFrom(key, certificates, file);
  requireSigningUse(certificate, file);
  requireValid(certificate, given.now, file);
  requirePassphrase(given.passphrase);
  const files = {
    certificates: [certificate, ...chain].map((one) => one.toString()).join(''),
    key: await sealKey(key, given.passphrase),
  };
  if (!given.replace || !existsSync(join(folder, CERTIFICATE_FILE))) {
    await writeNewIdentity(folder, files);
    return { identity };
  }
  const oldCertificate = await nameForOld(folder);
  await replaceIdentity(folder, files, oldCertificate);
  return { identity, oldCertificate };
}

async function openGiven({ files, passphrase }: GivenIdentity, file: string): Promise<Pkcs12Contents> {
  const contents = await Promise.all(files.map(readGiven));
  const texts = contents.map((bytes) => bytes.toString('latin1'));
  const [only] = contents;
  if (only !== undefined && contents.length === 1 && !texts.some((text) => text.includes('-----BEGIN'))) {
    const { readPkcs12 } = await import('./pkcs12.js');
    return readPkcs12(only, passphrase, file);
  }
  const pem = texts.join('\n');
  const block = /-----BEGIN ([A-Z ]*)PRIVATE KEY-----[\s\S]*?-----END \1PRIVATE KEY-----/.exec(pem)?.[0];
  if (block === undefined)
    throw new DossierError('identity', 'There is no private key in what was given.', {
      where: { file },
      fix: 'Give a PKCS#12 file, or the PEM files of key and certificates together.',
    });
  return { key: await readKey(block, passphrase, file), certificates: readCertificates(pem, file) };
}

async function readGiven(file: string): Promise<Buffer> {
  try {
    const { size } = await stat(file);
    if (size > LARGEST_GIVEN)
      throw new DossierError('identity', 'This file is too large for a key and its certificates.', {
        where: { file },
      });
    return await readFile(file);
  } catch (cause) {
    if (cause instanceof DossierError) throw cause;
    throw new DossierError('identity', 'This file cannot be read.', { where: { file }, cause });
  }
}

/**
 * A new key and certificate for the same name, in the place of the old ones, with a statement that the old key signed.
 * @throws DossierError identity when an authority issued the old certificate, or its passphrase is wrong; disk
 */
export async function renewIdentity(
  folder: string,
  wanted: Omit<NewIdentity, 'name'>,
): Promise<{ identity: Identity; oldCertificate: string; succession: Succession }> {
  const { identity: from, certificate } = await openIdentityFiles(folder, wanted.passphrase);
  // Only a self-signed certificate is renewed here; one from an authority is renewed by that authority.
  if (certificate.issuer !== certificate.subject || !certificate.verify(certificate.publicKey))
    throw new DossierError('identity', 'This certificate was issued by an authority and is renewed there.', {
      where: { file: join(folder, CERTIFICATE_FILE) },
      fix: 'Ask the issuer for a new one, then: dossier identity use FILE --replace',
    });
  const { commonNameOf } = await import('./certificate.js');
  const name = commonNameOf(new Uint8Array(certificate.raw));
  const { identity, files } = await newIdentity({ ...wanted, name, renewed: true });
  // The statement is signed before the old key is removed; afterwards it could not be.
  const succession = await writeSuccession(folder, { from, to: identity, now: wanted.now });
  const oldCertificate = await nameForOld(folder);
  await replaceIdentity(folder, files, oldCertificate);
  return { identity, oldCertificate, succession };
}

/**
 * A new key and certificate beside an old pair whose passphrase is lost: the old files stay under names of their own.
 * @throws DossierError identity when name or passphrase is unusable; disk
 */
export async function makeIdentityBeside(
  folder: string,
  wanted: NewIdentity,
): Promise<{ identity: Identity; oldCertificate: string }> {
  const { identity, files } = await newIdentity(wanted);
  const oldCertificate = await nameForOld(folder);
  await keepKey(folder, oldCertificate.replace('.crt.pem', '.key.pem'));
  await replaceIdentity(folder, files, oldCertificate);
  return { identity, oldCertificate };
}

/** A file name for an old certificate, unique by its expiry and hash: `identity-until-2031-07-14-1a2b3c4d.crt.pem`. */
async function nameForOld(folder: string): Promise<string> {
  const { certificateSha256, validTo } = await showIdentity(folder);
  return `identity-until-${validTo.slice(0, 10)}-${certificateSha256.slice(0, 8)}.crt.pem`;
}

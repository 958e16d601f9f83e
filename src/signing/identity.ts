import { generateKeyPairSync, type KeyObject, X509Certificate } from 'node:crypto';
import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { DossierError } from '../core/model/error.js';
import {
  CERTIFICATE_FILE,
  type IdentityFiles,
  KEY_FILE,
  nextCertificates,
  readIdentityFiles,
  replaceKey,
  takeNextCertificates,
  writeNewIdentity,
} from './identity-folder.js';
import {
  type Identity,
  identityFrom,
  readCertificates,
  readKey,
  requirePassphrase,
  requireSigningUse,
  requireValid,
} from './identity-material.js';
import { isStronglySealed } from './sealed-form.js';

export { CERTIFICATE_FILE, KEY_FILE } from './identity-folder.js';
export type { Identity } from './identity-material.js';

const VALID_YEARS = 5;

export interface NewIdentity {
  name: string;
  passphrase: string;
  now: Date;
  /** Whether the passphrase has protected a key before: a short one is not refused then. */
  renewed?: true;
  /** `count` random bytes; the key itself always comes from the system's generator. */
  random: (count: number) => Uint8Array;
}

/**
 * Makes a P-256 key and a self-signed certificate valid for five years, and writes both to the folder:
 * the key encrypted with the passphrase (`sealKey`), readable by its owner alone.
 * @throws DossierError identity when there is one already, or name or passphrase is unusable; disk
 */
export async function makeIdentity(folder: string, wanted: NewIdentity): Promise<Identity> {
  const { identity, files } = await newIdentity(wanted);
  await writeNewIdentity(folder, files);
  return identity;
}

/** Makes a key and certificate in memory. @throws DossierError identity when name or passphrase is unusable */
export async function newIdentity(
  wanted: NewIdentity,
): Promise<{ identity: Identity; files: IdentityFiles }> {
  const name = wanted.name.normalize('NFC').trim();
  if (name === '' || [...name].length > 64 || /\p{Cc}/u.test(name))
    throw new DossierError('identity', 'The name for the certificate must have 1 to 64 plain characters.', {
      where: { field: 'name' },
    });
  if (wanted.renewed !== true) requirePassphrase(wanted.passphrase);
  const { publicKey, privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const notBefore = new Date(Math.floor(wanted.now.getTime() / 1000) * 1000);
  const notAfter = new Date(notBefore);
  notAfter.setUTCFullYear(notAfter.getUTCFullYear() + VALID_YEARS);
  const [{ selfSigned }, { sealKey }] = await Promise.all([
    import('./certificate.js'),
    import('./sealed-key.js'),
  ]);
  const serial = wanted.random(16);
  const der = selfSigned({ name, publicKey, privateKey, notBefore, notAfter, serial });
  const certificate = new X509Certificate(der);
  const { identity } = identityFrom(privateKey, [certificate], KEY_FILE);
  return {
    identity,
    files: { certificates: certificate.toString(), key: await sealKey(privateKey, wanted.passphrase) },
  };
}

/**
 * Reads an identity back, and the warnings that its owner should see.
 * @throws DossierError identity when a file is missing or unreadable, the passphrase is wrong, the key does
 *   not fit the certificate or is of an unusable kind, or the certificate is not for signing or not valid at `now`
 */
export async function loadIdentity(
  folder: string,
  passphrase: string,
  now: Date,
): Promise<{ identity: Identity; warnings: string[] }> {
  const { identity, certificate, warnings } = await openIdentityFiles(folder, passphrase);
  const file = join(folder, CERTIFICATE_FILE);
  requireSigningUse(certificate, file);
  requireValid(certificate, now, file);
  return { identity, warnings };
}

/** Reads an identity whose certificate may have expired. */
export async function openIdentityFiles(folder: string, passphrase: string) {
  const files = await readIdentityFiles(folder);
  const keyFile = join(folder, KEY_FILE);
  const certificates = readCertificates(files.certificates, join(folder, CERTIFICATE_FILE));
  const key = await readKey(files.key, passphrase, keyFile);
  const next = certificates.some((one) => one.checkPrivateKey(key))
    ? undefined
    : await nextCertificates(folder);
  // A renewal that was cut off between its two steps left the right certificate beside the wrong one.
  const fitting = next === undefined ? certificates : readCertificates(next, folder);
  const found = identityFrom(key, fitting, keyFile);
  if (next !== undefined) await takeNextCertificates(folder);
  const { mode } = await stat(keyFile);
  const open = process.platform !== 'win32' && (mode & 0o077) !== 0;
  const warnings = open
    ? [
        `${keyFile} can be read by other users (mode ${(mode & 0o777).toString(8)}); run: chmod 600 ${keyFile}`,
      ]
    : [];
  return { ...found, warnings: [...warnings, ...(await resealed(folder, files.key, key, passphrase))] };
}

/** Seals a key file of an earlier version anew; what its owner should know of that. */
async function resealed(folder: string, pem: string, key: KeyObject, passphrase: string): Promise<string[]> {
  if (isStronglySealed(pem)) return [];
  const { sealKey } = await import('./sealed-key.js');
  const file = join(folder, KEY_FILE);
  try {
    await replaceKey(folder, await sealKey(key, passphrase));
    return [
      `${file} was sealed anew, more strongly; the passphrase is the same. Copies of the old file stay weaker.`,
    ];
  } catch (error) {
    if (!(error instanceof DossierError)) throw error;
    return [`${file} is sealed weakly, and could not be sealed anew: the folder cannot be written.`];
  }
}

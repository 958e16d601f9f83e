import {
  createHash,
  createPrivateKey,
  generateKeyPairSync,
  type KeyObject,
  X509Certificate,
} from 'node:crypto';
import { mkdir, open, readFile, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { DossierError } from '../model/error.js';
import { keyKind } from './asn1.js';

export const CERTIFICATE_FILE = 'identity.crt.pem';
export const KEY_FILE = 'identity.key.pem';
const VALID_YEARS = 5;

/** Who signs: a certificate and the private key that fits it. */
export interface Identity {
  certificateDer: Uint8Array;
  /** Lower-case hex. */
  certificateSha256: string;
  /** As the certificate writes it, such as `CN=Harrow Creek Transport`. */
  subject: string;
  key: KeyObject;
}

export interface NewIdentity {
  name: string;
  passphrase: string;
  now: Date;
  /** `count` random bytes; the key itself always comes from the system's generator. */
  random: (count: number) => Uint8Array;
}

/**
 * Makes a P-256 key and a self-signed certificate valid for five years, and writes both to the folder:
 * the key encrypted with the passphrase (PKCS#8, AES-256), readable by its owner alone.
 * @throws DossierError identity when there is one already, or name or passphrase is unusable; disk
 */
export async function makeIdentity(folder: string, wanted: NewIdentity): Promise<Identity> {
  const name = wanted.name.normalize('NFC').trim();
  if (name === '' || [...name].length > 64 || /\p{Cc}/u.test(name))
    throw new DossierError('identity', 'The name for the certificate must have 1 to 64 plain characters.', {
      where: { field: 'name' },
    });
  if (wanted.passphrase.length < 8)
    throw new DossierError('identity', 'The passphrase is too short.', {
      where: { field: 'passphrase' },
      fix: 'Use at least 8 characters; several words are better.',
    });
  const { publicKey, privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const notBefore = new Date(Math.floor(wanted.now.getTime() / 1000) * 1000);
  const notAfter = new Date(notBefore);
  notAfter.setUTCFullYear(notAfter.getUTCFullYear() + VALID_YEARS);
  const { selfSigned } = await import('./certificate.js');
  const serial = wanted.random(16);
  const der = selfSigned({ name, publicKey, privateKey, notBefore, notAfter, serial });
  const certificate = new X509Certificate(der);
  const keyPem = privateKey.export({
    type: 'pkcs8',
    format: 'pem',
    cipher: 'aes-256-cbc',
    passphrase: wanted.passphrase,
  });
  await mkdir(folder, { recursive: true, mode: 0o700 }).catch(disk(folder));
  await writeNew(join(folder, KEY_FILE), keyPem.toString());
  try {
    await writeNew(join(folder, CERTIFICATE_FILE), certificate.toString());
  } catch (error) {
    // A key without its certificate would block the next try.
    await rm(join(folder, KEY_FILE), { force: true });
    throw error;
  }
  return identityOf(certificate, privateKey);
}

/**
 * Reads an identity back, and the warnings that its owner should see.
 * @throws DossierError identity when a file is missing or unreadable, the passphrase is wrong, the key does
 *   not fit the certificate or is of an unusable kind, or the certificate is not valid at `now`
 */
export async function loadIdentity(
  folder: string,
  passphrase: string,
  now: Date,
): Promise<{ identity: Identity; warnings: string[] }> {
  const certificateFile = join(folder, CERTIFICATE_FILE);
  const keyFile = join(folder, KEY_FILE);
  const certificate = readCertificate(await readIdentityFile(certificateFile), certificateFile);
  const key = readKey(await readIdentityFile(keyFile), passphrase, keyFile);
  if (!certificate.checkPrivateKey(key))
    throw new DossierError('identity', 'The private key does not belong to the certificate.', {
      where: { file: keyFile },
      fix: 'Put the matching pair into the folder, or make a new identity in another folder.',
    });
  if (keyKind(key) === undefined)
    throw new DossierError('identity', 'This kind of key is not used for signing here.', {
      where: { file: keyFile },
      fix: 'Use an EC key on P-256 or P-384, or an RSA key of 2048 to 4096 bits.',
    });
  requireValid(certificate, now, certificateFile);
  const { mode } = await stat(keyFile);
  const open = process.platform !== 'win32' && (mode & 0o077) !== 0;
  const warnings = open
    ? [
        `${keyFile} can be read by other users (mode ${(mode & 0o777).toString(8)}); run: chmod 600 ${keyFile}`,
      ]
    : [];
  return { identity: identityOf(certificate, key), warnings };
}

function identityOf(certificate: X509Certificate, key: KeyObject): Identity {
  const certificateDer = new Uint8Array(certificate.raw);
  return {
    certificateDer,
    certificateSha256: createHash('sha256').update(certificateDer).digest('hex'),
    subject: certificate.subject.replaceAll('\n', ', '),
    key,
  };
}

function readCertificate(pem: string, file: string): X509Certificate {
  try {
    return new X509Certificate(pem);
  } catch (cause) {
    throw new DossierError('identity', 'This is not a certificate in PEM form.', { where: { file }, cause });
  }
}

function readKey(pem: string, passphrase: string, file: string): KeyObject {
  try {
    return createPrivateKey({ key: pem, format: 'pem', passphrase });
  } catch {
    // The cause is left out on purpose: library messages may quote what they were given.
    const encrypted = pem.includes('ENCRYPTED');
    throw new DossierError(
      'identity',
      encrypted ? 'The passphrase does not open the private key.' : 'The private key cannot be read.',
      { where: { file }, ...(encrypted ? { fix: 'Check the passphrase and try again.' } : {}) },
    );
  }
}

function requireValid(certificate: X509Certificate, now: Date, file: string): void {
  const from = new Date(certificate.validFrom);
  const to = new Date(certificate.validTo);
  if (now < from)
    throw new DossierError('identity', `The certificate is valid only from ${from.toISOString()}.`, {
      where: { file },
      fix: 'Check the date of this machine.',
    });
  if (now > to)
    throw new DossierError('identity', `The certificate ran out on ${to.toISOString()}.`, {
      where: { file },
      fix: 'Make a new identity in another folder, and send its certificate to those who check your dossiers.',
    });
}

async function readIdentityFile(file: string): Promise<string> {
  try {
    return await readFile(file, 'utf8');
  } catch (cause) {
    throw new DossierError('identity', 'There is no identity here, or it cannot be read.', {
      where: { file },
      fix: 'Make one with: dossier identity make',
      cause,
    });
  }
}

async function writeNew(file: string, text: string): Promise<void> {
  try {
    const handle = await open(file, 'wx', 0o600);
    try {
      await handle.writeFile(text);
      await handle.sync();
    } finally {
      await handle.close();
    }
  } catch (cause) {
    if (cause instanceof Error && 'code' in cause && cause.code === 'EEXIST')
      throw new DossierError('identity', 'There is an identity here already; it is not overwritten.', {
        where: { file },
        fix: 'Use it, or make the new one in another folder.',
        cause,
      });
    disk(file)(cause);
  }
}

function disk(file: string): (cause: unknown) => never {
  return (cause) => {
    throw new DossierError('disk', 'The identity could not be written.', { where: { file }, cause });
  };
}

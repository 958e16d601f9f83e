import { copyFile, mkdir, open, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { DossierError } from '../core/model/error.js';

export const CERTIFICATE_FILE = 'identity.crt.pem';
export const KEY_FILE = 'identity.key.pem';
const NEXT_CERTIFICATE = 'identity.next.crt.pem';
const NEXT_KEY = 'identity.next.key.pem';

/** Certificates in PEM, the signer's first, and the encrypted key in PEM. */
export interface IdentityFiles {
  certificates: string;
  key: string;
}

/** Reads certificates and encrypted key. @throws DossierError identity when a file is missing or unreadable */
export async function readIdentityFiles(folder: string): Promise<IdentityFiles> {
  return {
    certificates: await readText(join(folder, CERTIFICATE_FILE)),
    key: await readText(join(folder, KEY_FILE)),
  };
}

/** Writes a first identity. @throws DossierError identity when there is one already; disk */
export async function writeNewIdentity(folder: string, files: IdentityFiles): Promise<void> {
  await makeFolder(folder);
  await writeNew(join(folder, KEY_FILE), files.key);
  try {
    await writeNew(join(folder, CERTIFICATE_FILE), files.certificates);
  } catch (error) {
    // A key without its certificate would block the next try.
    await rm(join(folder, KEY_FILE), { force: true });
    throw error;
  }
}

/**
 * Puts a new identity in the place of the old one, whose certificate stays beside it under `keepAs`: it is what
 * earlier dossiers are checked with. The old key is gone: nothing more is to be signed with it.
 * Both new files are on the disk before the first is put in place; `finishReplacing` mends a crash in between.
 * @throws DossierError disk
 */
export async function replaceIdentity(folder: string, files: IdentityFiles, keepAs: string): Promise<void> {
  const path = (name: string) => join(folder, name);
  try {
    for (const name of [NEXT_KEY, NEXT_CERTIFICATE]) await rm(path(name), { force: true });
    await writeNew(path(NEXT_KEY), files.key);
    await writeNew(path(NEXT_CERTIFICATE), files.certificates);
    await writeFile(path(keepAs), await readFile(path(CERTIFICATE_FILE)), { mode: 0o600 });
    await rename(path(NEXT_KEY), path(KEY_FILE));
    await rename(path(NEXT_CERTIFICATE), path(CERTIFICATE_FILE));
  } catch (error) {
    if (error instanceof DossierError) throw error;
    disk(folder)(error);
  }
}

/** Copies the key file to another name beside it. @throws DossierError disk */
export async function keepKey(folder: string, keepAs: string): Promise<void> {
  await copyFile(join(folder, KEY_FILE), join(folder, keepAs)).catch(disk(folder));
}

/** Puts the same key, sealed anew, in the place of the old key file. @throws DossierError disk */
export async function replaceKey(folder: string, key: string): Promise<void> {
  const next = join(folder, NEXT_KEY);
  try {
    await rm(next, { force: true });
    await writeNew(next, key);
    await rename(next, join(folder, KEY_FILE));
  } catch (error) {
    if (error instanceof DossierError) throw error;
    disk(folder)(error);
  }
}

/**
 * The certificates of a replacement that was cut off after its key was put in place, if there is one.
 * Call `takeNextCertificates` once they are known to fit the key.
 */
export async function nextCertificates(folder: string): Promise<string | undefined> {
  return readFile(join(folder, NEXT_CERTIFICATE), 'utf8').catch(() => undefined);
}

export async function takeNextCertificates(folder: string): Promise<void> {
  await rename(join(folder, NEXT_CERTIFICATE), join(folder, CERTIFICATE_FILE)).catch(disk(folder));
}

async function makeFolder(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true, mode: 0o700 }).catch(disk(folder));
}

async function readText(file: string): Promise<string> {
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
        fix: 'Use it, renew it with: dossier identity renew, or make the new one in another folder.',
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

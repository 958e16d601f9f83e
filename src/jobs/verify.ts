import { X509Certificate } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { DossierError } from '../model/error.js';
import type { Verification } from '../model/verification.js';
import { verifyDossier } from '../verify/verify-dossier.js';

/** A dossier with its originals fits an e-mail; what is far larger is not one of ours. */
const LARGEST = 2 ** 30;

/**
 * Checks a dossier file. Whatever its bytes, the answer is a verification.
 * @param trust files of certificates (PEM or DER) whose signers are vouched for
 * Throws DossierError only when a file can't be read at all.
 */
export async function verifyFile(file: string, trust: readonly string[]): Promise<Verification> {
  const trusted = await Promise.all(trust.map(readCertificate));
  return verifyDossier(await readWhole(file), { trusted });
}

async function readCertificate(file: string): Promise<Uint8Array> {
  const bytes = await readWhole(file);
  try {
    return new X509Certificate(bytes).raw;
  } catch (cause) {
    throw new DossierError('bad-usage', 'this is not a certificate', {
      where: { file },
      fix: 'Give the signer’s certificate as PEM or DER, such as identity.crt.pem.',
      cause,
    });
  }
}

async function readWhole(file: string): Promise<Uint8Array> {
  try {
    const { size } = await stat(file);
    if (size > LARGEST)
      throw new DossierError('file-too-large', `${size} bytes are more than the ${LARGEST} that are read`, {
        where: { file },
      });
    return await readFile(file);
  } catch (cause) {
    if (cause instanceof DossierError) throw cause;
    throw new DossierError('unreadable-file', 'this file cannot be read', { where: { file }, cause });
  }
}

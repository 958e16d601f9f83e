import { createHash } from 'node:crypto';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { DossierError } from '../core/model/error.js';
import type { Signer } from '../core/ports/signer.js';
import type { Named } from './named.js';

/** A statement by which an old key names the new one, and the files that hold it. */
export interface Succession {
  statementFile: string;
  /** Detached CMS signature of the old key (RFC 5652, DER). */
  signatureFile: string;
}

/**
 * Writes what the old key says of the new one, signed by it: whoever trusts the old certificate can trust the new.
 * Checked with: `openssl cms -verify -binary -inform DER -in F.p7s -content F -CAfile OLD.crt.pem -purpose any`.
 * @throws DossierError disk; identity
 */
export async function writeSuccession(
  folder: string,
  { from, to, now }: { from: Signer & Named; to: Named; now: Date },
): Promise<Succession> {
  const text = [
    `On ${now.toISOString()} the holder of the first certificate states that it signs with the second from now on.`,
    `First certificate: ${from.subject}, SHA-256 ${from.certificateSha256}`,
    `Second certificate: ${to.subject}, SHA-256 ${to.certificateSha256}`,
    '',
  ].join('\n');
  const name = `from-${from.certificateSha256.slice(0, 8)}-to-${to.certificateSha256.slice(0, 8)}.txt`;
  const statementFile = join(folder, name);
  const signatureFile = `${statementFile}.p7s`;
  const { signDetached } = await import('./cms.js');
  const signature = await signDetached(createHash('sha256').update(text).digest(), from);
  try {
    await writeFile(statementFile, text, { mode: 0o600 });
    await writeFile(signatureFile, signature, { mode: 0o600 });
  } catch (cause) {
    throw new DossierError('disk', 'The statement on the new certificate could not be written.', {
      where: { file: statementFile },
      cause,
    });
  }
  return { statementFile, signatureFile };
}

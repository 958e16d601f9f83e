import { X509Certificate } from 'node:crypto';
import { DossierError } from '../../core/model/error.js';
import type { Clock } from '../../core/ports/clock.js';
import type { Signer } from '../../core/ports/signer.js';
import { namedBy, requireSigningUse, requireValid } from '../../signing/identity-material.js';
import type { Named } from '../../signing/named.js';
import { openIdentity } from './open-identity.js';
import type { SignedBy } from './signed-by.js';

/** A signer that is fit to sign now. */
export interface OpenedSigner extends Named {
  signer: Signer;
  notices: string[];
}

/**
 * Opens the identity, or looks at the certificate of the caller's signer.
 * @param who name for an identity that is made
 * @throws DossierError identity when it can't be had, or the certificate is not valid now or not for signing
 */
export async function openSigner(by: SignedBy, who: string, now: Clock): Promise<OpenedSigner> {
  if (by.signer === undefined) {
    const { identity, notices } = await openIdentity({
      folder: by.identityFolder,
      name: who,
      now,
      passphrase: by.passphrase,
    });
    const { certificateSha256, subject } = identity;
    return { signer: identity, certificateSha256, subject, notices };
  }
  const certificate = readCertificate(by.signer);
  requireSigningUse(certificate, FILE);
  requireValid(certificate, now(), FILE);
  return { signer: by.signer, ...namedBy(certificate), notices: [] };
}

/** A signer that is being opened. */
export interface OpeningSigner {
  opened: Promise<OpenedSigner>;
  /** Settles when nobody has to type any more, and a new identity is made: what remains is the machine's work. */
  typed: Promise<unknown>;
}

/** Opens it as `openSigner` does, beside other work: deriving the secret of a key takes a quarter of a second. */
export function beginSigner(by: SignedBy, who: string, now: Clock): OpeningSigner {
  if (by.signer !== undefined) {
    const opened = openSigner(by, who, now);
    return { opened, typed: opened };
  }
  let onTyped = (): void => undefined;
  const given = new Promise<void>((resolve) => {
    onTyped = resolve;
  });
  const passphrase = async (isNew: boolean): Promise<string> => {
    const typed = await by.passphrase(isNew);
    // A certificate that is yet to be made must not be younger than what it signs.
    if (!isNew) onTyped();
    return typed;
  };
  const opened = openSigner({ ...by, passphrase }, who, now);
  // Awaited later; until then a rejection must not count as unhandled.
  opened.catch(() => undefined);
  return { opened, typed: Promise.race([given, opened]) };
}

/** Where the trouble is, when it is in a certificate that no file holds. */
const FILE = 'the certificate of the signer';

function readCertificate({ certificateDer }: Signer): X509Certificate {
  try {
    return new X509Certificate(certificateDer);
  } catch (cause) {
    throw new DossierError('identity', 'the signer has no certificate that can be read', {
      where: { field: 'certificateDer' },
      fix: 'Give its X.509 certificate in DER.',
      cause,
    });
  }
}

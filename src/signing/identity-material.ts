import { createHash, createPrivateKey, type KeyObject, sign, X509Certificate } from 'node:crypto';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { Signer } from '../core/ports/signer.js';
import { DOCUMENT_USES } from '../core/verify/cms/asn1.js';
import { type Certificate, readCertificate } from '../core/verify/cms/certificate.js';
import { readDer } from '../core/verify/cms/der.js';
import { type PublicKey, readPublicKey, signingKey } from '../core/verify/cms/public-key.js';
import { Malformed } from '../core/verify/malformed.js';
import type { Named } from './named.js';
import { readSealedForm, unseal } from './sealed-form.js';

/** The signer whose key is in this process: a certificate and the private key that fits it. */
export interface Identity extends Signer, Named {
  key: KeyObject;
}

/** Characters of a passphrase for a key that is sealed from now on. */
const SHORTEST_PASSPHRASE = 12;
const PEM_CERTIFICATE = /-----BEGIN CERTIFICATE-----[\s\S]*?-----END CERTIFICATE-----/g;
const MOST_CERTIFICATES = 20;

/** Requires a passphrase long enough to protect a key. @throws DossierError identity */
export function requirePassphrase(passphrase: string): void {
  if ([...passphrase].length < SHORTEST_PASSPHRASE)
    throw new DossierError('identity', 'The passphrase is too short.', {
      where: { field: 'passphrase' },
      fix: `Use at least ${SHORTEST_PASSPHRASE} characters; five words that do not belong together are better.`,
    });
}

/** Every certificate of a PEM text, in its order. @throws DossierError identity when there is none that can be read */
export function readCertificates(pem: string, file: string): X509Certificate[] {
  const blocks = pem.match(PEM_CERTIFICATE) ?? [];
  try {
    if (blocks.length === 0 || blocks.length > MOST_CERTIFICATES) throw new Error('none, or too many');
    return blocks.map((block) => new X509Certificate(block));
  } catch (cause) {
    throw new DossierError('identity', 'This is not a certificate in PEM form.', { where: { file }, cause });
  }
}

/** Decrypts a private key in PEM. @throws DossierError identity when the passphrase is wrong or there is no key */
export async function readKey(pem: string, passphrase: string, file: string): Promise<KeyObject> {
  try {
    const sealed = readSealedForm(pem);
    return sealed === undefined
      ? createPrivateKey({ key: pem, format: 'pem', passphrase })
      : await unseal(sealed, passphrase);
  } catch {
    // The cause is left out on purpose: library messages may quote what they were given.
    const encrypted = pem.includes('ENCRYPTED');
    throw new DossierError(
      'identity',
      encrypted ? 'The passphrase does not open the private key.' : 'The private key cannot be read.',
      {
        where: { file },
        ...omitUndefined({ fix: encrypted ? 'Check the passphrase and try again.' : undefined }),
      },
    );
  }
}

/**
 * The identity of a key among certificates: the certificate of the key, and its chain as far as the others give it.
 * @throws DossierError identity when none fits or the key is of a kind that is not used
 */
export function identityFrom(
  key: KeyObject,
  certificates: readonly X509Certificate[],
  file: string,
): { identity: Identity; certificate: X509Certificate; chain: X509Certificate[] } {
  const certificate = certificates.find((one) => one.checkPrivateKey(key));
  if (certificate === undefined)
    throw new DossierError('identity', 'The private key does not belong to the certificate.', {
      where: { file },
      fix: 'Put the matching pair into the folder, or make a new identity in another folder.',
    });
  if (signingKey(publicKeyOf(certificate.publicKey).kind) === undefined)
    throw new DossierError('identity', 'This kind of key is not used for signing here.', {
      where: { file },
      fix: 'Use an EC key on P-256 or P-384, or an RSA key of 2048 to 4096 bits.',
    });
  const chain = chainOf(certificate, certificates);
  const identity = {
    certificateDer: new Uint8Array(certificate.raw),
    ...namedBy(certificate),
    key,
    sign: signWith(key),
    ...omitUndefined({ chain: chain.length === 0 ? undefined : chain.map((one) => new Uint8Array(one.raw)) }),
  };
  return { identity, certificate, chain };
}

/** A key of this process as it stands in a certificate. */
export function publicKeyOf(key: KeyObject): PublicKey {
  return readPublicKey(readDer(key.export({ type: 'spki', format: 'der' })));
}

export function namedBy(certificate: X509Certificate): Named {
  return {
    certificateSha256: createHash('sha256').update(certificate.raw).digest('hex'),
    subject: certificate.subject.replaceAll('\n', ', '),
  };
}

/** Signs in this process. The digest is left aside: Node's own function hashes what it signs with an EC key. */
export function signWith(key: KeyObject): Signer['sign'] {
  return async ({ bytes, signal }) => {
    signal?.throwIfAborted();
    return new Uint8Array(sign('sha256', bytes, key));
  };
}

function chainOf(first: X509Certificate, all: readonly X509Certificate[]): X509Certificate[] {
  const chain: X509Certificate[] = [];
  let at = first;
  for (;;) {
    const child = at;
    const next = all.find((one) => one !== first && !chain.includes(one) && child.checkIssued(one));
    if (next === undefined || child.raw.equals(next.raw)) return chain;
    chain.push(next);
    at = next;
  }
}

/** Requires a certificate that is valid at `now`. @throws DossierError identity */
export function requireValid(certificate: X509Certificate, now: Date, file: string): void {
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
      fix: 'Renew it with: dossier identity renew (or, if an authority issued it, ask for a new one), and send the new certificate to those who check your dossiers.',
    });
}

/** Requires a certificate whose key usage (RFC 5280 §4.2.1.3) allows signing. @throws DossierError identity */
export function requireSigningUse(certificate: X509Certificate, file: string): void {
  const { keyUsage: usage, extendedUses } = readAsVerifierDoes(certificate, file);
  const forDocuments = extendedUses === undefined || extendedUses.some((one) => DOCUMENT_USES.includes(one));
  if (forDocuments && (usage === undefined || usage.digitalSignature || usage.nonRepudiation)) return;
  throw new DossierError(
    'identity',
    'The certificate is for other uses than signing (its key usage says so).',
    {
      where: { file },
      fix: 'Use a certificate whose key usage has digital signature or non-repudiation, and whose extended key usage, if it has one, names documents, e-mail or any use.',
    },
  );
}

/** The certificate as the verifier parses it, so that no dossier is signed with one that verifying would refuse. */
function readAsVerifierDoes(certificate: X509Certificate, file: string): Certificate {
  try {
    return readCertificate(new Uint8Array(certificate.raw));
  } catch (cause) {
    if (!(cause instanceof Malformed)) throw cause;
    throw new DossierError('identity', `The certificate is not written as DER wants it: ${cause.message}.`, {
      where: { file },
      fix: 'Ask its authority for another one, or make one with: dossier identity make.',
      cause,
    });
  }
}

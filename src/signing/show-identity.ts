import { join } from 'node:path';
import { CERTIFICATE_FILE, readIdentityFiles } from './identity-folder.js';
import { readCertificates } from './identity-material.js';

/** What the certificate of an identity says. */
export interface ShownIdentity {
  folder: string;
  /** As the certificate writes them, such as `CN=Harrow Creek Transport`. */
  subject: string;
  issuer: string;
  /** Lower-case hex. */
  certificateSha256: string;
  /** In UTC, such as `2026-07-14T12:00:00.000Z`. */
  validFrom: string;
  validTo: string;
  /** `EC P-256` or `RSA 3072`. */
  key: string;
  /** Certificates that come along beside the signer's own. */
  authorities: number;
}

/** What the certificate says; needs no passphrase. @throws DossierError identity */
export async function showIdentity(folder: string): Promise<ShownIdentity> {
  const file = join(folder, CERTIFICATE_FILE);
  const [certificate, ...more] = readCertificates((await readIdentityFiles(folder)).certificates, file);
  if (certificate === undefined) throw new Error('no certificate after reading some');
  const details = certificate.publicKey.asymmetricKeyDetails;
  return {
    folder,
    subject: certificate.subject.replaceAll('\n', ', '),
    issuer: certificate.issuer.replaceAll('\n', ', '),
    certificateSha256: certificate.fingerprint256.replaceAll(':', '').toLowerCase(),
    validFrom: new Date(certificate.validFrom).toISOString(),
    validTo: new Date(certificate.validTo).toISOString(),
    key:
      details?.namedCurve === undefined
        ? `RSA ${details?.modulusLength}`
        : `EC ${details.namedCurve === 'prime256v1' ? 'P-256' : 'P-384'}`,
    authorities: more.length,
  };
}

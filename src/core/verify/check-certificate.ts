import type { CheckResults } from './check-results.js';
import { DOCUMENT_USES } from './cms/asn1.js';
import { type Certificate, validAt } from './cms/certificate.js';
import { isTrusted, readableCertificates } from './trust.js';

/** Checks validity and key usage of the signer's certificate, and whether a trusted one vouches for it. */
export async function checkCertificate(
  certificate: Certificate,
  embedded: readonly Certificate[],
  time: Date | undefined,
  results: CheckResults,
  trusted: readonly Uint8Array[],
): Promise<void> {
  const { validFrom, validTo, keyUsage, extendedUses } = certificate;
  const period = `${validFrom.toISOString()} to ${validTo.toISOString()}`;
  const valid = time !== undefined && validAt(certificate, time);
  results.failIf(
    'certificate.validity',
    valid ? [] : [`the certificate is valid only from ${period}`],
    period,
  );
  const forDocuments = extendedUses === undefined || extendedUses.some((one) => DOCUMENT_USES.includes(one));
  const may = keyUsage === undefined || keyUsage.digitalSignature || keyUsage.nonRepudiation;
  results.failIf(
    'certificate.usage',
    may && forDocuments ? [] : ['the certificate is for other uses than signing documents'],
    'signing is allowed',
  );
  const authorities = readableCertificates(trusted);
  if (time !== undefined && (await isTrusted(certificate, embedded, authorities, time)))
    results.pass('signer.trusted', certificate.subjectLine);
  else
    results.skip(
      'signer.trusted',
      trusted.length === 0
        ? 'No certificate was given to trust; anybody can make one in this name.'
        : 'None of the certificates you trust is or issued this one; anybody can make one in this name.',
    );
}

import type { CheckResults } from './check-results.js';
import { DOCUMENT_USES } from './cms/asn1.js';
import { type Certificate, subjectLine, validAt } from './cms/certificate.js';
import { isTrusted, readableCertificates } from './trust.js';

/** Validity and use of the signer's certificate at the claimed time, and who vouches for it. */
export function checkCertificate(
  certificate: Certificate,
  embedded: readonly Certificate[],
  time: Date | undefined,
  results: CheckResults,
  trusted: readonly Uint8Array[],
): void {
  const { validFrom, validTo, keyUsage } = certificate;
  const period = `${validFrom.toISOString()} to ${validTo.toISOString()}`;
  const valid = time !== undefined && validAt(certificate, time);
  results.failIf(
    'certificate.validity',
    valid ? [] : [`the certificate is valid only from ${period}`],
    period,
  );
  const extended: readonly string[] | undefined = certificate.x509.keyUsage;
  const forDocuments = extended === undefined || extended.some((one) => DOCUMENT_USES.includes(one));
  const may = keyUsage === undefined || keyUsage.digitalSignature || keyUsage.nonRepudiation;
  results.failIf(
    'certificate.usage',
    may && forDocuments ? [] : ['the certificate is for other uses than signing documents'],
    'signing is allowed',
  );
  if (time !== undefined && isTrusted(certificate, embedded, readableCertificates(trusted), time))
    results.pass('signer.trusted', subjectLine(certificate));
  else
    results.skip(
      'signer.trusted',
      trusted.length === 0
        ? 'No certificate was given to trust; anybody can make one in this name.'
        : 'None of the certificates you trust is or issued this one; anybody can make one in this name.',
    );
}

import { type Certificate, readCertificate, validAt } from './cms/certificate.js';
import { Malformed } from './malformed.js';

/** A certificate between signer and trusted one is seldom followed by another; more than this is a trick. */
const LONGEST_CHAIN = 5;

/** Certificates that can be read; the others are left out. */
export function readableCertificates(list: readonly Uint8Array[]): Certificate[] {
  return list.flatMap((der) => {
    try {
      return [readCertificate(der)];
    } catch (error) {
      if (error instanceof Malformed) return [];
      throw error;
    }
  });
}

/**
 * Whether the signer is vouched for: its certificate is one of the trusted, or was issued by one of them,
 * directly or through certification authorities whose certificates came along (RFC 5280 §6, without policies).
 * A certificate that only looks like a trusted one, by name or number, is not one: bytes or signatures decide.
 */
export function isTrusted(
  signer: Certificate,
  others: readonly Certificate[],
  trusted: readonly Certificate[],
  at: Date,
): boolean {
  if (trusted.some((one) => Buffer.compare(one.der, signer.der) === 0)) return true;
  let current = signer;
  for (let steps = 0; steps < LONGEST_CHAIN; steps += 1) {
    const child = current;
    if (trusted.some((one) => issued(one, child, at))) return true;
    const next = others.find((one) => one !== child && issued(one, child, at));
    if (next === undefined) return false;
    current = next;
  }
  return false;
}

function issued(authority: Certificate, certificate: Certificate, at: Date): boolean {
  if (!authority.x509.ca || !validAt(authority, at)) return false;
  if (Buffer.compare(authority.subject, certificate.issuer) !== 0) return false;
  try {
    return certificate.x509.checkIssued(authority.x509) && certificate.x509.verify(authority.x509.publicKey);
  } catch {
    // An authority's key of another kind than the signature can't have issued it.
    return false;
  }
}

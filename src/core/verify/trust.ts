import { isSameBytes } from '../model/bytes.js';
import { type Certificate, readCertificate, validAt } from './cms/certificate.js';
import { readDer } from './cms/der.js';
import { isSignatureValid } from './cms/signature-scheme.js';
import { Malformed } from './malformed.js';

/** Certificates between signer and trusted certificate: chains in use have one or two, and longer ones are refused. */
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
export async function isTrusted(
  signer: Certificate,
  others: readonly Certificate[],
  trusted: readonly Certificate[],
  at: Date,
): Promise<boolean> {
  if (trusted.some((one) => isSameBytes(one.der, signer.der))) return true;
  let current = signer;
  for (let steps = 0; steps < LONGEST_CHAIN; steps += 1) {
    const child = current;
    if ((await issuerOf(child, trusted, at)) !== undefined) return true;
    const next = await issuerOf(
      child,
      others.filter((one) => one !== child),
      at,
    );
    if (next === undefined) return false;
    current = next;
  }
  return false;
}

async function issuerOf(
  child: Certificate,
  among: readonly Certificate[],
  at: Date,
): Promise<Certificate | undefined> {
  for (const one of among) if (await issued(one, child, at)) return one;
  return undefined;
}

async function issued(authority: Certificate, certificate: Certificate, at: Date): Promise<boolean> {
  if (!authority.isAuthority || !validAt(authority, at)) return false;
  if (!isSameBytes(authority.subject, certificate.issuer) || !mayMean(certificate, authority)) return false;
  // An authority's key of another kind than the signature can't have issued it.
  const scheme = certificate.schemeWith(authority.key.kind);
  return isSignatureValid(scheme, authority.key, certificate.signed, certificate.signature);
}

/** Whether nothing that a certificate says of its issuer's (RFC 5280 §4.2.1.1) is of another one. */
function mayMean({ authorityKeyId = {} }: Certificate, authority: Certificate): boolean {
  const { keyId, issuer, serial } = authorityKeyId;
  const { subjectKeyId } = authority;
  if (keyId !== undefined && subjectKeyId !== undefined && !isSameBytes(keyId, subjectKeyId)) return false;
  if (serial !== undefined && !isSameBytes(serial, readDer(authority.serial).content)) return false;
  return issuer === undefined || isSameBytes(issuer, authority.issuer);
}

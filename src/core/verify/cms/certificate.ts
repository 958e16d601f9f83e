import { X509Certificate } from 'node:crypto';
import { omitUndefined } from '../../model/omit-undefined.js';
import { refuse } from '../malformed.js';
import { OID } from './asn1.js';
import { childrenOf, type Der, oidOf, readDer, requireTag, TAG } from './der.js';

/** A certificate (RFC 5280), with the parts that a signature refers to as their DER bytes. */
export interface Certificate {
  der: Uint8Array;
  x509: X509Certificate;
  issuer: Uint8Array;
  serial: Uint8Array;
  subject: Uint8Array;
  /** First and last second of validity (RFC 5280 §4.1.2.5). */
  validFrom: Date;
  validTo: Date;
  /** Undefined when the certificate does not restrict its key's use. */
  keyUsage?: { digitalSignature: boolean; nonRepudiation: boolean };
  /** Whether its one use, marked critical, is time stamps (RFC 3161 §2.3). */
  timeStampsOnly: boolean;
}

/** @throws Malformed when the bytes are not exactly one certificate */
export function readCertificate(der: Uint8Array): Certificate {
  const outer = readDer(der);
  if (outer.raw.length !== der.length) refuse('something stands after a certificate');
  const [tbs] = childrenOf(requireTag(outer, TAG.sequence, 'certificate'));
  const parts = childrenOf(requireTag(tbs, TAG.sequence, 'certificate'));
  // The version comes first, as [0]; only version 1 leaves it out.
  const at = parts[0]?.tag === TAG.context0 ? 1 : 0;
  const [serial, , issuer, , subject] = parts.slice(at);
  const extensions = parts.find((part) => part.tag === TAG.context3);
  const keyUsage = readKeyUsage(findExtension(extensions, OID.keyUsage));
  const timeStampsOnly = isForTimeStamps(findExtension(extensions, OID.extendedKeyUsage));
  const x509 = parse(der);
  return {
    der,
    x509,
    timeStampsOnly,
    validFrom: dateOf(x509.validFrom),
    validTo: dateOf(x509.validTo),
    issuer: requireTag(issuer, TAG.sequence, 'issuer in its certificate').raw,
    serial: requireTag(serial, TAG.integer, 'serial number in its certificate').raw,
    subject: requireTag(subject, TAG.sequence, 'subject in its certificate').raw,
    ...omitUndefined({ keyUsage }),
  };
}

/** The subject in one line, as OpenSSL writes it. */
export function subjectLine(certificate: Certificate): string {
  return certificate.x509.subject.replaceAll('\n', ', ');
}

/** Whether the time lies in the certificate's validity period, both ends included (RFC 5280 §4.1.2.5). */
export function validAt({ validFrom, validTo }: Certificate, at: Date): boolean {
  return validFrom <= at && at <= validTo;
}

function dateOf(text: string): Date {
  const date = new Date(text);
  return Number.isNaN(date.getTime()) ? refuse('a certificate has a validity period that is no time') : date;
}

function parse(der: Uint8Array): X509Certificate {
  try {
    const x509 = new X509Certificate(der);
    // Reading the key here lets a broken one fail as a broken certificate.
    return x509.publicKey.type === 'public' ? x509 : refuse('a certificate holds no public key');
  } catch {
    return refuse('a certificate cannot be read');
  }
}

function findExtension(extensions: Der | undefined, type: string): Der[] | undefined {
  if (extensions === undefined) return undefined;
  for (const list of childrenOf(extensions))
    for (const extension of childrenOf(list)) {
      const parts = childrenOf(extension);
      if (oidOf(parts[0], 'extension') === type) return parts;
    }
  return undefined;
}

function extensionValue(parts: Der[], what: string): Der {
  return readDer(requireTag(parts[parts.length - 1], TAG.octetString, what).content);
}

function readKeyUsage(parts: Der[] | undefined): Certificate['keyUsage'] {
  if (parts === undefined) return undefined;
  const bits = requireTag(extensionValue(parts, 'key usage'), TAG.bitString, 'key usage').content;
  const first = bits[1] ?? 0;
  return { digitalSignature: (first & 0x80) !== 0, nonRepudiation: (first & 0x40) !== 0 };
}

function isForTimeStamps(parts: Der[] | undefined): boolean {
  if (parts === undefined || parts[1]?.tag !== TAG.boolean || parts[1].content[0] !== 0xff) return false;
  const uses = childrenOf(
    requireTag(extensionValue(parts, 'extended key usage'), TAG.sequence, 'extended key usage'),
  );
  return uses.length === 1 && oidOf(uses[0]) === OID.timeStamping;
}

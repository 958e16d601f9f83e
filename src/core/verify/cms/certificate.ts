import { isSameBytes, latin1 } from '../../model/bytes.js';
import type { SignatureScheme } from '../../ports/cryptography.js';
import { refuse } from '../malformed.js';
import { childrenOf, type Der, oidOf, readDer, requireTag, TAG } from './der.js';
import { type Extensions, readExtensions } from './extensions.js';
import { parseGeneralizedTime } from './generalized-time.js';
import { type KeyKind, type PublicKey, readPublicKey } from './public-key.js';
import { schemeOf } from './signature-scheme.js';
import { subjectLineOf } from './subject-line.js';

/** Characters of a time: four digits of the year, ten more, and the Z. */
const WHOLE_SECONDS = 15;

/** A certificate (RFC 5280), with the parts that a signature refers to as their DER bytes. */
export interface Certificate extends Extensions {
  der: Uint8Array;
  issuer: Uint8Array;
  /** The whole integer, tag and length too. */
  serial: Uint8Array;
  subject: Uint8Array;
  /** The subject in one line, as OpenSSL writes it. */
  subjectLine: string;
  /** First and last second of validity (RFC 5280 §4.1.2.5). */
  validFrom: Date;
  validTo: Date;
  key: PublicKey;
  /** What its issuer signed, and how that is checked with a key of the issuer's kind. */
  signed: Uint8Array;
  signature: Uint8Array;
  schemeWith: (issuer: KeyKind) => SignatureScheme | undefined;
}

/** Parses a certificate. @throws Malformed when the bytes are not exactly one, in DER */
export function readCertificate(der: Uint8Array): Certificate {
  const outer = readDer(der);
  if (outer.raw.length !== der.length) refuse('there are bytes after a certificate');
  const [tbs, algorithm, signature, more] = childrenOf(requireTag(outer, TAG.sequence, 'certificate'));
  const parts = childrenOf(requireTag(tbs, TAG.sequence, 'certificate'));
  // The version comes first, as [0]; only version 1 leaves it out.
  const at = parts[0]?.tag === TAG.context0 ? 1 : 0;
  const [serial, inner, issuer, validity, subject, key] = parts.slice(at);
  const [from, to] = childrenOf(requireTag(validity, TAG.sequence, 'validity in its certificate'));
  const outerAlgorithm = requireTag(algorithm, TAG.sequence, 'algorithm in its certificate');
  const [type, parameters] = childrenOf(outerAlgorithm);
  const value = requireTag(signature, TAG.bitString, 'signature in its certificate').content;
  if (more !== undefined || value[0] !== 0) refuse('a certificate cannot be read');
  // RFC 5280 §4.1.1.2: the algorithm stands outside of what is signed, and inside again.
  if (!isSameBytes(requireTag(inner, TAG.sequence, 'algorithm in its certificate').raw, outerAlgorithm.raw))
    refuse('a certificate names two signature algorithms');
  const named = requireTag(subject, TAG.sequence, 'subject in its certificate');
  const scheme = oidOf(type, 'algorithm in its certificate');
  return {
    der,
    ...readExtensions(parts.find((part) => part.tag === TAG.context3)),
    issuer: requireTag(issuer, TAG.sequence, 'issuer in its certificate').raw,
    serial: requireTag(serial, TAG.integer, 'serial number in its certificate').raw,
    subject: named.raw,
    subjectLine: subjectLineOf(named),
    validFrom: timeOf(from),
    validTo: timeOf(to),
    key: readPublicKey(key),
    signed: requireTag(tbs, TAG.sequence, 'certificate').raw,
    signature: value.subarray(1),
    schemeWith: (kind) => schemeOf(scheme, parameters, kind),
  };
}

/** Whether the time lies in the certificate's validity period, both ends included (RFC 5280 §4.1.2.5). */
export function validAt({ validFrom, validTo }: Certificate, at: Date): boolean {
  return validFrom <= at && at <= validTo;
}

/** RFC 5280 §4.1.2.5: with seconds and no fraction, in UTC; two digits of a year are those of 1950 to 2049. */
function timeOf(element: Der | undefined): Date {
  const digits = element === undefined ? '' : latin1(element.content);
  const century = digits < '5' ? '20' : '19';
  const text = element?.tag === TAG.utcTime ? century + digits : digits;
  const isTime = element?.tag === TAG.utcTime || element?.tag === TAG.generalizedTime;
  const time = isTime && text.length === WHOLE_SECONDS ? parseGeneralizedTime(text) : undefined;
  return time ?? refuse('a certificate has a validity period that is no time');
}

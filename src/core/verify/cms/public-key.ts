import type { Curve } from '../../ports/cryptography.js';
import { refuse } from '../malformed.js';
import { OID } from './asn1.js';
import { childrenOf, type Der, oidOf, readDer, requireTag, TAG } from './der.js';

/** A key as it stands in a certificate: its DER (SubjectPublicKeyInfo) and what it is. */
export interface PublicKey {
  spki: Uint8Array;
  kind: KeyKind;
}

export type KeyKind =
  | { is: 'ec'; curve: Curve }
  | { is: 'rsa'; bits: number }
  | { is: 'ed25519' }
  | { is: 'other' };

/** The kinds of key that sign documents and time stamps here. */
export type SigningKey = Extract<KeyKind, { is: 'ec' | 'rsa' }>;

const CURVES: Record<string, Curve> = {
  [OID.p256]: 'prime256v1',
  [OID.p384]: 'secp384r1',
  [OID.p521]: 'secp521r1',
};
const SMALLEST_RSA_BITS = 2048;
const LARGEST_RSA_BITS = 4096;
const LARGEST_RSA_BITS_OF_AUTHORITY = 8192;
const SIGNING_CURVES: readonly Curve[] = ['prime256v1', 'secp384r1'];

/** Reads a SubjectPublicKeyInfo (RFC 5280 §4.1.2.7, RFC 3279 §2.3). @throws Malformed */
export function readPublicKey(element: Der | undefined): PublicKey {
  const [algorithm, key] = childrenOf(requireTag(element, TAG.sequence, 'public key'));
  const [type, parameters] = childrenOf(requireTag(algorithm, TAG.sequence, 'kind of the public key'));
  const { content } = requireTag(key, TAG.bitString, 'public key');
  if (content[0] !== 0) refuse('a public key that is not whole bytes');
  const spki = requireTag(element, TAG.sequence, 'public key').raw;
  return { spki, kind: kindOf(oidOf(type, 'kind of the public key'), parameters, content.subarray(1)) };
}

function kindOf(type: string, parameters: Der | undefined, key: Uint8Array): KeyKind {
  switch (type) {
    case OID.ecPublicKey: {
      const curve = parameters?.tag === TAG.oid ? CURVES[oidOf(parameters)] : undefined;
      return curve === undefined ? { is: 'other' } : { is: 'ec', curve };
    }
    case OID.rsaEncryption: {
      const [modulus, exponent] = childrenOf(requireTag(readDer(key), TAG.sequence, 'RSA key'));
      const bits = bitLength(requireTag(modulus, TAG.integer, 'RSA key').content);
      return isUsualExponent(requireTag(exponent, TAG.integer, 'RSA key').content)
        ? { is: 'rsa', bits }
        : { is: 'other' };
    }
    case OID.ed25519:
      return { is: 'ed25519' };
    default:
      return { is: 'other' };
  }
}

/** Odd, above 1 and below 2^32: not every engine computes with others. */
function isUsualExponent(integer: Uint8Array): boolean {
  const value = integer.reduce((sum, byte) => sum * 256 + byte, 0);
  return value % 2 === 1 && value > 1 && value < 4_294_967_296;
}

function bitLength(integer: Uint8Array): number {
  const first = integer.findIndex((byte) => byte !== 0);
  return first < 0 ? 0 : (integer.length - first) * 8 - (Math.clz32(integer[first] ?? 0) - 24);
}

/** The kind, if signatures are made and accepted with such keys; undefined for every other one. */
export function signingKey(kind: KeyKind): SigningKey | undefined {
  if (kind.is === 'ec') return SIGNING_CURVES.includes(kind.curve) ? kind : undefined;
  if (kind.is !== 'rsa') return undefined;
  return kind.bits >= SMALLEST_RSA_BITS && kind.bits <= LARGEST_RSA_BITS ? kind : undefined;
}

/** Whether an RSA key is long enough to believe (NIST SP 800-131A), and no longer than every engine computes with. */
export function isUsableRsa(bits: number): boolean {
  return bits >= SMALLEST_RSA_BITS && bits <= LARGEST_RSA_BITS_OF_AUTHORITY;
}

export function describeKey({ kind }: PublicKey): string {
  const key = signingKey(kind);
  if (key === undefined) return 'an unknown key';
  return key.is === 'ec' ? `an EC key on ${key.curve}` : `an RSA key of ${key.bits} bits`;
}

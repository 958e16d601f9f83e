import { verifySignature } from '#platform/signature';
import type { Curve, HashName, SignatureScheme } from '../../ports/cryptography.js';
import { Malformed } from '../malformed.js';
import { OID } from './asn1.js';
import { childrenOf, type Der, oidOf, readDer, TAG } from './der.js';
import { isUsableRsa, type KeyKind, type PublicKey, signingKey } from './public-key.js';

/** The hash of each digest that is accepted; MD5 and SHA-1 are not. */
export const HASHES: Record<string, HashName> = {
  [OID.sha256]: 'sha256',
  [OID.sha384]: 'sha384',
  [OID.sha512]: 'sha512',
};
const SIGNATURES: Record<string, { key: 'ec' | 'rsa'; digest: string }> = {
  [OID.ecdsaWithSha256]: { key: 'ec', digest: OID.sha256 },
  [OID.ecdsaWithSha384]: { key: 'ec', digest: OID.sha384 },
  [OID.ecdsaWithSha512]: { key: 'ec', digest: OID.sha512 },
  [OID.sha256WithRsa]: { key: 'rsa', digest: OID.sha256 },
  [OID.sha384WithRsa]: { key: 'rsa', digest: OID.sha384 },
  [OID.sha512WithRsa]: { key: 'rsa', digest: OID.sha512 },
};
/** Bytes of r and of s. */
const SIZES: Record<Curve, number> = { prime256v1: 32, secp384r1: 48, secp521r1: 66 };

/** Digest, signature algorithm and NULL parameters as a signer states them, with the key they are used with. */
export interface StatedAlgorithms {
  digest: string;
  algorithm: string;
  nullParameters: boolean;
}

/** Problems of the stated algorithms: too weak, or not of the key's kind. RSA has NULL parameters (RFC 5754 §3.2). */
export function weaknesses(
  { digest, algorithm, nullParameters }: StatedAlgorithms,
  { kind }: PublicKey,
): string[] {
  const wrong: string[] = [];
  if (HASHES[digest] === undefined) wrong.push(`the digest ${digest} is too weak or unknown`);
  const key = signingKey(kind);
  if (key === undefined) wrong.push('the key is too short or of an unknown kind');
  const expected = SIGNATURES[algorithm];
  if (expected === undefined || expected.digest !== digest)
    wrong.push(`the signature algorithm ${algorithm} is too weak, unknown, or goes with another digest`);
  else if (expected.key !== key?.is || nullParameters !== (key.is === 'rsa'))
    wrong.push('the signature algorithm does not go with the key');
  return wrong;
}

/** How an algorithm signs with a key of this kind; undefined when either is weak or unknown, or they do not go together. */
export function schemeOf(
  algorithm: string,
  parameters: Der | undefined,
  key: KeyKind,
): SignatureScheme | undefined {
  if (key.is === 'rsa' && !isUsableRsa(key.bits)) return undefined;
  if (algorithm === OID.rsaPss) return key.is === 'rsa' ? pssOf(parameters) : undefined;
  if (algorithm === OID.ed25519) return key.is === 'ed25519' ? { is: 'ed25519' } : undefined;
  const known = SIGNATURES[algorithm];
  const hash = known === undefined ? undefined : HASHES[known.digest];
  if (hash === undefined || known?.key !== key.is) return undefined;
  return key.is === 'ec' ? { is: 'ecdsa', hash, curve: key.curve } : { is: 'rsa-pkcs1', hash };
}

/** RFC 8017 §A.2.3, with one hash for the message and its mask; the defaults are SHA-1, which is not accepted. */
function pssOf(parameters: Der | undefined): SignatureScheme | undefined {
  if (parameters?.tag !== TAG.sequence) return undefined;
  const fields = new Map(childrenOf(parameters).map((field) => [field.tag, childrenOf(field)[0]]));
  const hash = hashIn(fields.get(TAG.context0));
  const mask = fields.get(TAG.context1);
  const [type, maskHash] = mask === undefined ? [] : childrenOf(mask);
  const salt = fields.get(TAG.context2)?.content;
  if (hash === undefined || salt?.length !== 1 || fields.has(TAG.context3)) return undefined;
  if (type === undefined || oidOf(type) !== OID.mgf1 || hashIn(maskHash) !== hash) return undefined;
  return { is: 'rsa-pss', hash, saltLength: salt[0] ?? 0 };
}

function hashIn(algorithm: Der | undefined): HashName | undefined {
  return algorithm === undefined ? undefined : HASHES[oidOf(childrenOf(algorithm)[0])];
}

/** Whether the value is a signature by the key over the bytes. Never rejects. */
export async function isSignatureValid(
  scheme: SignatureScheme | undefined,
  key: PublicKey,
  signed: Uint8Array,
  value: Uint8Array,
): Promise<boolean> {
  if (scheme === undefined) return false;
  const plain = scheme.is === 'ecdsa' ? sideBySide(value, SIZES[scheme.curve]) : value;
  return plain !== undefined && verifySignature({ scheme, publicKey: key.spki, signed, value: plain });
}

/** r and s of an Ecdsa-Sig-Value (RFC 3279 §2.2.3), each in so many bytes; undefined when it is not one in DER. */
function sideBySide(value: Uint8Array, size: number): Uint8Array | undefined {
  try {
    const outer = readDer(value);
    const numbers = childrenOf(outer);
    if (outer.tag !== TAG.sequence || outer.raw.length !== value.length || numbers.length !== 2)
      return undefined;
    const joined = new Uint8Array(2 * size);
    for (const [i, { tag, content }] of numbers.entries()) {
      const bytes = positive(content);
      if (tag !== TAG.integer || bytes === undefined || bytes.length > size) return undefined;
      joined.set(bytes, (i + 1) * size - bytes.length);
    }
    return joined;
  } catch (error) {
    if (error instanceof Malformed) return undefined;
    throw error;
  }
}

/** The bytes of a positive integer in its shortest form (X.690 §8.3.2), without the zero before a high bit. */
function positive([first = 0x80, ...rest]: Uint8Array): Uint8Array | undefined {
  if (first >= 0x80) return undefined;
  if (first > 0) return Uint8Array.of(first, ...rest);
  return (rest[0] ?? 0) >= 0x80 ? Uint8Array.from(rest) : undefined;
}

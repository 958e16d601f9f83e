import { type KeyObject, verify as verifySignature } from 'node:crypto';
import { keyKind, OID } from './asn1.js';

/** The hash of each digest that is accepted; MD5 and SHA-1 are not. */
export const HASHES: Record<string, string> = {
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

/** Digest, signature algorithm and NULL parameters as a signer states them, with the key they are used with. */
export interface StatedAlgorithms {
  digest: string;
  algorithm: string;
  nullParameters: boolean;
}

/** What is too weak or does not go together; empty when nothing is. RSA carries NULL parameters (RFC 5754 §3.2). */
export function weaknesses(
  { digest, algorithm, nullParameters }: StatedAlgorithms,
  key: KeyObject,
): string[] {
  const wrong: string[] = [];
  if (HASHES[digest] === undefined) wrong.push(`the digest ${digest} is too weak or unknown`);
  const kind = keyKind(key);
  if (kind === undefined) wrong.push('the key is too short or of an unknown kind');
  const expected = SIGNATURES[algorithm];
  if (expected === undefined || expected.digest !== digest)
    wrong.push(`the signature algorithm ${algorithm} is too weak, unknown, or goes with another digest`);
  else if (expected.key !== kind?.is || nullParameters !== (kind.is === 'rsa'))
    wrong.push('the signature algorithm does not go with the key');
  return wrong;
}

/** Whether the value is a signature by the key over the bytes. Never throws. */
export function isSignatureValid(
  hash: string,
  signed: Uint8Array,
  key: KeyObject,
  value: Uint8Array,
): boolean {
  try {
    return verifySignature(hash, signed, key, value);
  } catch {
    return false;
  }
}

export function describeKey(key: KeyObject): string {
  const kind = keyKind(key);
  if (kind === undefined) return 'an unknown key';
  return kind.is === 'ec' ? `an EC key on ${kind.curve}` : `an RSA key of ${kind.bits} bits`;
}

import { createHash, createPrivateKey, generateKeyPairSync, type KeyObject } from 'node:crypto';
import { selfSigned } from '../../src/signing/certificate.js';
import { type Identity, signWith } from '../../src/signing/identity-material.js';

export const SIGNED_AT = new Date(Date.UTC(2026, 6, 17, 9, 5, 0));

/** Counts up, so that two runs get the same "random" bytes. */
export function countingBytes(start = 0): (count: number) => Uint8Array {
  let next = start;
  return (count) => Uint8Array.from({ length: count }, () => next++ & 0xff);
}

export interface SampleIdentity {
  name?: string;
  keys?: { publicKey: KeyObject; privateKey: KeyObject };
  notBefore?: Date;
  notAfter?: Date;
}

/** An identity for a test, never written to disk. */
export function sampleIdentity(wanted: SampleIdentity = {}): Identity {
  const name = wanted.name ?? 'Harrow Creek Transport';
  const keys = wanted.keys ?? generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const certificateDer = selfSigned({
    name,
    ...keys,
    notBefore: wanted.notBefore ?? new Date(Date.UTC(2026, 0, 1)),
    notAfter: wanted.notAfter ?? new Date(Date.UTC(2031, 0, 1)),
    serial: countingBytes(7)(16),
  });
  const key = createPrivateKey(keys.privateKey.export({ type: 'pkcs8', format: 'pem' }));
  return {
    certificateDer,
    certificateSha256: createHash('sha256').update(certificateDer).digest('hex'),
    subject: `CN=${name}`,
    key,
    sign: signWith(key),
  };
}

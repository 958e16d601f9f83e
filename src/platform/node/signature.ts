import { constants, createPublicKey, type KeyObject, verify } from 'node:crypto';
import type { SignatureScheme, VerifySignature } from '../../core/ports/cryptography.js';

export const verifySignature: VerifySignature = async ({ scheme, publicKey, signed, value }) => {
  try {
    const key = createPublicKey({ key: Buffer.from(publicKey), format: 'der', type: 'spki' });
    if (!fits(key, scheme)) return false;
    return verify(scheme.is === 'ed25519' ? null : scheme.hash, signed, { key, ...optionsOf(scheme) }, value);
  } catch {
    return false;
  }
};

function fits({ asymmetricKeyType, asymmetricKeyDetails }: KeyObject, scheme: SignatureScheme): boolean {
  switch (scheme.is) {
    case 'ecdsa':
      return asymmetricKeyDetails?.namedCurve === scheme.curve;
    case 'ed25519':
      return asymmetricKeyType === 'ed25519';
    default:
      return asymmetricKeyType === 'rsa';
  }
}

function optionsOf(scheme: SignatureScheme) {
  switch (scheme.is) {
    case 'ecdsa':
      return { dsaEncoding: 'ieee-p1363' } as const;
    case 'rsa-pkcs1':
      return { padding: constants.RSA_PKCS1_PADDING };
    case 'rsa-pss':
      return { padding: constants.RSA_PKCS1_PSS_PADDING, saltLength: scheme.saltLength };
    case 'ed25519':
      return {};
  }
}

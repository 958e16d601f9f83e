import { concatBytes } from '../../core/model/bytes.js';
import type { Curve, SignatureScheme, VerifySignature } from '../../core/ports/cryptography.js';

/** Names of Web Cryptography §20, §21, §23 and §28. */
const HASHES = { sha1: 'SHA-1', sha256: 'SHA-256', sha384: 'SHA-384', sha512: 'SHA-512' };
const CURVES: Record<Curve, string> = { prime256v1: 'P-256', secp384r1: 'P-384', secp521r1: 'P-521' };

export const verifySignature: VerifySignature = async ({ scheme, publicKey, signed, value }) => {
  try {
    const key = await crypto.subtle.importKey('spki', concatBytes([publicKey]), keyOf(scheme), false, [
      'verify',
    ]);
    return await crypto.subtle.verify(schemeOf(scheme), key, concatBytes([value]), concatBytes([signed]));
  } catch {
    return false;
  }
};

function keyOf(scheme: SignatureScheme) {
  switch (scheme.is) {
    case 'ecdsa':
      return { name: 'ECDSA', namedCurve: CURVES[scheme.curve] };
    case 'rsa-pkcs1':
      return { name: 'RSASSA-PKCS1-v1_5', hash: HASHES[scheme.hash] };
    case 'rsa-pss':
      return { name: 'RSA-PSS', hash: HASHES[scheme.hash] };
    case 'ed25519':
      return { name: 'Ed25519' };
  }
}

function schemeOf(scheme: SignatureScheme) {
  switch (scheme.is) {
    case 'ecdsa':
      return { name: 'ECDSA', hash: HASHES[scheme.hash] };
    case 'rsa-pkcs1':
      return { name: 'RSASSA-PKCS1-v1_5' };
    case 'rsa-pss':
      return { name: 'RSA-PSS', saltLength: scheme.saltLength };
    case 'ed25519':
      return { name: 'Ed25519' };
  }
}

import { DossierError } from '../core/model/error.js';
import { OID } from '../core/verify/cms/asn1.js';
import { type PublicKey, signingKey } from '../core/verify/cms/public-key.js';

/** Signature algorithm that goes with SHA-256 for this key. @throws DossierError identity, for other keys */
export function signatureAlgorithm({ kind }: PublicKey): { oid: string; nullParameters: boolean } {
  const key = signingKey(kind);
  if (key === undefined)
    throw new DossierError('identity', 'This kind of key is not used for signing here.', {
      fix: 'Use an EC key on P-256 or P-384, or an RSA key of 2048 to 4096 bits.',
    });
  // RFC 5754 §3.2 and §3.3: RSA carries NULL parameters, ECDSA none.
  return key.is === 'ec'
    ? { oid: OID.ecdsaWithSha256, nullParameters: false }
    : { oid: OID.sha256WithRsa, nullParameters: true };
}

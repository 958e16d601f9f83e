import { digest, digestLarge } from '#platform/hash';
import { isSameBytes, toHex } from '../../model/bytes.js';
import { refuse } from '../malformed.js';
import { OID } from './asn1.js';
import { type Certificate, readCertificate } from './certificate.js';
import { childrenOf, oidOf, requireTag, TAG } from './der.js';
import { HASHES, isSignatureValid, schemeOf, weaknesses } from './signature-scheme.js';
import { readSignedData, type SignedData } from './signed-data.js';

/** A detached signature of the form that dossiers have, parsed and not yet verified. */
export interface DetachedSignature {
  data: SignedData;
  /** The signer's certificate. */
  certificate: Certificate;
  /** All certificates in the signature, the signer's among them. */
  embedded: Certificate[];
}

/**
 * Parses a detached signature whose signed attributes are exactly content type, message digest and signing certificate.
 * @throws Malformed
 */
export function readDetached(structure: Uint8Array): DetachedSignature {
  const data = readSignedData(structure);
  const embedded = data.certificates.map(readCertificate);
  const own = embedded.filter(
    ({ issuer, serial }) =>
      isSameBytes(issuer, data.signer.issuer) && isSameBytes(serial, data.signer.serial),
  );
  const [certificate, second] = own;
  if (certificate === undefined || second !== undefined)
    refuse('the signer is not exactly one of the certificates in the signature');
  const { attributes } = data.signer;
  const wanted = [OID.contentType, OID.messageDigest, OID.signingCertificateV2];
  if (attributes.size !== wanted.length || wanted.some((type) => !attributes.has(type)))
    refuse('the signed attributes are not content type, message digest and signing certificate');
  if (oidOf(attributes.get(OID.contentType), 'content type') !== OID.data)
    refuse('the signed content type is not data');
  return { data, certificate, embedded };
}

/**
 * RFC 5035 §3: the list of ESSCertIDv2 holds the hash of the signer's certificate first, then of every other that
 * came along, each by SHA-256. Certificates outside the list could be swapped without the signature noticing.
 * @throws Malformed
 */
export function requireBinding({ data, certificate, embedded }: DetachedSignature): void {
  const attribute = data.signer.attributes.get(OID.signingCertificateV2);
  const [list] = childrenOf(requireTag(attribute, TAG.sequence, 'signing certificate'));
  const hashes = childrenOf(requireTag(list, TAG.sequence, 'signing certificate')).map((one) => {
    const [hash] = childrenOf(requireTag(one, TAG.sequence, 'signing certificate'));
    const { content } = requireTag(hash, TAG.octetString, 'hash of the signing certificate by SHA-256');
    return toHex(content);
  });
  if (hashes[0] !== hashOf(certificate))
    refuse('the signature was made with another certificate than the one inside');
  // In the order of the list, so that nobody can put them in another.
  if (embedded.map(hashOf).join() !== hashes.join())
    refuse('the certificates inside are not the ones that the signature names, in their order');
}

/** Problems by step of RFC 5652 §5.6; `digest` and `value` are not checked when `algorithms` has any. */
export interface SignatureJudgement {
  algorithms: string[];
  digest: string[];
  value: string[];
  /** Hash of the content in hex, by the signature's digest. */
  contentHash: string;
}

/** Judges a detached signature over the parts of a content, one behind the other. */
export async function judgeDetached(
  { data: { signer }, certificate }: DetachedSignature,
  content: readonly Uint8Array[],
): Promise<SignatureJudgement> {
  const { key } = certificate;
  const algorithms = weaknesses({ digest: signer.digest, ...signer.signature }, key);
  const hash = HASHES[signer.digest];
  if (hash === undefined || algorithms.length > 0)
    return { algorithms, digest: [], value: [], contentHash: '' };
  const actual = await digestLarge(hash, content);
  const said = signer.attributes.get(OID.messageDigest);
  const same = said?.tag === TAG.octetString && isSameBytes(said.content, actual);
  const scheme = schemeOf(signer.signature.algorithm, undefined, key.kind);
  const genuine = await isSignatureValid(scheme, key, signer.signedBytes, signer.signature.value);
  return {
    algorithms,
    digest: same ? [] : ['what is signed was changed afterwards'],
    value: genuine ? [] : ['the signature does not fit the certificate'],
    contentHash: toHex(actual),
  };
}

function hashOf({ der }: Certificate): string {
  return toHex(digest('sha256', [der]));
}

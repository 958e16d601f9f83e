import { createHash } from 'node:crypto';
import * as asn1js from 'asn1js';
import * as pkijs from 'pkijs';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { Curve } from '../core/ports/cryptography.js';
import type { Signer } from '../core/ports/signer.js';
import { OID } from '../core/verify/cms/asn1.js';
import { readCertificate } from '../core/verify/cms/certificate.js';
import { isLowS, otherS, readEcdsaValue } from '../core/verify/cms/ecdsa-value.js';
import { isSignatureValid, schemeOf } from '../core/verify/cms/signature-scheme.js';
import { signatureAlgorithm } from './algorithms.js';
import { ownBuffer } from './own-buffer.js';

/** What a signature is made with, besides its key. */
export interface Signing {
  /** Gets the signature value and gives a time-stamp token over it (RFC 3161) in DER. */
  stamp?: (signatureValue: Uint8Array) => Promise<Uint8Array>;
  /** Aborted when the signature is no longer wanted. */
  signal?: AbortSignal;
}

/**
 * A detached CMS signature (RFC 5652) in DER over content whose SHA-256 is `digest`, with the signed
 * attributes of PAdES baseline B-B (ETSI EN 319 142-1 §6): content type, message digest and
 * signing-certificate-v2 (RFC 5035). The signing time is not an attribute there; the PDF's /M says it.
 * @param stamp gets the signature value and gives the token (RFC 3161) in DER, which becomes an unsigned attribute:
 *   PAdES baseline B-T
 * @throws DossierError identity for a key that is not used for signing here, or a signature that does not fit it;
 *   what signer and `stamp` throw
 */
export async function signDetached(
  digest: Uint8Array,
  by: Signer,
  { stamp, signal }: Signing = {},
): Promise<Uint8Array> {
  const data = await signedData(digest, by, signal);
  const [signer] = data.signerInfos;
  if (signer === undefined) throw new Error('signed data without a signer');
  if (stamp === undefined) return encode(data);
  const token = await stamp(Uint8Array.from(signer.signature.valueBlock.valueHexView));
  signer.unsignedAttrs = new pkijs.SignedAndUnsignedAttributes({
    type: 1,
    attributes: [
      new pkijs.Attribute({
        type: OID.signatureTimeStamp,
        values: [asn1js.fromBER(ownBuffer(token)).result],
      }),
    ],
  });
  return encode(data);
}

function encode(data: pkijs.SignedData): Uint8Array {
  const content = new pkijs.ContentInfo({ contentType: OID.signedData, content: data.toSchema(true) });
  return new Uint8Array(content.toSchema().toBER(false));
}

async function signedData(digest: Uint8Array, by: Signer, signal?: AbortSignal): Promise<pkijs.SignedData> {
  const certificate = pkijs.Certificate.fromBER(ownBuffer(by.certificateDer));
  const chain = by.chain ?? [];
  const attributes = signedAttributes(digest, [by.certificateDer, ...chain]);
  const signedBytes = new Uint8Array(attributes.toSchema().toBER(false));
  // RFC 5652 §5.4: what is signed is the SET OF, not the [0] that stands in the structure.
  signedBytes[0] = 0x31;
  const { oid, nullParameters } = signatureAlgorithm(readCertificate(by.certificateDer).key);
  const value = await valueBy(by, signedBytes, signal);
  const signer = new pkijs.SignerInfo({
    version: 1,
    sid: new pkijs.IssuerAndSerialNumber({
      issuer: certificate.issuer,
      serialNumber: certificate.serialNumber,
    }),
    digestAlgorithm: sha256(),
    signedAttrs: attributes,
    signatureAlgorithm: new pkijs.AlgorithmIdentifier({
      algorithmId: oid,
      ...omitUndefined({ algorithmParams: nullParameters ? new asn1js.Null() : undefined }),
    }),
    signature: new asn1js.OctetString({ valueHex: ownBuffer(value) }),
  });
  return new pkijs.SignedData({
    version: 1,
    digestAlgorithms: [sha256()],
    encapContentInfo: new pkijs.EncapsulatedContentInfo({ eContentType: OID.data }),
    certificates: [certificate, ...chain.map((der) => pkijs.Certificate.fromBER(ownBuffer(der)))],
    signerInfos: [signer],
  });
}

/** The signature, tried against the certificate: no dossier is spoilt by a key service that is set up wrongly. */
async function valueBy(by: Signer, signedBytes: Uint8Array, signal?: AbortSignal): Promise<Uint8Array> {
  const value = await by.sign({
    digest: new Uint8Array(createHash('sha256').update(signedBytes).digest()),
    bytes: Uint8Array.from(signedBytes),
    ...omitUndefined({ signal }),
  });
  const { key } = readCertificate(by.certificateDer);
  const scheme = schemeOf(signatureAlgorithm(key).oid, undefined, key.kind);
  if (!(await isSignatureValid(scheme, key, signedBytes, value)))
    throw new DossierError('identity', 'the signature that the signer gave does not fit its certificate', {
      fix: 'Check that certificate and key belong together, and that it signs by SHA-256 with RSASSA-PKCS1-v1_5, or with ECDSA in DER.',
    });
  return key.kind.is === 'ec' ? withLowS(value, key.kind.curve) : value;
}

/** The same signature with the lower of the two s that verify, so that nobody can put the other in its place. */
function withLowS(value: Uint8Array, curve: Curve): Uint8Array {
  const { r, s } = readEcdsaValue(value);
  if (isLowS(s, curve)) return value;
  const integers = [r, otherS(s, curve)].map((one) => asn1js.Integer.fromBigInt(one));
  return new Uint8Array(new asn1js.Sequence({ value: integers }).toBER(false));
}

function sha256(): pkijs.AlgorithmIdentifier {
  return new pkijs.AlgorithmIdentifier({ algorithmId: OID.sha256 });
}

function signedAttributes(digest: Uint8Array, certificates: readonly Uint8Array[]) {
  const attribute = (type: string, value: asn1js.BaseBlock) => new pkijs.Attribute({ type, values: [value] });
  // RFC 5035 §3: ESSCertIDv2 with the default hash algorithm, SHA-256, left out as DER wants it; the signer's own
  // first, then all that come along, so that none of them can be swapped.
  const essCertIds = certificates.map(
    (der) =>
      new asn1js.Sequence({
        value: [new asn1js.OctetString({ valueHex: ownBuffer(createHash('sha256').update(der).digest()) })],
      }),
  );
  const attributes = [
    attribute(OID.contentType, new asn1js.ObjectIdentifier({ value: OID.data })),
    attribute(OID.messageDigest, new asn1js.OctetString({ valueHex: ownBuffer(digest) })),
    attribute(
      OID.signingCertificateV2,
      new asn1js.Sequence({ value: [new asn1js.Sequence({ value: essCertIds })] }),
    ),
  ];
  const inOrder = attributes
    .map((one) => ({ one, der: Buffer.from(one.toSchema().toBER(false)) }))
    .sort((a, b) => Buffer.compare(a.der, b.der))
    .map(({ one }) => one);
  return new pkijs.SignedAndUnsignedAttributes({ type: 0, attributes: inOrder });
}

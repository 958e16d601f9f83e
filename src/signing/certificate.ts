import { createHash, type KeyObject, sign } from 'node:crypto';
import * as asn1js from 'asn1js';
import * as pkijs from 'pkijs';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { OID } from '../core/verify/cms/asn1.js';
import { signatureAlgorithm } from './algorithms.js';
import { publicKeyOf } from './identity-material.js';
import { ownBuffer } from './own-buffer.js';

export interface CertificateRequest {
  /** Common name of subject and issuer, at most 64 characters (RFC 5280 ub-common-name). */
  name: string;
  publicKey: KeyObject;
  privateKey: KeyObject;
  notBefore: Date;
  notAfter: Date;
  /** 16 random bytes. */
  serial: Uint8Array;
}

/** A self-signed end-entity certificate (RFC 5280), in DER. */
export function selfSigned(request: CertificateRequest): Uint8Array {
  const { oid, nullParameters } = signatureAlgorithm(publicKeyOf(request.publicKey));
  const algorithm = () =>
    new pkijs.AlgorithmIdentifier({
      algorithmId: oid,
      ...omitUndefined({ algorithmParams: nullParameters ? new asn1js.Null() : undefined }),
    });
  const certificate = new pkijs.Certificate();
  certificate.version = 2;
  certificate.serialNumber = new asn1js.Integer({ valueHex: ownBuffer(positive(request.serial)) });
  for (const party of [certificate.issuer, certificate.subject])
    party.typesAndValues.push(
      new pkijs.AttributeTypeAndValue({
        type: OID.commonName,
        value: new asn1js.Utf8String({ value: request.name }),
      }),
    );
  certificate.notBefore = time(request.notBefore);
  certificate.notAfter = time(request.notAfter);
  const spki = request.publicKey.export({ type: 'spki', format: 'der' });
  certificate.subjectPublicKeyInfo = new pkijs.PublicKeyInfo({
    schema: asn1js.fromBER(ownBuffer(spki)).result,
  });
  certificate.extensions = extensions(certificate.subjectPublicKeyInfo);
  certificate.signature = algorithm();
  certificate.signatureAlgorithm = algorithm();
  const signed = certificate.encodeTBS();
  certificate.signatureValue = new asn1js.BitString({
    valueHex: ownBuffer(sign('sha256', new Uint8Array(signed.toBER(false)), request.privateKey)),
  });
  return new Uint8Array(certificate.toSchema(true).toBER(false));
}

function extensions(publicKey: pkijs.PublicKeyInfo): pkijs.Extension[] {
  const extension = (extnID: string, critical: boolean, value: ArrayBuffer) =>
    new pkijs.Extension({ extnID, critical, extnValue: value });
  // RFC 7093 §2 method 1: the leftmost 160 bits of SHA-256 over the key bits.
  const keyBits = publicKey.subjectPublicKey.valueBlock.valueHexView;
  const keyId = createHash('sha256').update(keyBits).digest().subarray(0, 20);
  return [
    extension(OID.basicConstraints, true, new pkijs.BasicConstraints({ cA: false }).toSchema().toBER(false)),
    // RFC 5280 §4.2.1.3: bits 0 and 1 are digitalSignature and nonRepudiation.
    extension(
      OID.keyUsage,
      true,
      new asn1js.BitString({ valueHex: ownBuffer(Uint8Array.of(0xc0)), unusedBits: 6 }).toBER(false),
    ),
    extension(
      OID.subjectKeyIdentifier,
      false,
      new asn1js.OctetString({ valueHex: ownBuffer(keyId) }).toBER(false),
    ),
  ];
}

/** The subject's common name as it is, without the escapes of a written subject; empty when there is none. */
export function commonNameOf(der: Uint8Array): string {
  const { subject } = pkijs.Certificate.fromBER(ownBuffer(der));
  const value: unknown = subject.typesAndValues.find(({ type }) => type === OID.commonName)?.value;
  return value instanceof asn1js.Utf8String || value instanceof asn1js.PrintableString
    ? value.valueBlock.value
    : '';
}

/** RFC 5280 §4.1.2.5: UTCTime through 2049, GeneralizedTime from 2050. */
function time(value: Date): pkijs.Time {
  return new pkijs.Time({ type: value.getUTCFullYear() < 2050 ? 0 : 1, value });
}

/** RFC 5280 §4.1.2.2: a serial number is positive; a leading byte of 0x40 to 0x7f keeps its length fixed. */
function positive(serial: Uint8Array): Uint8Array {
  const bytes = Uint8Array.from(serial);
  bytes[0] = ((bytes[0] ?? 0) & 0x7f) | 0x40;
  return bytes;
}

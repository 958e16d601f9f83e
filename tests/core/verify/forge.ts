import { createHash, type KeyObject, sign } from 'node:crypto';
import { toInstant } from '../../../src/core/model/time.js';
import type { Verification } from '../../../src/core/model/verification.js';
import { readCertificate } from '../../../src/core/verify/cms/certificate.js';
import { isLowS, readEcdsaValue } from '../../../src/core/verify/cms/ecdsa-value.js';
import type { Identity } from '../../../src/signing/identity.js';
import { type PreparedPdf, preparePdf } from '../../../src/signing/placeholder.js';
import { digestOf, insertSignature, signPdf } from '../../../src/signing/sign-pdf.js';
import { type Parts, sampleParts, samplePdf } from '../../signing/sample.js';
import { countingBytes, SIGNED_AT, sampleIdentity } from '../../signing/sample-identity.js';

export const identity = sampleIdentity();
/** Somebody else who took the same name. */
export const stranger = sampleIdentity();
const options = { at: toInstant(SIGNED_AT.getTime()) };

export async function dossier(
  parts: Parts = sampleParts(),
  signer: Identity = identity,
): Promise<Uint8Array> {
  return signPdf(await samplePdf(parts), signer, { ...options, random: countingBytes() });
}

/** A dossier that is complete but for its signature. */
export async function prepared(): Promise<PreparedPdf> {
  return preparePdf(await samplePdf(), options, Buffer.from(countingBytes()(16)).toString('hex'));
}

/** Replaces text by text of the same length, so that all offsets stay. */
export function overwrite(bytes: Uint8Array, old: string, by: string): Uint8Array {
  const view = Buffer.from(bytes);
  const at = view.indexOf(old, 0, 'latin1');
  if (at < 0 || old.length !== by.length) throw new Error(`cannot put ${by} for ${old}`);
  view.write(by, at, 'latin1');
  return new Uint8Array(view);
}

/** A dossier that was changed before it was signed: its cryptography is right. */
export async function signedAfter(old: string, by: string): Promise<Uint8Array> {
  const one = await prepared();
  return signAs({ ...one, bytes: overwrite(one.bytes, old, by) });
}

export function signAs(one: PreparedPdf, shape: Shape = {}, signer: Identity = identity): Uint8Array {
  return insertSignature(one, cms(digestOf(one), signer, shape));
}

/** An update appended after the signature, as ISO 32000-1 §7.5.6 allows: it replaces one object. */
export function updated(bytes: Uint8Array, number: number, body: string): Uint8Array {
  const old = Buffer.from(bytes).toString('latin1');
  const startxref = /startxref\n(\d+)\n%%EOF$/.exec(old)?.[1] ?? '';
  const trailer = /trailer\n<<([\s\S]*?)>>\n\nstartxref/.exec(old)?.[1] ?? '';
  const at = bytes.length + 1;
  const object = `${number} 0 obj\n${body}\nendobj\n`;
  const table = `xref\n${number} 1\n${String(at).padStart(10, '0')} 00000 n \n`;
  return Buffer.concat([
    bytes,
    Buffer.from(
      `\n${object}${table}trailer\n<<${trailer}/Prev ${startxref}>>\nstartxref\n${at + object.length}\n%%EOF`,
    ),
  ]);
}

export function failed({ checks }: Verification): string[] {
  return checks.filter(({ result }) => result === 'failed').map(({ id }) => id);
}

/** How a forged signature structure differs from a right one. */
export interface Shape {
  digestName?: keyof typeof DIGESTS;
  /** Signature algorithm, as the bytes of its identifier. */
  signatureOid?: Uint8Array;
  signers?: number;
  withoutSignedAttributes?: boolean;
  leaveOut?: 'content-type' | 'message-digest' | 'signing-certificate';
  contentType?: Uint8Array;
  add?: Uint8Array;
  boundTo?: Uint8Array;
  certificate?: Uint8Array;
  unsorted?: boolean;
  content?: Uint8Array;
  unsigned?: Uint8Array;
  after?: Uint8Array;
  /** The larger of the two s that verify. */
  highS?: boolean;
}

const oid = (hex: string) => der(0x06, Buffer.from(hex, 'hex'));
export const OIDS = {
  data: oid('2a864886f70d010701'),
  signedData: oid('2a864886f70d010702'),
  contentType: oid('2a864886f70d010903'),
  messageDigest: oid('2a864886f70d010904'),
  signingTime: oid('2a864886f70d010905'),
  signingCertificateV2: oid('2a864886f70d010910022f'),
  tstInfo: oid('2a864886f70d0109100104'),
  timeStamp: oid('2a864886f70d010910020e'),
  ecdsaSha1: oid('2a8648ce3d0401'),
  ecdsaSha256: oid('2a8648ce3d040302'),
  ecdsaSha384: oid('2a8648ce3d040303'),
};
const DIGESTS = {
  md5: oid('2a864886f70d0205'),
  sha1: oid('2b0e03021a'),
  sha256: oid('608648016503040201'),
};

/** One element of DER, for structures that the product itself would never write. */
export function der(tag: number, ...parts: Uint8Array[]): Uint8Array {
  const content = Buffer.concat(parts);
  const { length } = content;
  const size =
    length < 0x80 ? [length] : length < 0x100 ? [0x81, length] : [0x82, length >> 8, length & 0xff];
  return Buffer.concat([Uint8Array.of(tag, ...size), content]);
}

/** Signatures are made anew until s is in the wanted half. */
function valueBy(hash: string, signed: Uint8Array, key: KeyObject, high: boolean): Uint8Array {
  for (;;) {
    const value = sign(hash, signed, key);
    if (key.asymmetricKeyType !== 'ec') return value;
    if (isLowS(readEcdsaValue(value).s, 'prime256v1') !== high) return value;
  }
}

export function cms(digest: Uint8Array, signer: Identity, shape: Shape = {}): Uint8Array {
  const certificate = shape.certificate ?? signer.certificateDer;
  const hash = shape.digestName ?? 'sha256';
  const algorithm = der(0x30, DIGESTS[hash]);
  const bound = createHash('sha256')
    .update(shape.boundTo ?? certificate)
    .digest();
  const attributes = [
    ['content-type', der(0x30, OIDS.contentType, der(0x31, shape.contentType ?? OIDS.data))] as const,
    ['message-digest', der(0x30, OIDS.messageDigest, der(0x31, der(0x04, digest)))] as const,
    [
      'signing-certificate',
      der(0x30, OIDS.signingCertificateV2, der(0x31, der(0x30, der(0x30, der(0x30, der(0x04, bound)))))),
    ] as const,
  ]
    .filter(([name]) => name !== shape.leaveOut)
    .map(([, attribute]) => attribute);
  if (shape.add !== undefined) attributes.push(shape.add);
  attributes.sort(Buffer.compare);
  if (shape.unsorted === true) attributes.reverse();
  const signedBytes = shape.withoutSignedAttributes === true ? digest : der(0x31, ...attributes);
  const { issuer, serial } = readCertificate(certificate);
  const one = der(
    0x30,
    der(0x02, Uint8Array.of(1)),
    der(0x30, issuer, serial),
    algorithm,
    ...(shape.withoutSignedAttributes === true ? [] : [der(0xa0, ...attributes)]),
    der(0x30, shape.signatureOid ?? OIDS.ecdsaSha256),
    der(0x04, valueBy(hash, signedBytes, signer.key, shape.highS === true)),
    ...(shape.unsigned === undefined ? [] : [der(0xa1, shape.unsigned)]),
  );
  const data = der(
    0x30,
    der(0x02, Uint8Array.of(1)),
    der(0x31, algorithm),
    der(0x30, OIDS.data, ...(shape.content === undefined ? [] : [der(0xa0, der(0x04, shape.content))])),
    der(0xa0, certificate),
    der(0x31, ...Array.from({ length: shape.signers ?? 1 }, () => one)),
  );
  return Buffer.concat([der(0x30, OIDS.signedData, der(0xa0, data)), shape.after ?? new Uint8Array()]);
}

import { createHash, verify as verifySignature } from 'node:crypto';
import type { Signer } from '../model/verification.js';
import { keyKind, OID } from '../seal/asn1.js';
import { checkCertificate } from './check-certificate.js';
import type { Checklist } from './checklist.js';
import { type Certificate, readCertificate, subjectLine } from './cms/certificate.js';
import { type Der, inside, oidOf, TAG, tagged } from './cms/der.js';
import { readSignedData, type SignedData, splitContents } from './cms/signed-data.js';
import { refuse } from './malformed.js';
import type { PdfFile } from './pdf/file.js';
import {
  type Covered,
  claimedTime,
  coveredBytes,
  findSignature,
  requireCertification,
} from './pdf/signature.js';

/** Clocks of honest machines differ; a day forgives a wrong zone. */
const CLOCK_TOLERANCE_MS = 24 * 3600_000;
/** The hash of each digest that is accepted; MD5 and SHA-1 are not. */
const HASHES: Record<string, string> = {
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

export interface TrustOptions {
  /** Certificates in DER: the signer's own, or those of authorities. */
  trusted?: readonly Uint8Array[];
  /** The time that the claimed signing time must not lie after. */
  at?: Date;
}

/** Checks the one signature of the file, its certificate and who vouches for it. */
export function checkSignature(file: PdfFile, list: Checklist, options: TrustOptions): Signer | undefined {
  const found = list.ask(
    'signature.present',
    () => findSignature(file),
    () => 'one signature found',
  );
  if (found === undefined) return undefined;
  list.ask(
    'signature.certification',
    () => requireCertification(file, found),
    () => 'certified, no changes allowed',
  );
  const time = claimedTime(found);
  checkTime(time, list, options.at);
  const covered = list.ask(
    'signature.range',
    () => coveredBytes(file, found),
    ({ first, second }) => `${first.length + second.length} of ${file.bytes.length} bytes are covered`,
  );
  if (covered === undefined) return undefined;
  const read = list.ask(
    'signature.structure',
    () => readCms(covered, list),
    () => 'one signer, certificate inside',
  );
  if (read === undefined) return undefined;
  const { data, certificate, embedded } = read;
  checkCryptography(covered, data, certificate, list);
  checkCertificate(certificate, embedded, time, list, options.trusted ?? []);
  return {
    name: subjectLine(certificate),
    certificateSha256: createHash('sha256').update(certificate.der).digest('hex'),
    ...(time === undefined ? {} : { claimedTime: time.toISOString() }),
  };
}

function checkTime(time: Date | undefined, list: Checklist, now: Date | undefined): void {
  if (time === undefined)
    list.fail('signature.time', 'the signature states no signing time that can be read');
  else if (now !== undefined && time.getTime() > now.getTime() + CLOCK_TOLERANCE_MS)
    list.fail('signature.time', `the claimed signing time ${time.toISOString()} lies in the future`);
  else list.pass('signature.time', `${time.toISOString()}, by the signer's own clock`);
}

function readCms({ contents }: Covered, list: Checklist) {
  const { structure, rest } = splitContents(contents);
  list.judge(
    'signature.padding',
    rest.every((byte) => byte === 0) ? [] : ['something other than zeros follows the signature in its room'],
    `${rest.length} zero bytes`,
  );
  const data = readSignedData(structure);
  const embedded = data.certificates.map(readCertificate);
  const own = embedded.filter(
    ({ issuer, serial }) =>
      Buffer.compare(issuer, data.signer.issuer) === 0 && Buffer.compare(serial, data.signer.serial) === 0,
  );
  const [certificate, second] = own;
  if (certificate === undefined || second !== undefined)
    refuse('the signer is not exactly one of the certificates in the signature');
  const { attributes, hasTimeStamp } = data.signer;
  const wanted = [OID.contentType, OID.messageDigest, OID.signingCertificateV2];
  if (attributes.size !== wanted.length || wanted.some((type) => !attributes.has(type)))
    refuse('the signed attributes are not content type, message digest and signing certificate');
  if (oidOf(attributes.get(OID.contentType), 'content type') !== OID.data)
    refuse('the signed content type is not data');
  list.skip(
    'signature.time-stamp',
    hasTimeStamp
      ? 'There is a time stamp; this version does not check it.'
      : 'There is none; it is not required.',
  );
  return { data, certificate, embedded };
}

function checkCryptography(
  covered: Covered,
  data: SignedData,
  certificate: Certificate,
  list: Checklist,
): void {
  const { digest, signature, attributes, signedBytes } = data.signer;
  const hash = HASHES[digest];
  const wrong = weaknesses(data, certificate);
  list.judge('signature.algorithms', wrong, `${hash ?? digest} with ${describeKey(certificate)}`);
  list.ask(
    'signature.certificate',
    () => requireBinding(attributes.get(OID.signingCertificateV2), certificate),
    () => 'its hash is among what was signed',
  );
  if (hash === undefined || wrong.length > 0) return;
  const actual = createHash(hash).update(covered.first).update(covered.second).digest();
  const said = attributes.get(OID.messageDigest);
  const same = said?.tag === TAG.octetString && Buffer.compare(said.content, actual) === 0;
  list.judge(
    'signature.digest',
    same ? [] : ['the file was changed after it was signed'],
    actual.toString('hex'),
  );
  const genuine = holds(hash, signedBytes, certificate, signature.value);
  list.judge('signature.value', genuine ? [] : ['the signature does not fit the certificate'], 'it fits');
}

function holds(hash: string, signed: Uint8Array, { x509 }: Certificate, value: Uint8Array): boolean {
  try {
    return verifySignature(hash, signed, x509.publicKey, value);
  } catch {
    return false;
  }
}

function weaknesses({ signer }: SignedData, { x509 }: Certificate): string[] {
  const wrong: string[] = [];
  if (HASHES[signer.digest] === undefined) wrong.push(`the digest ${signer.digest} is too weak or unknown`);
  const kind = keyKind(x509.publicKey);
  if (kind === undefined) wrong.push('the key is too short or of an unknown kind');
  const { algorithm, nullParameters } = signer.signature;
  const expected = SIGNATURES[algorithm];
  if (expected === undefined || expected.digest !== signer.digest)
    wrong.push(`the signature algorithm ${algorithm} is too weak, unknown, or goes with another digest`);
  else if (expected.key !== kind?.is || nullParameters !== (kind.is === 'rsa'))
    wrong.push('the signature algorithm does not go with the key');
  return wrong;
}

function describeKey({ x509 }: Certificate): string {
  const kind = keyKind(x509.publicKey);
  if (kind === undefined) return 'an unknown key';
  return kind.is === 'ec' ? `an EC key on ${kind.curve}` : `an RSA key of ${kind.bits} bits`;
}

/** RFC 5035 §3: the first ESSCertIDv2 holds the hash of the signer's certificate, by SHA-256 when it names none. */
function requireBinding(attribute: Der | undefined, certificate: Certificate): void {
  const [list] = inside(tagged(attribute, TAG.sequence, 'signing certificate'));
  const [first] = inside(tagged(list, TAG.sequence, 'signing certificate'));
  const [hash] = inside(tagged(first, TAG.sequence, 'signing certificate'));
  const { content } = tagged(hash, TAG.octetString, 'hash of the signing certificate by SHA-256');
  const actual = createHash('sha256').update(certificate.der).digest();
  if (Buffer.compare(content, actual) !== 0)
    refuse('the signature was made with another certificate than the one inside');
}

import { digest } from '#platform/hash';
import { isSameBytes, latin1 } from '../../model/bytes.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import { refuse } from '../malformed.js';
import { OID } from './asn1.js';
import { type Certificate, readCertificate, validAt } from './certificate.js';
import { childrenOf, type Der, oidOf, readDer, requireTag, TAG } from './der.js';
import { parseGeneralizedTime } from './generalized-time.js';
import { describeKey } from './public-key.js';
import { HASHES, isSignatureValid, schemeOf, weaknesses } from './signature-scheme.js';

/** The contents of a time-stamp token (RFC 3161), parsed and not yet verified. */
export interface TimeStamp {
  policy: string;
  /** Hash of what was stamped: digest identifier and bytes. */
  imprint: { digest: string; hash: Uint8Array };
  at: Date;
  /** DER content of the nonce, when there is one. */
  nonce?: Uint8Array;
  certificates: Certificate[];
  signer: {
    /** Issuer and serial number, or the id of the key. */
    id: Der;
    digest: string;
    algorithm: string;
    nullParameters: boolean;
    value: Uint8Array;
    attributes: Map<string, Der>;
    signedBytes: Uint8Array;
  };
  /** The bytes of TSTInfo, which the server signed. */
  info: Uint8Array;
}

/** Bytes that a token may have; one with its certificates has 2,000 to 8,000. */
const LARGEST_TOKEN = 100_000;
const LARGEST_LIST = 50;

/**
 * Reads a token as servers write it: one signer, certificates inside.
 * @throws Malformed
 */
export function readTimeStamp(token: Uint8Array): TimeStamp {
  if (token.length > LARGEST_TOKEN) refuse('the time stamp is larger than one can be');
  const outer = readDer(token);
  if (outer.raw.length !== token.length) refuse('there are bytes after the time stamp');
  const info = childrenOf(requireTag(outer, TAG.sequence, 'time stamp'));
  if (oidOf(info[0], 'content type') !== OID.signedData || info.length !== 2)
    refuse('the time stamp is not signed data');
  const [wrapped] = childrenOf(requireTag(info[1], TAG.context0, 'signed data'));
  const parts = childrenOf(requireTag(wrapped, TAG.sequence, 'signed data'));
  const [, , content] = parts;
  const [type, holder] = childrenOf(requireTag(content, TAG.sequence, 'content information'));
  if (oidOf(type, 'content type') !== OID.timeStampInfo) refuse('the time stamp holds something else');
  const [octets] = childrenOf(requireTag(holder, TAG.context0, 'content'));
  const tstInfo = requireTag(octets, TAG.octetString, 'content').content;
  const certificates = parts
    .filter(({ tag }) => tag === TAG.context0)
    .flatMap(childrenOf)
    .slice(0, LARGEST_LIST)
    .map(({ raw }) => readCertificate(raw));
  const [one, second] = childrenOf(requireTag(parts.at(-1), TAG.set, 'signers'));
  if (one === undefined || second !== undefined) refuse('the time stamp does not have exactly one signer');
  return { ...readInfo(tstInfo), certificates, signer: readSigner(one), info: tstInfo };
}

function readInfo(bytes: Uint8Array): Pick<TimeStamp, 'policy' | 'imprint' | 'at' | 'nonce'> {
  const outer = readDer(bytes);
  if (outer.raw.length !== bytes.length) refuse('there are bytes after the content of the time stamp');
  const [version, policy, imprint, serial, time, ...more] = childrenOf(
    requireTag(outer, TAG.sequence, 'time stamp'),
  );
  if (requireTag(version, TAG.integer, 'version').content[0] !== 1)
    refuse('the time stamp is of another version');
  requireTag(serial, TAG.integer, 'serial number of the time stamp');
  const [algorithm, hash] = childrenOf(requireTag(imprint, TAG.sequence, 'imprint'));
  const nonce = more.find(({ tag }) => tag === TAG.integer)?.content;
  return {
    policy: oidOf(policy, 'policy'),
    imprint: {
      digest: oidOf(childrenOf(requireTag(algorithm, TAG.sequence, 'digest algorithm'))[0]),
      hash: requireTag(hash, TAG.octetString, 'imprint').content,
    },
    at:
      // RFC 3161 §2.4.2
      parseGeneralizedTime(latin1(requireTag(time, TAG.generalizedTime, 'time').content)) ??
      refuse('the time stamp says no time that can be read'),
    ...omitUndefined({ nonce }),
  };
}

function readSigner(element: Der): TimeStamp['signer'] {
  const [, id, digest, attributes, algorithm, value] = childrenOf(
    requireTag(element, TAG.sequence, 'signer'),
  );
  const set = requireTag(attributes, TAG.context0, 'signed attributes');
  const found = new Map<string, Der>();
  for (const attribute of childrenOf(set)) {
    const [type, values] = childrenOf(requireTag(attribute, TAG.sequence, 'attribute'));
    const [only, more] = childrenOf(requireTag(values, TAG.set, 'attribute value'));
    const name = oidOf(type, 'attribute type');
    if (only === undefined || more !== undefined || found.has(name))
      refuse(`the signed attribute ${name} of the time stamp does not have exactly one value`);
    found.set(name, only);
  }
  const signedBytes = Uint8Array.from(set.raw);
  signedBytes[0] = TAG.set;
  const digestOid = oidOf(childrenOf(requireTag(digest, TAG.sequence, 'digest algorithm'))[0]);
  const [name, parameters] = childrenOf(requireTag(algorithm, TAG.sequence, 'signature algorithm'));
  const said = oidOf(name, 'signature algorithm');
  return {
    id: id ?? refuse('the time stamp does not name its signer'),
    digest: digestOid,
    // RFC 3370 §3.2 lets a signer name the key's algorithm alone; the digest is then the one stated beside it.
    algorithm: said === OID.rsaEncryption ? (RSA_WITH[digestOid] ?? said) : said,
    nullParameters: parameters?.tag === TAG.null,
    value: requireTag(value, TAG.octetString, 'signature value').content,
    attributes: found,
    signedBytes,
  };
}

const RSA_WITH: Record<string, string> = {
  [OID.sha256]: OID.sha256WithRsa,
  [OID.sha384]: OID.sha384WithRsa,
  [OID.sha512]: OID.sha512WithRsa,
};

/** Verifies a token over the stamped bytes: its problems, none for a good one, and the server's certificate. */
export async function judgeTimeStamp(
  stamp: TimeStamp,
  stamped: Uint8Array,
): Promise<{ wrong: string[]; server?: Certificate; said: string }> {
  const wrong: string[] = [];
  const hash = HASHES[stamp.imprint.digest];
  if (hash === undefined)
    wrong.push(`the time stamp uses the digest ${stamp.imprint.digest}, too weak or unknown`);
  else if (!isSameBytes(digest(hash, [stamped]), stamp.imprint.hash))
    wrong.push('the time stamp is over something else');
  const server = findServer(stamp);
  if (server === undefined)
    return { wrong: [...wrong, 'the certificate of the time-stamp server is not inside'], said: '' };
  const { signer } = stamp;
  if (!isNamedBy(server, signer.id)) wrong.push('the time stamp names another signer than its certificate');
  const { key } = server;
  const weak = weaknesses(signer, key);
  wrong.push(...weak.map((words) => `time stamp: ${words}`));
  const type = signer.attributes.get(OID.contentType);
  if (type?.tag !== TAG.oid || oidOf(type) !== OID.timeStampInfo)
    wrong.push('the signed content type of the time stamp is another');
  const signedBy = HASHES[signer.digest];
  if (signedBy !== undefined && weak.length === 0) {
    const said = signer.attributes.get(OID.messageDigest);
    const actual = digest(signedBy, [stamp.info]);
    if (said?.tag !== TAG.octetString || !isSameBytes(said.content, actual))
      wrong.push('the time stamp was changed after the server signed it');
    const scheme = schemeOf(signer.algorithm, undefined, key.kind);
    if (!(await isSignatureValid(scheme, key, signer.signedBytes, signer.value)))
      wrong.push('the signature of the time stamp does not fit its certificate');
  }
  // The key of a time-stamp server is for time stamps alone (RFC 3161 §2.3).
  if (!server.timeStampsOnly)
    wrong.push('the certificate of the time stamp is not one for time stamps alone');
  if (!validAt(server, stamp.at))
    wrong.push('the certificate of the time-stamp server was not valid at that time');
  return {
    wrong,
    server,
    said: `${stamp.at.toISOString()} by ${server.subjectLine}, policy ${stamp.policy}, ${describeKey(key)}`,
  };
}

/** RFC 5652 §5.3: by issuer and serial number; by the id of the key it is not held against the certificate. */
function isNamedBy({ issuer, serial }: Certificate, id: Der): boolean {
  if (id.tag !== TAG.sequence) return id.tag === TAG.implicit0;
  const [named, number] = childrenOf(id);
  return (
    named !== undefined &&
    number !== undefined &&
    isSameBytes(named.raw, issuer) &&
    isSameBytes(number.raw, serial)
  );
}

/**
 * The certificate that the token's signature names by its hash: ESSCertIDv2 (RFC 5035) or, in older servers,
 * ESSCertID with SHA-1 (RFC 2634), which only picks among the certificates here; the signature must fit it anyway.
 */
function findServer({ signer, certificates }: TimeStamp): Certificate | undefined {
  const v2 = signer.attributes.get(OID.signingCertificateV2);
  const attribute = v2 ?? signer.attributes.get(OID.signingCertificate);
  if (attribute === undefined) return undefined;
  const [list] = childrenOf(requireTag(attribute, TAG.sequence, 'signing certificate'));
  const [first] = childrenOf(requireTag(list, TAG.sequence, 'signing certificate'));
  const [head, next] = childrenOf(requireTag(first, TAG.sequence, 'signing certificate'));
  const named = v2 !== undefined && head?.tag === TAG.sequence;
  const algorithm = named ? HASHES[oidOf(childrenOf(head)[0])] : v2 === undefined ? 'sha1' : 'sha256';
  const { content } = requireTag(named ? next : head, TAG.octetString, 'hash of the signing certificate');
  if (algorithm === undefined) return undefined;
  return certificates.find(({ der }) => isSameBytes(digest(algorithm, [der]), content));
}

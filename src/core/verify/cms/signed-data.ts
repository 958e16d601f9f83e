import { compareBytes } from '../../model/bytes.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import { refuse } from '../malformed.js';
import { OID } from './asn1.js';
import { childrenOf, type Der, oidOf, readDer, requireTag, TAG } from './der.js';

/** The contents of a detached signature, parsed and not yet verified. */
export interface SignedData {
  /** The embedded certificates in DER. A signature without the signer's is refused. */
  certificates: Uint8Array[];
  signer: {
    /** Issuer and serial number, as the DER bytes of both. */
    issuer: Uint8Array;
    serial: Uint8Array;
    digest: string;
    signature: { algorithm: string; nullParameters: boolean; value: Uint8Array };
    /** Type and the one value of each signed attribute. */
    attributes: Map<string, Der>;
    /** The bytes that were signed: the attributes as SET OF (RFC 5652 §5.4). */
    signedBytes: Uint8Array;
    /** The time-stamp token over the signature value, in DER. */
    timeStamp?: Uint8Array;
  };
}

/**
 * Splits the value of /Contents into the CMS structure and the padding behind it.
 * @throws Malformed when there is no structure
 */
export function splitContents(contents: Uint8Array): { structure: Uint8Array; rest: Uint8Array } {
  const { raw } = readDer(contents);
  return { structure: raw, rest: contents.subarray(raw.length) };
}

/**
 * Reads a CMS SignedData (RFC 5652 §5) of the one shape that a dossier has: no content inside, one signer named
 * by issuer and serial number, signed attributes in DER order, one value each.
 * @throws Malformed for every other shape
 */
export function readSignedData(structure: Uint8Array): SignedData {
  const info = childrenOf(requireTag(readDer(structure), TAG.sequence, 'outer sequence'));
  if (oidOf(info[0], 'content type') !== OID.signedData || info.length !== 2)
    refuse('this is not signed data');
  const wrapped = childrenOf(requireTag(info[1], TAG.context0, 'signed data'));
  if (wrapped.length !== 1) refuse('the signature structure holds more than signed data');
  const [version, digests, content, certificates, signers, more] = childrenOf(
    requireTag(wrapped[0], TAG.sequence, 'signed data'),
  );
  requireOne(version, 'version of the signed data');
  requireDetached(requireTag(content, TAG.sequence, 'content information'));
  if (more !== undefined) refuse('the signature structure holds more than certificates and one signer');
  const found = childrenOf(requireTag(certificates, TAG.context0, 'certificate')).map(
    (one) => requireTag(one, TAG.sequence, 'certificate').raw,
  );
  if (found.length === 0) refuse('the signature holds no certificate');
  const listed = childrenOf(requireTag(signers, TAG.set, 'signer'));
  if (listed.length !== 1) refuse(`the signature has ${listed.length} signers instead of one`);
  const signer = readSigner(requireTag(listed[0], TAG.sequence, 'signer'));
  const announced = childrenOf(requireTag(digests, TAG.set, 'digest algorithms')).map(digestOf);
  if (announced.length !== 1 || announced[0] !== signer.digest)
    refuse('the signature announces another digest algorithm than it uses');
  return { certificates: found, signer };
}

function requireDetached(content: Der): void {
  const parts = childrenOf(content);
  if (oidOf(parts[0], 'content type') !== OID.data || parts.length !== 1)
    refuse('the signature carries content of its own instead of covering the file');
}

function readSigner(element: Der): SignedData['signer'] {
  const [version, sid, digest, attributes, signature, value, unsigned, more] = childrenOf(element);
  requireOne(version, 'version of the signer');
  const [issuer, serial, other] = childrenOf(requireTag(sid, TAG.sequence, 'issuer and serial number'));
  if (other !== undefined || more !== undefined) refuse('the signer has parts that do not belong there');
  const set = requireTag(attributes, TAG.context0, 'signed attributes');
  const signedBytes = Uint8Array.from(set.raw);
  signedBytes[0] = TAG.set;
  const used = algorithm(signature);
  return {
    issuer: requireTag(issuer, TAG.sequence, 'issuer').raw,
    serial: requireTag(serial, TAG.integer, 'serial number').raw,
    digest: digestOf(digest),
    signature: {
      algorithm: used.oid,
      nullParameters: used.nullParameters,
      value: requireTag(value, TAG.octetString, 'signature value').content,
    },
    attributes: readAttributes(set),
    signedBytes,
    ...omitUndefined({
      timeStamp: unsigned && readUnsigned(requireTag(unsigned, TAG.context1, 'unsigned attributes')),
    }),
  };
}

function readAttributes(set: Der): Map<string, Der> {
  const found = new Map<string, Der>();
  let before: Uint8Array | undefined;
  for (const element of childrenOf(set)) {
    // X.690 §11.6: the elements of a SET OF stand in the order of their bytes.
    if (before !== undefined && compareBytes(before, element.raw) >= 0)
      refuse('the signed attributes are not in DER order');
    before = element.raw;
    const [type, values, more] = childrenOf(requireTag(element, TAG.sequence, 'attribute'));
    const [value, second] = childrenOf(requireTag(values, TAG.set, 'attribute value'));
    const name = oidOf(type, 'attribute type');
    if (value === undefined || second !== undefined || more !== undefined || found.has(name))
      refuse(`the signed attribute ${name} does not have exactly one value`);
    found.set(name, value);
  }
  return found;
}

function readUnsigned(set: Der): Uint8Array {
  const [only, more] = childrenOf(set);
  const [type, values, other] = childrenOf(requireTag(only, TAG.sequence, 'attribute'));
  if (more !== undefined || other !== undefined || oidOf(type, 'attribute type') !== OID.signatureTimeStamp)
    refuse('the signature has unsigned attributes other than one time stamp');
  const [token, second] = childrenOf(requireTag(values, TAG.set, 'attribute value'));
  if (token === undefined || second !== undefined) refuse('the signature has more than one time stamp');
  return token.raw;
}

function algorithm(element: Der | undefined): { oid: string; nullParameters: boolean } {
  const [oid, parameters, more] = childrenOf(requireTag(element, TAG.sequence, 'algorithm'));
  if (
    more !== undefined ||
    (parameters !== undefined && (parameters.tag !== TAG.null || parameters.content.length > 0))
  )
    refuse('an algorithm in the signature has parameters that do not belong there');
  return { oid: oidOf(oid, 'algorithm'), nullParameters: parameters !== undefined };
}

function digestOf(element: Der | undefined): string {
  const { oid, nullParameters } = algorithm(element);
  // Digest algorithms are written without parameters (RFC 5754 §2).
  return nullParameters ? refuse('the digest algorithm is written with parameters') : oid;
}

function requireOne(element: Der | undefined, what: string): void {
  const { content } = requireTag(element, TAG.integer, what);
  if (content.length !== 1 || content[0] !== 1) refuse(`the ${what} is not 1`);
}

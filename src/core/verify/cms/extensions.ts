import { omitUndefined } from '../../model/omit-undefined.js';
import { refuse } from '../malformed.js';
import { OID } from './asn1.js';
import { childrenOf, type Der, oidOf, readDer, requireTag, TAG } from './der.js';

/** What the extensions of a certificate (RFC 5280 §4.2) say about its use, as far as it is asked for here. */
export interface Extensions {
  /** Undefined when the certificate does not restrict its key's use. */
  keyUsage?: { digitalSignature: boolean; nonRepudiation: boolean; certificateSigning: boolean };
  /** Identifiers of the only uses; undefined when they are not restricted. */
  extendedUses?: readonly string[];
  /** Whether its one use, marked critical, is time stamps (RFC 3161 §2.3). */
  timeStampsOnly: boolean;
  /** Whether it may issue certificates: it says so, and its key usage does not forbid it. */
  isAuthority: boolean;
  subjectKeyId?: Uint8Array;
  authorityKeyId?: AuthorityKeyId;
}

/** How a certificate points at the one of its issuer (RFC 5280 §4.2.1.1). */
export interface AuthorityKeyId {
  keyId?: Uint8Array;
  /** The issuer's own issuer, as DER of the name, and its serial number as the content of the integer. */
  issuer?: Uint8Array;
  serial?: Uint8Array;
}

interface Extension {
  critical: boolean;
  value: Uint8Array;
}

/** Parses the extensions. @throws Malformed for an extension that stands twice, or one of the above that is damaged */
export function readExtensions(holder: Der | undefined): Extensions {
  const all = holder === undefined ? new Map<string, Extension>() : listOf(holder);
  const keyUsage = readKeyUsage(all.get(OID.keyUsage));
  const uses = all.get(OID.extendedKeyUsage);
  const extendedUses = readUses(uses);
  return {
    timeStampsOnly: uses?.critical === true && extendedUses?.join() === OID.timeStamping,
    isAuthority: readAuthority(all.get(OID.basicConstraints)) && keyUsage?.certificateSigning !== false,
    ...omitUndefined({
      keyUsage,
      extendedUses,
      subjectKeyId: readKeyId(all.get(OID.subjectKeyIdentifier)),
      authorityKeyId: readAuthorityKeyId(all.get(OID.authorityKeyIdentifier)),
    }),
  };
}

function listOf(holder: Der): Map<string, Extension> {
  const found = new Map<string, Extension>();
  const [list] = childrenOf(holder);
  for (const extension of childrenOf(requireTag(list, TAG.sequence, 'extensions'))) {
    const parts = childrenOf(requireTag(extension, TAG.sequence, 'extension'));
    const id = oidOf(parts[0], 'extension');
    const critical = parts[1]?.tag === TAG.boolean && parts[1].content[0] === 0xff;
    if (found.has(id)) refuse('a certificate has the same extension twice');
    found.set(id, { critical, value: requireTag(parts.at(-1), TAG.octetString, 'extension').content });
  }
  return found;
}

function readKeyUsage(extension: Extension | undefined): Extensions['keyUsage'] {
  if (extension === undefined) return undefined;
  const bits = requireTag(readDer(extension.value), TAG.bitString, 'key usage').content;
  const first = bits[1] ?? 0;
  return {
    digitalSignature: (first & 0x80) !== 0,
    nonRepudiation: (first & 0x40) !== 0,
    certificateSigning: (first & 0x04) !== 0,
  };
}

function readUses(extension: Extension | undefined): string[] | undefined {
  if (extension === undefined) return undefined;
  const list = requireTag(readDer(extension.value), TAG.sequence, 'extended key usage');
  return childrenOf(list).map((use) => oidOf(use, 'extended key usage'));
}

function readAuthority(extension: Extension | undefined): boolean {
  if (extension === undefined) return false;
  const [first] = childrenOf(requireTag(readDer(extension.value), TAG.sequence, 'basic constraints'));
  return first?.tag === TAG.boolean && first.content[0] === 0xff;
}

function readKeyId(extension: Extension | undefined): Uint8Array | undefined {
  if (extension === undefined) return undefined;
  return requireTag(readDer(extension.value), TAG.octetString, 'key identifier').content;
}

function readAuthorityKeyId(extension: Extension | undefined): AuthorityKeyId | undefined {
  if (extension === undefined) return undefined;
  const parts = childrenOf(requireTag(readDer(extension.value), TAG.sequence, 'authority key identifier'));
  const contentOf = (tag: number) => parts.find((part) => part.tag === tag)?.content;
  const names = parts.find(({ tag }) => tag === TAG.context1);
  const name = names === undefined ? undefined : childrenOf(names).find(({ tag }) => tag === TAG.context4);
  return omitUndefined({
    keyId: contentOf(TAG.implicit0),
    issuer: name === undefined ? undefined : childrenOf(name)[0]?.raw,
    serial: contentOf(TAG.implicit2),
  });
}

import { latin1, latin1Bytes, toHex } from '../../model/bytes.js';
import { refuse } from '../malformed.js';
import { childrenOf, type Der, oidOf, requireTag, TAG } from './der.js';

/** Short names of attributes as OpenSSL has them (X.520, RFC 4519, RFC 2985, CA/Browser Forum). */
const NAMES: Record<string, string> = {
  '2.5.4.3': 'CN',
  '2.5.4.4': 'SN',
  '2.5.4.5': 'serialNumber',
  '2.5.4.6': 'C',
  '2.5.4.7': 'L',
  '2.5.4.8': 'ST',
  '2.5.4.9': 'street',
  '2.5.4.10': 'O',
  '2.5.4.11': 'OU',
  '2.5.4.12': 'title',
  '2.5.4.13': 'description',
  '2.5.4.15': 'businessCategory',
  '2.5.4.16': 'postalAddress',
  '2.5.4.17': 'postalCode',
  '2.5.4.18': 'postOfficeBox',
  '2.5.4.20': 'telephoneNumber',
  '2.5.4.41': 'name',
  '2.5.4.42': 'GN',
  '2.5.4.43': 'initials',
  '2.5.4.44': 'generationQualifier',
  '2.5.4.45': 'x500UniqueIdentifier',
  '2.5.4.46': 'dnQualifier',
  '2.5.4.65': 'pseudonym',
  '2.5.4.72': 'role',
  '2.5.4.97': 'organizationIdentifier',
  '1.2.840.113549.1.9.1': 'emailAddress',
  '1.2.840.113549.1.9.2': 'unstructuredName',
  '0.9.2342.19200300.100.1.1': 'UID',
  '0.9.2342.19200300.100.1.25': 'DC',
  '1.3.6.1.4.1.311.60.2.1.1': 'jurisdictionL',
  '1.3.6.1.4.1.311.60.2.1.2': 'jurisdictionST',
  '1.3.6.1.4.1.311.60.2.1.3': 'jurisdictionC',
};
const UTF_8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

/** A name (RFC 5280 §4.1.2.4) in one line, as OpenSSL writes it: `C=US, O=Harrow Creek, CN=…`. @throws Malformed */
export function subjectLineOf(name: Der): string {
  return childrenOf(name)
    .map((set) =>
      childrenOf(requireTag(set, TAG.set, 'part of a name'))
        .map(attribute)
        .join(' + '),
    )
    .join(', ');
}

function attribute(element: Der): string {
  const [type, value] = childrenOf(requireTag(element, TAG.sequence, 'part of a name'));
  const id = oidOf(type, 'part of a name');
  if (value === undefined) refuse('a name in a certificate has a part without value');
  return `${NAMES[id] ?? id}=${escaped(textOf(value))}`;
}

/** Texts by their kind (X.680 §41); one of an unknown kind byte for byte. */
function textOf({ tag, content }: Der): string {
  switch (tag) {
    case TAG.utf8String:
      try {
        return UTF_8.decode(content);
      } catch {
        return refuse('a name in a certificate is no text');
      }
    case TAG.bmpString:
      return characters(content, 2);
    case TAG.universalString:
      return characters(content, 4);
    default:
      return latin1(content);
  }
}

function characters(content: Uint8Array, size: number): string {
  if (content.length % size !== 0) refuse('a name in a certificate is no text');
  let text = '';
  for (let at = 0; at < content.length; at += size) {
    const code = content.subarray(at, at + size).reduce((sum, byte) => sum * 256 + byte, 0);
    if (code > 0x10ffff) refuse('a name in a certificate is no text');
    text += String.fromCodePoint(code);
  }
  return text;
}

/** RFC 2253 §2.4, and control characters as two digits each. */
function escaped(text: string): string {
  return text
    .replace(/[,+"\\<>;]|^[ #](?=.)| $/gsu, '\\$&')
    .replace(/\p{Cc}/gu, (c) => (c < '\x80' ? `\\${toHex(latin1Bytes(c)).toUpperCase()}` : c));
}

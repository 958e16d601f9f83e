import { refuse } from '../malformed.js';

/** One element of DER (X.690), with its bytes: `raw` whole, `content` without tag and length. */
export interface Der {
  tag: number;
  raw: Uint8Array;
  content: Uint8Array;
}

export const TAG = {
  integer: 0x02,
  bitString: 0x03,
  octetString: 0x04,
  null: 0x05,
  oid: 0x06,
  boolean: 0x01,
  utf8String: 0x0c,
  utcTime: 0x17,
  generalizedTime: 0x18,
  universalString: 0x1c,
  bmpString: 0x1e,
  sequence: 0x30,
  set: 0x31,
  /** Context-specific tags, of a value alone and of one that holds others. */
  implicit0: 0x80,
  implicit2: 0x82,
  context0: 0xa0,
  context1: 0xa1,
  context2: 0xa2,
  context3: 0xa3,
  context4: 0xa4,
} as const;

/**
 * Reads the element that starts at an offset. Lengths must be definite and as short as can be (X.690 §10.1):
 * BER's other forms would let the same structure stand in other bytes.
 * @throws Malformed
 */
export function readDer(bytes: Uint8Array, at = 0): Der {
  const tag = bytes[at] ?? refuse('the signature structure ends too early');
  if ((tag & 0x1f) === 0x1f) refuse('the signature structure has a tag of more than one byte');
  const first = bytes[at + 1] ?? refuse('the signature structure ends too early');
  let length = first;
  let header = 2;
  if (first >= 0x80) {
    const count = first & 0x7f;
    if (count === 0 || count > 4) refuse('a length in the signature structure is not DER');
    length = 0;
    for (let i = 0; i < count; i += 1) length = length * 256 + (bytes[at + 2 + i] ?? 0);
    if (length < 0x80 || bytes[at + 2] === 0) refuse('a length in the signature structure is not DER');
    header += count;
  }
  const end = at + header + length;
  if (end > bytes.length) refuse('the signature structure ends too early');
  return { tag, raw: bytes.subarray(at, end), content: bytes.subarray(at + header, end) };
}

/** The elements inside an element. @throws Malformed when they do not fill it exactly */
export function childrenOf(element: Der): Der[] {
  const found: Der[] = [];
  for (let at = 0; at < element.content.length; ) {
    const next = readDer(element.content, at);
    found.push(next);
    at += next.raw.length;
  }
  return found;
}

/** The element, when it has the tag. @throws Malformed naming `what` otherwise */
export function requireTag(element: Der | undefined, tag: number, what: string): Der {
  return element?.tag === tag ? element : refuse(`the signature structure has no ${what}`);
}

/** Dotted form of an object identifier (X.690 §8.19). */
export function oidOf(element: Der | undefined, what = 'identifier'): string {
  const { content } = requireTag(element, TAG.oid, what);
  const arcs: number[] = [];
  let value = 0;
  content.forEach((byte, i) => {
    if (value === 0 && byte === 0x80) refuse('an identifier in the signature structure is not DER');
    value = value * 128 + (byte & 0x7f);
    if (value > Number.MAX_SAFE_INTEGER) refuse('an identifier in the signature structure is too long');
    if (byte < 0x80) {
      arcs.push(value);
      value = 0;
    } else if (i === content.length - 1) refuse('an identifier in the signature structure is cut off');
  });
  const [first, ...rest] = arcs;
  if (first === undefined) refuse('an identifier in the signature structure is empty');
  const root = Math.min(2, Math.floor(first / 40));
  return [root, first - 40 * root, ...rest].join('.');
}

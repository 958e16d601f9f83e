/** Bytes that are turned to text at a time: more would not fit on the stack. */
const CHUNK = 8192;
/** Below this many bytes, one character after the other is quicker than a call with all of them. */
const SHORT = 16;
const HEX = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'));
const UTF_8 = new TextEncoder();

/** The bytes as text, one character each: every byte has its own (ISO 8859-1). */
export function latin1(bytes: Uint8Array, from = 0, to = bytes.length): string {
  const end = Math.min(to, bytes.length);
  let text = '';
  if (end - from < SHORT) {
    for (let at = from; at < end; at += 1) text += String.fromCharCode(bytes[at] ?? 0);
    return text;
  }
  for (let at = from; at < end; at += CHUNK)
    text += Reflect.apply(String.fromCharCode, undefined, bytes.subarray(at, Math.min(at + CHUNK, end)));
  return text;
}

/** The bytes of a text whose characters are all below 256; of others the low byte. */
export function latin1Bytes(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < bytes.length; i += 1) bytes[i] = text.charCodeAt(i);
  return bytes;
}

/** The bytes of a text in UTF-8. */
export function utf8Bytes(text: string): Uint8Array {
  return UTF_8.encode(text);
}

/** Lower-case hexadecimal digits, two for each byte. */
export function toHex(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += HEX[byte] ?? '';
  return text;
}

/** The bytes of hexadecimal digits, of which there must be an even number. */
export function fromHex(digits: string): Uint8Array {
  const bytes = new Uint8Array(digits.length / 2);
  for (let i = 0; i < bytes.length; i += 1)
    bytes[i] = 16 * digitAt(digits, 2 * i) + digitAt(digits, 2 * i + 1);
  return bytes;
}

function digitAt(digits: string, i: number): number {
  const code = digits.charCodeAt(i);
  return code <= 0x39 ? code - 0x30 : (code | 0x20) - 0x57;
}

/** Base64 with its padding (RFC 4648 §4). */
export function toBase64(bytes: Uint8Array): string {
  return btoa(latin1(bytes));
}

/** The bytes of base64 (RFC 4648 §4), with or without padding; undefined for a text that is none. */
export function fromBase64(text: string): Uint8Array | undefined {
  try {
    return latin1Bytes(atob(text));
  } catch {
    return undefined;
  }
}

/** The parts one behind the other, in memory of their own. */
export function concatBytes(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const joined = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    joined.set(part, at);
    at += part.length;
  }
  return joined;
}

export function isSameBytes(a: Uint8Array, b: Uint8Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i += 1) if (a[i] !== b[i]) return false;
  return true;
}

/** Negative when `a` comes first: byte by byte, the shorter first where one begins the other. */
export function compareBytes(a: Uint8Array, b: Uint8Array): number {
  const length = Math.min(a.length, b.length);
  for (let i = 0; i < length; i += 1) {
    const apart = (a[i] ?? 0) - (b[i] ?? 0);
    if (apart !== 0) return apart;
  }
  return a.length - b.length;
}

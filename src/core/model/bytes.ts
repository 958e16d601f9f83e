/** Bytes that are turned to text at a time: more would not fit on the stack. */
const CHUNK = 8192;
/** Below this many bytes, one character after the other is quicker than a call with all of them. */
const SHORT = 16;

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
  return Uint8Array.from(text, (character) => character.charCodeAt(0));
}

/** The bytes of hexadecimal digits, of which there must be an even number. */
export function fromHex(digits: string): Uint8Array {
  return Uint8Array.from({ length: digits.length / 2 }, (_, i) =>
    Number.parseInt(digits.slice(2 * i, 2 * i + 2), 16),
  );
}

export function isSameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, i) => byte === b[i]);
}

import { isAscii } from 'node:buffer';
import { TextDecoder } from 'node:util';
import type { LogMapping } from '../../core/model/evidence.js';
import { type ByteSource, bytesOf, headOf } from './bytes.js';

export type Encoding = LogMapping['encoding'];

/** Guesses the encoding of text from its first bytes: mark, else pattern of zero bytes, else whether its letters are UTF-8. */
export function detectEncoding(head: Uint8Array): Encoding {
  const [a, b, c] = head;
  if (a === 0xff && b === 0xfe) return 'utf-16le';
  if (a === 0xfe && b === 0xff) return 'utf-16be';
  if (a === 0xef && b === 0xbb && c === 0xbf) return 'utf-8';
  const zeros = [0, 0];
  const length = Math.min(head.length, 4096) & ~1;
  for (let i = 0; i < length; i++) if (head[i] === 0) zeros[i % 2] = (zeros[i % 2] ?? 0) + 1;
  const [even = 0, odd = 0] = zeros;
  // Latin letters in UTF-16 have a zero byte each; in the other encodings text has none.
  if (length >= 4 && odd > length / 5 && even === 0) return 'utf-16le';
  if (length >= 4 && even > length / 5 && odd === 0) return 'utf-16be';
  return mostlyUtf8(head) ? 'utf-8' : 'latin1';
}

/**
 * The encoding of a whole file: what the head shows, and where it shows UTF-8, whether the rest is UTF-8 too. A letter of
 * another encoding may come late; bytes that are damaged do not make UTF-8 another encoding where more letters are whole.
 */
export async function judgeEncoding(source: ByteSource, headBytes: number): Promise<Encoding> {
  const head = await headOf(source, headBytes);
  const first = detectEncoding(head);
  if (first !== 'utf-8' || head.length < headBytes) return first;
  let rest: Uint8Array = new Uint8Array();
  const letters = { whole: 0, broken: 0 };
  for await (const chunk of bytesOf(source)) {
    const bytes = rest.length === 0 ? chunk : Buffer.concat([rest, chunk]);
    // A letter may go on in the next chunk.
    const end = bytes.length - unfinished(bytes);
    rest = bytes.slice(end);
    countLetters(bytes.subarray(0, end), letters);
  }
  countLetters(rest, letters);
  return letters.broken > letters.whole ? 'latin1' : 'utf-8';
}

/** Adds the letters beyond ASCII that are whole in UTF-8, and the places that are none. */
function countLetters(bytes: Uint8Array, to: { whole: number; broken: number }): void {
  if (isAscii(bytes)) return;
  const text = new TextDecoder('utf-8').decode(bytes);
  to.broken += text.match(/\ufffd/g)?.length ?? 0;
  to.whole += text.match(/[^\0-\x7f\ufffd]/g)?.length ?? 0;
}

/** How many bytes at the end begin a letter of UTF-8 that is not finished (RFC 3629 §3). */
function unfinished(bytes: Uint8Array): number {
  for (let back = 1; back <= 3 && back <= bytes.length; back++) {
    const byte = bytes[bytes.length - back] ?? 0;
    if ((byte & 0b1100_0000) === 0b1000_0000) continue;
    const length = byte >= 0xf0 ? 4 : byte >= 0xe0 ? 3 : byte >= 0xc0 ? 2 : 1;
    return length > back ? back : 0;
  }
  return 0;
}

/** More letters are whole in UTF-8 than broken; one that is cut off at the end of the head is neither. */
function mostlyUtf8(head: Uint8Array): boolean {
  const letters = { whole: 0, broken: 0 };
  countLetters(head.subarray(0, head.length - unfinished(head)), letters);
  return letters.broken <= letters.whole;
}

/** A streaming decoder; byte-order marks are dropped. Latin-1 is read as its superset Windows-1252, as on the web. */
export function decoderOf(encoding: Encoding): TextDecoder {
  return new TextDecoder(encoding === 'latin1' ? 'windows-1252' : encoding);
}

export function decode(bytes: Uint8Array, encoding = detectEncoding(bytes)): string {
  return decoderOf(encoding).decode(bytes);
}

/** Text has no control characters but tab, line feed, form feed, carriage return and escape. */
export function looksLikeText(text: string): boolean {
  let bad = 0;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if ((c < 32 && c !== 9 && c !== 10 && c !== 12 && c !== 13) || c === 0xfffd) bad += 1;
  }
  return bad <= text.length / 200;
}

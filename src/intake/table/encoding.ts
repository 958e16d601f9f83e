import { TextDecoder } from 'node:util';
import type { LogMapping } from '../../core/model/evidence.js';

export type Encoding = LogMapping['encoding'];

/** Guesses the encoding of text from its first bytes: mark, else pattern of zero bytes, else whether it is valid UTF-8. */
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
  return validUtf8(head) ? 'utf-8' : 'latin1';
}

/** Valid but for a character cut off at the end of the head. */
function validUtf8(head: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return true;
  } catch {
    return false;
  }
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

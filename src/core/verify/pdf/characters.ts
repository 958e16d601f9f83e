import { refuse } from '../malformed.js';

/** What a byte is to a word of PDF (ISO 32000-1 tables 1 and 2): those below white space are part of it. */
export const DIGIT = 1;
export const WHITE = 2;
const DELIMITER = 3;
/** Stands for the byte behind the last. */
export const PAST = 256;

/** What each byte is: to be kept by whoever looks it up for every byte of a file. */
export function kindsOfBytes(): Uint8Array {
  const kinds = new Uint8Array(PAST + 1);
  for (const c of '0123456789') kinds[c.charCodeAt(0)] = DIGIT;
  for (const c of '\0\t\n\f\r ') kinds[c.charCodeAt(0)] = WHITE;
  for (const c of '()<>[]{}/%') kinds[c.charCodeAt(0)] = DELIMITER;
  kinds[PAST] = DELIMITER;
  return kinds;
}

const KIND = kindsOfBytes();

const BACKSLASH = 0x5c;
const ESCAPES: Record<string, string> = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' };

/** Whether a name or number ends before this byte, or with the file. */
export function isEnd(byte: number | undefined): boolean {
  return (KIND[byte ?? PAST] ?? WHITE) >= WHITE;
}

/** The bytes as text, one character each. */
export function ascii(bytes: Buffer, from: number, to: number): string {
  return bytes.toString('latin1', from, to);
}

/** Offset behind the string in angle brackets that starts here (ISO 32000-1 §7.3.4.3). @throws Malformed */
export function hexEnd(bytes: Buffer, from: number): number {
  for (let at = from + 1; ; at += 1) {
    const byte = bytes[at];
    if (byte === 0x3e) return at + 1;
    if (byte !== undefined && (KIND[byte] === DIGIT || KIND[byte] === WHITE || isHexLetter(byte))) continue;
    return refuse(
      bytes.indexOf(0x3e, at) < 0
        ? `a hex string without end at byte ${from + 1}`
        : `a hex string with other characters at byte ${from + 1}`,
    );
  }
}

function isHexLetter(byte: number): boolean {
  return (byte >= 0x41 && byte <= 0x46) || (byte >= 0x61 && byte <= 0x66);
}

/** What the digits between the brackets stand for; one that is alone at the end has a zero behind it. */
export function hexBytes(inside: Buffer): Uint8Array {
  const digits = inside.toString('latin1').replace(/[\0\t\n\f\r ]/g, '');
  return Buffer.from(digits.length % 2 === 0 ? digits : `${digits}0`, 'hex');
}

/** Offset behind the string in parentheses that starts here (ISO 32000-1 §7.3.4.2). @throws Malformed */
export function literalEnd(bytes: Buffer, from: number): number {
  let at = from + 1;
  for (let open = 1; open > 0; at += 1) {
    const byte = bytes[at] ?? refuse(`a string without end at byte ${from}`);
    if (byte === 0x28) open += 1;
    else if (byte === 0x29) open -= 1;
    else if (byte === BACKSLASH) {
      at += 1;
      if (bytes[at] === undefined) refuse(`a string without end at byte ${at}`);
    }
  }
  return at;
}

/** What stands between the parentheses, without the backslashes. */
export function literalBytes(inside: Buffer): Uint8Array {
  if (!inside.includes(BACKSLASH)) return inside;
  const text = inside.toString('latin1').replace(/\\([0-7]{1,3}|\r\n|.)/gs, (_, what: string) => {
    if (/^[0-7]/.test(what)) return String.fromCharCode(Number.parseInt(what, 8) & 0xff);
    return what === '\n' || what === '\r' || what === '\r\n' ? '' : (ESCAPES[what] ?? what);
  });
  return Buffer.from(text, 'latin1');
}

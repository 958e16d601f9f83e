import { fromHex, latin1, latin1Bytes } from '../../model/bytes.js';

/** White space of PDF, for the inside of a character class (ISO 32000-1 table 1). */
export const WHITE = '\\0\\t\\n\\f\\r ';
/** What ends a name or a number: white space and delimiters (ISO 32000-1 table 2). */
export const ENDS = `${WHITE}()<>[\\]{}/%`;

const BACKSLASH = 0x5c;
const ESCAPES: Record<string, string> = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' };

/** The bytes of a hexadecimal string; an odd last digit counts as followed by zero (ISO 32000-1 §7.3.4.3). */
export function hexBytes(inside: Uint8Array): Uint8Array {
  const digits = latin1(inside).replace(/[\0\t\n\f\r ]/g, '');
  return fromHex(digits.length % 2 === 0 ? digits : `${digits}0`);
}

/** The bytes of a literal string, with its escapes resolved (ISO 32000-1 §7.3.4.2). */
export function literalBytes(inside: Uint8Array): Uint8Array {
  if (!inside.includes(BACKSLASH)) return inside;
  const text = latin1(inside).replace(/\\([0-7]{1,3}|\r\n|.)/gs, (_, what: string) => {
    if (/^[0-7]/.test(what)) return String.fromCharCode(Number.parseInt(what, 8) & 0xff);
    return what === '\n' || what === '\r' || what === '\r\n' ? '' : (ESCAPES[what] ?? what);
  });
  return latin1Bytes(text);
}

/** Longest content stream that is read, and longest text that is taken from it. */
const MOST_PROGRAM = 512 * 1024;
const MOST_TEXT = 20_000;
/** Operators that show the strings before them (ISO 32000-2, table 107). */
const SHOWS = new Set(['Tj', 'TJ', "'", '"']);
const WORD = /[^\s()<>[\]{}/%]+|[\s\S]/y;

/**
 * Text shown by a content stream (ISO 32000-2 §9.4.3), one line for each operator. Only plainly coded letters are
 * read, as simple fonts have them; glyph numbers of an embedded font give nothing. Read in one pass, up to an
 * unterminated string.
 */
export function plainText(content: Buffer): string {
  const program = content.subarray(0, MOST_PROGRAM).toString('latin1');
  const lines: string[] = [];
  let length = 0;
  let strings: string[] = [];
  for (let at = 0; at < program.length && length <= MOST_TEXT; ) {
    const c = program.charAt(at);
    if (c === '(' || (c === '<' && program[at + 1] !== '<')) {
      const end = c === '(' ? endOfLiteral(program, at) : program.indexOf('>', at);
      if (end < 0) break;
      const inside = program.slice(at + 1, end);
      strings.push(c === '(' ? lettersOf(inside) : fromHex(inside));
      at = end + 1;
    } else if (/[\s\d.+[\]-]/.test(c)) at += 1;
    else {
      WORD.lastIndex = at;
      const word = WORD.exec(program)?.[0] ?? c;
      at += word.length;
      const text = SHOWS.has(word) ? strings.join('') : '';
      strings = [];
      if (!/^[\x20-\x7e\xa0-\xff]+$/.test(text)) continue;
      lines.push(text);
      length += text.length;
    }
  }
  return lines.join('\n');
}

/** End of a literal string with balanced parentheses (§7.3.4.2); −1 for an unterminated one. */
function endOfLiteral(program: string, from: number): number {
  let depth = 0;
  for (let at = from; at < program.length; at++) {
    const c = program[at];
    if (c === '\\') at += 1;
    else if (c === '(') depth += 1;
    else if (c === ')') {
      depth -= 1;
      if (depth === 0) return at;
    }
  }
  return -1;
}

function fromHex(hex: string): string {
  return Buffer.from(hex.replaceAll(/\s/g, ''), 'hex').toString('latin1');
}

/** §7.3.4.2, table 3. */
function lettersOf(literal: string): string {
  return literal.replaceAll(/\\([0-7]{1,3}|[\s\S])/g, (_, what: string) =>
    /^[0-7]/.test(what)
      ? String.fromCharCode(Number.parseInt(what, 8) & 0xff)
      : /[nrtbf\n]/.test(what)
        ? ' '
        : what,
  );
}

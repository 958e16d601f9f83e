/** As much of a page's program as is looked at, and as much text as is taken from it. */
const MOST_PROGRAM = 512 * 1024;
const MOST_TEXT = 20_000;
const TEXT_SHOWN =
  /(\((?:\\[\s\S]|[^\\()])*\)|<[0-9A-Fa-f\s]*>|\[(?:[^[\]\\]|\\[\s\S]|\((?:\\[\s\S]|[^\\()])*\))*\])\s*(?:Tj|TJ|'|")/g;
const STRING = /\(((?:\\[\s\S]|[^\\()])*)\)|<([0-9A-Fa-f\s]*)>/g;

/**
 * Text that a content stream shows (ISO 32000-2 §9.4.3), one line for each showing. Only letters that stand for
 * themselves are read, as simple fonts have them; numbers of glyphs in an embedded font give nothing.
 */
export function plainText(content: Buffer): string {
  const program = content.subarray(0, MOST_PROGRAM).toString('latin1');
  const lines: string[] = [];
  let length = 0;
  for (const [, shown = ''] of program.matchAll(TEXT_SHOWN)) {
    const text = [...shown.matchAll(STRING)]
      .map(([, literal, hex]) => (literal === undefined ? fromHex(hex ?? '') : lettersOf(literal)))
      .join('');
    if (!/^[\x20-\x7e\xa0-\xff]+$/.test(text)) continue;
    lines.push(text);
    length += text.length;
    if (length > MOST_TEXT) break;
  }
  return lines.join('\n');
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

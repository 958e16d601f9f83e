import { ascii } from './characters.js';
import { PdfObject } from './object.js';
import type { PdfReader } from './reader.js';

/** Bytes of the longest object that is looked at: parents of very many others are read in full. */
const LONGEST = 8_000;

const NAME = '/[A-Za-z0-9]+';
/** Types of elements (ISO 32000-1 §14.8.4, ISO 32000-2 §14.8.4): other names under /S could be actions. */
const TYPE =
  '/(?:Document|Part|Art|Sect|Div|BlockQuote|Caption|TOCI?|Index|Title|P|H[1-6]?|L|LI|Lbl|LBody|Table|TR|TH|TD|' +
  'THead|TBody|TFoot|Span|Quote|Note|FENote|Reference|Code|Em|Strong|Link|Annot|Figure|Formula|Form)';
const NUMBER = '\\d{1,9}(?:\\.\\d{1,9})?';
const REFERENCE = '[1-9]\\d{0,8} 0 R';
/** Without the letter of references, so that what looks like one in the text of an element is one. */
const STRING = '\\([^()\\\\R]*\\)';
const listOf = (item: string) => `\\[(?:${item}(?: ${item})*)?\\]`;
const entries = (...keys: readonly [key: string, value: string][]) =>
  keys.map(([key, value]) => `(?:\\n    /${key} ${value})?`).join('');
const ATTRIBUTES = `<<\\n    /O ${NAME}${entries(
  ['ListNumbering', NAME],
  ['Placement', NAME],
  ['BorderColor', listOf(NUMBER)],
  ['BorderStyle', listOf(NAME)],
  ['BorderThickness', listOf(NUMBER)],
  ['Scope', NAME],
  ['Headers', listOf(STRING)],
)}\\n  >>`;
const OBJECT = `<<\\n    /Type /OBJR\\n    /Pg ${REFERENCE}\\n    /Obj ${REFERENCE}\\n  >>`;

/** Keys in the one order in which they are written, so that none can stand twice. */
const ELEMENT = new RegExp(
  `^[1-9]\\d{0,8} 0 obj\\n<<\\n  /Type /StructElem\\n  /S ${TYPE}\\n  /P ${REFERENCE}` +
    `(?:\\n  /T ${STRING})?(?:\\n  /ID ${STRING})?(?:\\n  /A ${listOf(ATTRIBUTES)})?` +
    `\\n  /K ${listOf(`(?:${REFERENCE}|\\d{1,9}|${OBJECT})`)}(?:\\n  /Pg ${REFERENCE})?\\n>>\\n\\nendobj\\n\\n$`,
);
/** No longer than they may be above: otherwise each digit of a long number would be a beginning to try. */
const REFERENCES = /(\d{1,9}) 0 R/g;

/**
 * An object that is an element of the structure, written as the typesetter writes them; undefined for every other one.
 * Half of the bytes of a dossier's objects are such elements, thousands of them, and one pattern recognises them in a
 * tenth of the time that reading takes. It takes less than the reader does, and finds the same references.
 */
export function plainElement(
  reader: PdfReader,
  number: number,
  offset: number,
  until: number,
): PdfObject | undefined {
  if (until - offset > LONGEST) return undefined;
  const text = ascii(reader.bytes, offset, until);
  const begin = `${number} 0 obj`;
  if (!text.startsWith(begin) || !ELEMENT.test(text)) return undefined;
  const references: number[] = [];
  for (let found = REFERENCES.exec(text); found !== null; found = REFERENCES.exec(text))
    references.push(Number(found[1]));
  return new PdfObject(number, reader, offset + begin.length, references, undefined);
}

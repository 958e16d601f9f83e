import { latin1 } from '../../model/bytes.js';
import { refuse } from '../malformed.js';
import { ENDS, WHITE } from './characters.js';
import { PdfDict, type PdfName, PdfString, type PdfValue } from './value.js';

/** Deeper nesting than any dossier has; a file made of brackets must not exhaust the stack. */
const DEEPEST = 64;

/** Behind white space a name, a reference, another word, or the mark that begins or ends something larger. */
const TOKEN = new RegExp(
  `[${WHITE}]*(?:/([^${ENDS}]*)|(\\d{1,10})[${WHITE}]+(\\d+)[${WHITE}]+R(?=[${ENDS}]|$)|([^${ENDS}]+)|(<<|>>|[[\\]<(]))`,
  'y',
);
const SPACE = new RegExp(`[${WHITE}]*`, 'y');
const HEX = new RegExp(`[0-9A-Fa-f${WHITE}]*`, 'y');
const PLAIN = /[^()\\]*/y;
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)$/;

/**
 * Reads PDF syntax (ISO 32000-1 §7.2, §7.3) strictly: no comments inside objects, no key twice, no
 * generation but 0. Two programs may read a lenient file in two ways; a strict one has one reading.
 */
export class PdfReader {
  private readonly text: string;
  private index = 0;

  /** A reader of the bytes between two offsets, which are those of the object of this number. */
  constructor(
    private readonly bytes: Uint8Array,
    private readonly from = 0,
    to = bytes.length,
    private readonly object = 0,
    /** Names of the same file that were met before: of tens of thousands a hundred are different. */
    private readonly names = new Map<string, PdfName>(),
  ) {
    this.text = latin1(bytes, from, to);
  }

  /** Offset in the file. */
  get at(): number {
    return this.from + this.index;
  }

  isAtEnd(): boolean {
    return this.index === this.text.length;
  }

  white(): void {
    this.skip(SPACE);
  }

  /** Whether the text stands here; moves on if it does. */
  takes(text: string): boolean {
    if (!this.text.startsWith(text, this.index)) return false;
    this.index += text.length;
    return true;
  }

  expect(text: string): void {
    if (!this.takes(text)) refuse(`"${text.trim()}" does not stand at byte ${this.at}`);
  }

  /** What a pattern with the flag y finds here, and moves behind it; undefined when that is nothing. */
  find(pattern: RegExp): RegExpExecArray | undefined {
    pattern.lastIndex = this.index;
    const found = pattern.exec(this.text) ?? undefined;
    if (found !== undefined) this.index = pattern.lastIndex;
    return found;
  }

  value(depth = 0): PdfValue {
    return this.valueBefore(undefined, depth) ?? refuse(`no PDF value at byte ${this.at}`);
  }

  /** The next value; undefined behind the mark that ends the array or dictionary that is read. */
  private valueBefore(end: ']' | '>>' | undefined, depth: number): PdfValue | undefined {
    const found = this.find(TOKEN);
    if (found === undefined) {
      this.white();
      return refuse(`no PDF value at byte ${this.at}`);
    }
    const [, name, number, generation, word, mark] = found;
    if (mark !== undefined && mark === end) return undefined;
    if (depth > DEEPEST) refuse(`nesting too deep at byte ${this.at}`);
    if (name !== undefined) return this.name(name);
    if (number !== undefined) return this.reference(found[0], number, generation);
    return word !== undefined ? this.word(word) : this.larger(mark, depth);
  }

  /** ISO 32000-1 §7.3.5: a number sign and two hex digits stand for a byte. */
  private name(text: string): PdfName {
    const known = this.names.get(text);
    if (known !== undefined) return known;
    const name = text.replace(/#(.{0,2})/gs, (_, pair: string) => {
      if (!/^[0-9A-Fa-f]{2}$/.test(pair)) refuse(`bad name at byte ${this.at - text.length}`);
      return String.fromCharCode(Number.parseInt(pair, 16));
    });
    const made: PdfName = { is: 'name', name };
    this.names.set(text, made);
    return made;
  }

  private reference(token: string, number: string, generation: string | undefined): PdfValue {
    if (generation !== '0') refuse(`generation other than 0 at byte ${this.at - token.trimStart().length}`);
    return { is: 'ref', number: Number(number) };
  }

  private word(word: string): PdfValue {
    if (word === 'null' || word === 'true' || word === 'false') return { is: word };
    if (!NUMBER.test(word)) refuse(`no PDF value at byte ${this.at - word.length}`);
    return { is: 'number', value: Number(word), integer: !word.includes('.') };
  }

  private larger(mark: string | undefined, depth: number): PdfValue {
    switch (mark) {
      case '[':
        return this.array(depth);
      case '<<':
        return this.dict(depth);
      case '<':
        return this.hexString();
      case '(':
        return this.literalString();
      default:
        return refuse(`no PDF value at byte ${this.at - (mark?.length ?? 0)}`);
    }
  }

  private array(depth: number): PdfValue {
    const items: PdfValue[] = [];
    for (;;) {
      const item = this.valueBefore(']', depth + 1);
      if (item === undefined) return { is: 'array', items };
      items.push(item);
    }
  }

  private dict(depth: number): PdfDict {
    const from = this.at - 2;
    const entries = new Map<string, PdfValue>();
    for (;;) {
      const key = this.valueBefore('>>', depth + 1);
      if (key === undefined) break;
      if (key.is !== 'name') refuse(`no name for a dictionary entry before byte ${this.at}`);
      if (entries.has(key.name)) refuse(`/${key.name} stands twice in the dictionary at byte ${from}`);
      entries.set(key.name, this.value(depth + 1));
    }
    return new PdfDict(entries, this.object, from, this.at);
  }

  /** ISO 32000-1 §7.3.4.3 */
  private hexString(): PdfString {
    const from = this.at - 1;
    this.skip(HEX);
    if (!this.takes('>'))
      refuse(
        this.text.includes('>', this.index)
          ? `a hex string with other characters at byte ${from + 1}`
          : `a hex string without end at byte ${from + 1}`,
      );
    return new PdfString(this.bytes, from, this.at, true);
  }

  /** ISO 32000-1 §7.3.4.2 */
  private literalString(): PdfString {
    const from = this.at - 1;
    for (let open = 1; open > 0; this.index += 1) {
      this.skip(PLAIN);
      if (this.text[this.index] === '(') open += 1;
      else if (this.text[this.index] === ')') open -= 1;
      else this.index += 1;
      if (this.index >= this.text.length) refuse(`a string without end at byte ${from}`);
    }
    return new PdfString(this.bytes, from, this.at, false);
  }

  private skip(pattern: RegExp): void {
    pattern.lastIndex = this.index;
    pattern.test(this.text);
    this.index = pattern.lastIndex;
  }
}

import { latin1 } from '../../model/bytes.js';
import { refuse } from '../malformed.js';
import { ENDS, WHITE } from './characters.js';
import { PdfDict, type PdfName, PdfString, type PdfValue } from './value.js';

/** Deeper nesting than any dossier has; a file made of brackets must not exhaust the stack. */
const DEEPEST = 64;

const SPACE = new RegExp(`[${WHITE}]*`, 'y');
const WORD = new RegExp(`[^${ENDS}]*`, 'y');
/** What follows the number of an object where that is a reference. */
const GENERATION = new RegExp(`[${WHITE}]+(\\d+)[${WHITE}]+R(?=[${ENDS}]|$)`, 'y');
const HEX = new RegExp(`[0-9A-Fa-f${WHITE}]*`, 'y');
const PLAIN = /[^()\\]*/y;
const OBJECT_NUMBER = /^\d{1,10}$/;
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

  /** Whether the text is next; moves past it if so. */
  takes(text: string): boolean {
    if (!this.text.startsWith(text, this.index)) return false;
    this.index += text.length;
    return true;
  }

  expect(text: string): void {
    if (!this.takes(text)) refuse(`"${text.trim()}" does not stand at byte ${this.at}`);
  }

  /** The match of a sticky pattern at the current place, which it moves past; undefined when there is none. */
  find(pattern: RegExp): RegExpExecArray | undefined {
    pattern.lastIndex = this.index;
    const found = pattern.exec(this.text) ?? undefined;
    if (found !== undefined) this.index = pattern.lastIndex;
    return found;
  }

  value(depth = 0): PdfValue {
    this.white();
    if (depth > DEEPEST) refuse(`nesting too deep at byte ${this.at}`);
    switch (this.text[this.index]) {
      case '/':
        return this.name();
      case '[':
        return this.array(depth);
      case '(':
        return this.literalString();
      case '<':
        return this.takes('<<') ? this.dict(depth) : this.hexString();
      default:
        return this.word();
    }
  }

  /** ISO 32000-1 §7.3.5: a number sign and two hex digits stand for a byte. */
  private name(): PdfName {
    this.index += 1;
    const text = this.take(WORD);
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

  private word(): PdfValue {
    const from = this.at;
    const word = this.take(WORD);
    if (word === 'null' || word === 'true' || word === 'false') return { is: word };
    if (!NUMBER.test(word)) refuse(`no PDF value at byte ${from}`);
    const generation = OBJECT_NUMBER.test(word) ? this.find(GENERATION) : undefined;
    if (generation === undefined) return { is: 'number', value: Number(word), integer: !word.includes('.') };
    if (generation[1] !== '0') refuse(`generation other than 0 at byte ${from}`);
    return { is: 'ref', number: Number(word) };
  }

  private array(depth: number): PdfValue {
    const items: PdfValue[] = [];
    this.index += 1;
    for (this.white(); !this.takes(']'); this.white()) items.push(this.value(depth + 1));
    return { is: 'array', items };
  }

  private dict(depth: number): PdfDict {
    const from = this.at - 2;
    const entries = new Map<string, PdfValue>();
    for (this.white(); !this.takes('>>'); this.white()) {
      if (this.text[this.index] !== '/') refuse(`no name for a dictionary entry at byte ${this.at}`);
      const { name } = this.name();
      if (entries.has(name)) refuse(`/${name} stands twice in the dictionary at byte ${from}`);
      entries.set(name, this.value(depth + 1));
    }
    return new PdfDict(entries, this.object, from, this.at);
  }

  /** ISO 32000-1 §7.3.4.3 */
  private hexString(): PdfString {
    const from = this.at;
    this.index += 1;
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
    const from = this.at;
    this.index += 1;
    for (let open = 1; open > 0; this.index += 1) {
      this.skip(PLAIN);
      if (this.text[this.index] === '(') open += 1;
      else if (this.text[this.index] === ')') open -= 1;
      else this.index += 1;
      if (this.index >= this.text.length) refuse(`a string without end at byte ${from}`);
    }
    return new PdfString(this.bytes, from, this.at, false);
  }

  private take(pattern: RegExp): string {
    const from = this.index;
    this.skip(pattern);
    return this.text.slice(from, this.index);
  }

  private skip(pattern: RegExp): void {
    pattern.lastIndex = this.index;
    pattern.test(this.text);
    this.index = pattern.lastIndex;
  }
}

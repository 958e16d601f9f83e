import { refuse } from '../malformed.js';
import { ascii, DIGIT, hexEnd, isEnd, kindsOfBytes, literalEnd, PAST, WHITE } from './characters.js';
import { DictShape } from './dict-shape.js';
import { PdfDict, type PdfName, type PdfNumber, type PdfRef, PdfString, type PdfValue } from './value.js';

/** Deeper nesting than any dossier has; a file made of brackets must not exhaust the stack. */
const DEEPEST = 64;

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)$/;
/** The kind of each byte, at hand: it is looked up for every byte of the file's structure. */
const KIND = kindsOfBytes();
const SLASH = 0x2f;
const ESCAPE = 0x23;
const DOT = 0x2e;
const LESS = 0x3c;
const GREATER = 0x3e;

/**
 * Reads PDF syntax (ISO 32000-1 §7.2, §7.3) strictly: no comments inside objects, no key twice, no
 * generation but 0. Two programs may read a lenient file in two ways; a strict one has one reading.
 */
export class PdfReader {
  /** Every dictionary of the object, inner ones before those that hold them. */
  dictionaries: PdfDict[] = [];
  /** Number of every object that was referred to, in order. */
  references: number[] = [];
  at = 0;
  private object = 0;
  private readonly empty = new DictShape();
  /** Names met so far, by a hash of their bytes. */
  private readonly names = new Map<number, PdfName>();
  /** Values of the arrays and dictionaries that are not at their end yet. */
  private readonly open: PdfValue[] = [];
  private held = 0;

  constructor(readonly bytes: Buffer) {}

  /** Goes to the object of this number, which has its own dictionaries and references. */
  begin(object: number, at: number): void {
    this.object = object;
    this.at = at;
    this.dictionaries = [];
    this.references = [];
  }

  white(): void {
    const { bytes } = this;
    let { at } = this;
    while (KIND[bytes[at] ?? PAST] === WHITE) at += 1;
    this.at = at;
  }

  /** Whether the text stands here; moves on if it does. */
  takes(text: string): boolean {
    for (let i = 0; i < text.length; i += 1) if (this.bytes[this.at + i] !== text.charCodeAt(i)) return false;
    this.at += text.length;
    return true;
  }

  expect(text: string): void {
    if (!this.takes(text)) refuse(`"${text.trim()}" does not stand at byte ${this.at}`);
  }

  /** Unsigned digits, at most ten. */
  digits(): number {
    const from = this.at;
    let value = 0;
    for (let byte = this.bytes[from]; isDigit(byte) && this.at - from <= 10; byte = this.bytes[this.at]) {
      value = value * 10 + byte - 0x30;
      this.at += 1;
    }
    return this.at === from || this.at - from > 10 ? refuse(`no number at byte ${from}`) : value;
  }

  value(depth = 0): PdfValue {
    if (depth > DEEPEST) refuse(`nesting too deep at byte ${this.at}`);
    this.white();
    switch (this.bytes[this.at]) {
      case SLASH:
        return this.name();
      case 0x5b:
        return this.array(depth);
      case LESS:
        return this.bytes[this.at + 1] === LESS
          ? this.dict(depth)
          : this.string(hexEnd(this.bytes, this.at), true);
      case 0x28:
        return this.string(literalEnd(this.bytes, this.at), false);
      default:
        return this.word();
    }
  }

  private string(to: number, hex: boolean): PdfString {
    const read = new PdfString(this.bytes, this.at, to, hex);
    this.at = to;
    return read;
  }

  /** Most words of a file are a few digits: read without a detour through text. */
  private word(): PdfValue {
    const { bytes, at: from } = this;
    let at = from;
    let whole = 0;
    let byte = bytes[at] ?? PAST;
    while (byte >= 0x30 && byte <= 0x39 && at - from < 9) {
      whole = whole * 10 + byte - 0x30;
      at += 1;
      byte = bytes[at] ?? PAST;
    }
    if (byte === DOT && at > from) return this.fraction(whole, at + 1, from);
    if (at === from || (KIND[byte] ?? 0) < WHITE) return this.otherWord(from);
    this.at = at;
    return this.reference(whole, from) ?? wholeNumber(whole);
  }

  /** With its digits as a whole number, divided by a power of ten: both are exact, so it is what the text says. */
  private fraction(whole: number, begin: number, from: number): PdfValue {
    const { bytes } = this;
    let [at, digits, power] = [begin, whole, 1];
    let byte = bytes[at] ?? PAST;
    while (byte >= 0x30 && byte <= 0x39 && at - begin < 6) {
      digits = digits * 10 + byte - 0x30;
      power *= 10;
      at += 1;
      byte = bytes[at] ?? PAST;
    }
    if (at === begin || (KIND[byte] ?? 0) < WHITE) return this.otherWord(from);
    this.at = at;
    return { is: 'number', integer: false, value: digits / power };
  }

  private otherWord(from: number): PdfValue {
    while (!isEnd(this.bytes[this.at])) this.at += 1;
    const word = ascii(this.bytes, from, Math.min(this.at, from + 64));
    if (word === 'null' || word === 'true' || word === 'false') return { is: word };
    if (!NUMBER.test(word)) refuse(`no PDF value at byte ${from}`);
    const integer = !word.includes('.');
    const ref = integer && /^\d{1,10}$/.test(word) ? this.reference(Number(word), from) : undefined;
    if (ref !== undefined) return ref;
    return integer ? wholeNumber(Number(word)) : { is: 'number', integer, value: Number(word) };
  }

  private reference(number: number, from: number): PdfRef | undefined {
    const { bytes } = this;
    let at = this.at;
    while (KIND[bytes[at] ?? PAST] === WHITE) at += 1;
    const generation = at;
    while (KIND[bytes[at] ?? PAST] === DIGIT) at += 1;
    const zero = at === generation + 1 && bytes[generation] === 0x30;
    if (at === generation || KIND[bytes[at] ?? PAST] !== WHITE) return undefined;
    while (KIND[bytes[at] ?? PAST] === WHITE) at += 1;
    if (bytes[at] !== 0x52 || !isEnd(bytes[at + 1])) return undefined;
    if (!zero) refuse(`generation other than 0 at byte ${from}`);
    this.at = at + 1;
    this.references.push(number);
    return { is: 'ref', number };
  }

  private name(): PdfName {
    const { bytes } = this;
    const from = this.at + 1;
    let at = from;
    let hash = 0;
    let escaped = false;
    for (let byte = bytes[at] ?? PAST; (KIND[byte] ?? 0) <= DIGIT; byte = bytes[at] ?? PAST) {
      if (byte === ESCAPE) escaped = true;
      hash = (hash * 31 + byte) | 0;
      at += 1;
    }
    this.at = at;
    if (escaped) return { is: 'name', name: this.unescaped(from) };
    // A file has tens of thousands of names, and a hundred different ones: each is made once.
    const known = this.names.get(hash);
    if (known !== undefined && this.stands(known.name, from)) return known;
    const made: PdfName = { is: 'name', name: ascii(this.bytes, from, at) };
    this.names.set(hash, made);
    return made;
  }

  private stands(text: string, from: number): boolean {
    const { bytes } = this;
    const { length } = text;
    if (length !== this.at - from) return false;
    for (let i = 0; i < length; i += 1) if (bytes[from + i] !== text.charCodeAt(i)) return false;
    return true;
  }

  /** ISO 32000-1 §7.3.5: a number sign and two hex digits stand for a byte. */
  private unescaped(from: number): string {
    return ascii(this.bytes, from, this.at).replace(/#(.{0,2})/gs, (_, pair: string) => {
      if (!/^[0-9A-Fa-f]{2}$/.test(pair)) refuse(`bad name at byte ${from}`);
      return String.fromCharCode(Number.parseInt(pair, 16));
    });
  }

  private array(depth: number): PdfValue {
    const base = this.held;
    this.at += 1;
    for (this.white(); this.bytes[this.at] !== 0x5d; this.white()) this.hold(this.value(depth + 1));
    this.at += 1;
    return { is: 'array', items: this.release(base) };
  }

  private dict(depth: number): PdfDict {
    const from = this.at;
    const base = this.held;
    let kind = this.empty;
    this.at += 2;
    for (this.white(); this.bytes[this.at] !== GREATER || this.bytes[this.at + 1] !== GREATER; this.white()) {
      if (this.bytes[this.at] !== SLASH) refuse(`no name for a dictionary entry at byte ${this.at}`);
      const key = this.name().name;
      const value = this.value(depth + 1);
      kind = kind.with(key);
      if (key === 'Type' && value.is === 'name') kind = kind.ofType(value.name);
      this.hold(value);
    }
    this.at += 2;
    const twice = kind.twice();
    if (twice !== undefined) refuse(`/${twice} stands twice in the dictionary at byte ${from}`);
    const read = new PdfDict(kind, this.release(base), this.object, from, this.at);
    this.dictionaries.push(read);
    return read;
  }

  private hold(value: PdfValue): void {
    this.open[this.held] = value;
    this.held += 1;
  }

  /** The values from a place on, in a list of their own. */
  private release(base: number): PdfValue[] {
    const values = this.open.slice(base, this.held);
    this.held = base;
    return values;
  }
}

function isDigit(byte: number | undefined): byte is number {
  return byte !== undefined && byte >= 0x30 && byte <= 0x39;
}

/** Fractions are made with their fields in another order, so that the engine keeps these as whole numbers. */
function wholeNumber(value: number): PdfNumber {
  return { is: 'number', value, integer: true };
}

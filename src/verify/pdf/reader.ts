import { refuse } from '../malformed.js';
import type { PdfDict, PdfName, PdfValue } from './value.js';

/** Deeper nesting than any dossier has; a file made of brackets must not exhaust the stack. */
const DEEPEST = 64;

/** ISO 32000-1 tables 1 and 2, by byte: looked up for every byte of the file's structure. */
const WHITE = tableOf('\0\t\n\f\r ');
const ENDS = tableOf('\0\t\n\f\r ()<>[]{}/%');
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)$/;
const SLASH = 0x2f;
const ESCAPE = 0x23;
const ESCAPES: Record<string, number> = { n: 0x0a, r: 0x0d, t: 0x09, b: 0x08, f: 0x0c };

/**
 * Reads PDF syntax (ISO 32000-1 §7.2, §7.3) strictly: no comments inside objects, no key twice, no
 * generation but 0. Two programs may read a lenient file in two ways; a strict one has one reading.
 */
export class PdfReader {
  /** Every dictionary that was read, inner ones before those that hold them. */
  readonly dictionaries: PdfDict[] = [];
  /** Number of every object that was referred to. */
  readonly references = new Set<number>();

  constructor(
    readonly bytes: Uint8Array,
    public at: number,
    /** Names met so far; shared by the readers of one file. */
    private readonly names: Map<number, PdfName> = new Map(),
  ) {}

  white(): void {
    while (isWhite(this.bytes[this.at])) this.at += 1;
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
    while (isDigit(this.bytes[this.at])) this.at += 1;
    if (this.at === from || this.at - from > 10) refuse(`no number at byte ${from}`);
    return Number(ascii(this.bytes, from, this.at));
  }

  value(depth = 0): PdfValue {
    if (depth > DEEPEST) refuse(`nesting too deep at byte ${this.at}`);
    this.white();
    const from = this.at;
    const first = this.bytes[from];
    if (first === SLASH) return this.name();
    if (first === 0x28) return { is: 'string', bytes: this.literal(), hex: false, from, to: this.at };
    if (first === 0x5b) return this.array(depth);
    if (first === 0x3c) {
      if (this.bytes[from + 1] === 0x3c) return this.dict(depth);
      return { is: 'string', bytes: this.hex(), hex: true, from, to: this.at };
    }
    return this.word(from);
  }

  private word(from: number): PdfValue {
    while (this.at < this.bytes.length && !ends(this.bytes[this.at])) this.at += 1;
    const to = this.at;
    const whole = this.smallNumber(from, to);
    if (whole !== undefined)
      return this.reference(whole, from) ?? { is: 'number', value: whole, integer: true };
    const word = ascii(this.bytes, from, Math.min(to, from + 64));
    if (word === 'null' || word === 'true' || word === 'false') return { is: word };
    if (!NUMBER.test(word)) refuse(`no PDF value at byte ${from}`);
    const integer = !word.includes('.');
    const ref = integer && /^\d{1,10}$/.test(word) ? this.reference(Number(word), from) : undefined;
    return ref ?? { is: 'number', value: Number(word), integer };
  }

  /** Most words of a file are a few digits: read without a detour through text. */
  private smallNumber(from: number, to: number): number | undefined {
    if (to === from || to - from > 9) return undefined;
    let value = 0;
    for (let i = from; i < to; i += 1) {
      const byte = this.bytes[i];
      if (!isDigit(byte)) return undefined;
      value = value * 10 + ((byte ?? 0) - 0x30);
    }
    return value;
  }

  private reference(number: number, from: number): PdfValue | undefined {
    const before = this.at;
    this.white();
    const generation = this.at;
    while (isDigit(this.bytes[this.at])) this.at += 1;
    if (this.at > generation && isWhite(this.bytes[this.at])) {
      const zero = ascii(this.bytes, generation, Math.min(this.at, generation + 8)) === '0';
      this.white();
      if (this.bytes[this.at] === 0x52 && ends(this.bytes[this.at + 1])) {
        if (!zero) refuse(`generation other than 0 at byte ${from}`);
        this.at += 1;
        this.references.add(number);
        return { is: 'ref', number };
      }
    }
    this.at = before;
    return undefined;
  }

  private name(): PdfName {
    const from = this.at + 1;
    let hash = 0;
    let escaped = false;
    for (this.at = from; this.at < this.bytes.length; this.at += 1) {
      const byte = this.bytes[this.at] ?? 0;
      if (ENDS[byte] === 1) break;
      if (byte === ESCAPE) escaped = true;
      hash = (hash * 31 + byte) | 0;
    }
    if (escaped) return { is: 'name', name: this.unescaped(from) };
    // A file has tens of thousands of names, and a hundred different ones: each is made once.
    const known = this.names.get(hash);
    if (known !== undefined && this.stands(known.name, from)) return known;
    const made: PdfName = { is: 'name', name: ascii(this.bytes, from, this.at) };
    this.names.set(hash, made);
    return made;
  }

  private stands(text: string, from: number): boolean {
    if (text.length !== this.at - from) return false;
    for (let i = 0; i < text.length; i += 1) if (this.bytes[from + i] !== text.charCodeAt(i)) return false;
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
    const items: PdfValue[] = [];
    this.at += 1;
    for (this.white(); !this.takes(']'); this.white()) items.push(this.value(depth + 1));
    return { is: 'array', items };
  }

  private dict(depth: number): PdfDict {
    const from = this.at;
    const entries = new Map<string, PdfValue>();
    this.at += 2;
    for (this.white(); !this.takes('>>'); this.white()) {
      if (this.bytes[this.at] !== SLASH) refuse(`no name for a dictionary entry at byte ${this.at}`);
      const key = this.name().name;
      if (entries.has(key)) refuse(`/${key} stands twice in the dictionary at byte ${from}`);
      entries.set(key, this.value(depth + 1));
    }
    const read: PdfDict = { is: 'dict', entries, from, to: this.at };
    this.dictionaries.push(read);
    return read;
  }

  private hex(): Uint8Array {
    const from = this.at + 1;
    const end = this.bytes.indexOf(0x3e, from);
    if (end < 0) refuse(`a hex string without end at byte ${from}`);
    const digits = ascii(this.bytes, from, end).replace(/[\0\t\n\f\r ]/g, '');
    if (!/^[0-9A-Fa-f]*$/.test(digits)) refuse(`a hex string with other characters at byte ${from}`);
    this.at = end + 1;
    return new Uint8Array(Buffer.from(digits.length % 2 === 0 ? digits : `${digits}0`, 'hex'));
  }

  private literal(): Uint8Array {
    const from = this.at;
    const out: number[] = [];
    this.at += 1;
    for (let open = 1; ; ) {
      const byte = this.bytes[this.at] ?? refuse(`a string without end at byte ${from}`);
      this.at += 1;
      if (byte === 0x5c) {
        this.escape(out);
        continue;
      }
      if (byte === 0x28) open += 1;
      if (byte === 0x29) open -= 1;
      if (open === 0) return Uint8Array.from(out);
      out.push(byte);
    }
  }

  private escape(out: number[]): void {
    const octal = /^[0-7]{1,3}/.exec(ascii(this.bytes, this.at, this.at + 3))?.[0];
    if (octal !== undefined) {
      out.push(Number.parseInt(octal, 8) & 0xff);
      this.at += octal.length;
      return;
    }
    const byte = this.bytes[this.at] ?? refuse(`a string without end at byte ${this.at}`);
    this.at += 1;
    if (byte === 0x0d) {
      if (this.bytes[this.at] === 0x0a) this.at += 1;
    } else if (byte !== 0x0a) out.push(ESCAPES[String.fromCharCode(byte)] ?? byte);
  }
}

export function ascii(bytes: Uint8Array, from: number, to: number): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).toString('latin1', from, to);
}

function tableOf(characters: string): Uint8Array {
  const table = new Uint8Array(256);
  for (const character of characters) table[character.charCodeAt(0)] = 1;
  return table;
}

function isWhite(byte: number | undefined): boolean {
  return byte !== undefined && WHITE[byte] === 1;
}

function isDigit(byte: number | undefined): boolean {
  return byte !== undefined && byte >= 0x30 && byte <= 0x39;
}

function ends(byte: number | undefined): boolean {
  return byte === undefined || ENDS[byte] === 1;
}

import type { LogMapping } from '../../../core/model/evidence.js';
import type { TemperatureUnit } from '../../../core/model/temperature.js';

type Decimal = LogMapping['decimal'];

/**
 * A decimal number: sign, digits, one decimal mark, digits, and the exponent of ten that programs write for small
 * values. NaN for anything else; hexadecimal and thousands marks are not how a log writes a temperature.
 */
export function readNumber(text: string, decimal: Decimal): number {
  const mark = decimal === '.' ? 46 : 44;
  let i = 0;
  let end = text.length;
  while (i < end && text.charCodeAt(i) <= 32) i += 1;
  while (end > i && text.charCodeAt(end - 1) <= 32) end -= 1;
  let negative = false;
  const sign = text.charCodeAt(i);
  if (i < end && (sign === 45 || sign === 0x2212 || sign === 43)) {
    negative = sign !== 43;
    i += 1;
  }
  let mantissa = 0;
  let digits = 0;
  let scale = 1;
  let fraction = false;
  for (; i < end; i++) {
    const c = text.charCodeAt(i);
    if (c >= 48 && c <= 57) {
      mantissa = mantissa * 10 + (c - 48);
      digits += 1;
      if (fraction) scale *= 10;
    } else if (c === mark && !fraction) fraction = true;
    else return longNumber(text, mark);
  }
  if (digits === 0) return Number.NaN;
  // Up to 15 digits are exact in a double, and one division by a power of ten rounds once.
  if (digits > 15) return longNumber(text, mark);
  return (negative ? -mantissa : mantissa) / scale;
}

/** More digits than any sensor gives: what binary fractions add in a program's output, such as 72.09160609999998. */
const LONGEST = 40;
const LONG = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d{1,3})?$/;

function longNumber(text: string, mark: number): number {
  const plain = text.trim();
  if (plain.length > LONGEST || (mark === 44 && plain.includes('.'))) return Number.NaN;
  const pointed = plain.replace('\u2212', '-').replace(String.fromCharCode(mark), '.');
  return LONG.test(pointed) ? Number(pointed) : Number.NaN;
}

const WITH_UNIT = /^(.*?)\s*(?:°|º|deg\.?)?\s*([CF])$/i;

/** A number followed by its unit, such as `36.0 °F`; undefined when it is not one. */
export function readWithUnit(
  text: string,
  decimal: Decimal,
): { value: number; unit: TemperatureUnit } | undefined {
  const match = WITH_UNIT.exec(text.trim().slice(0, 40));
  if (match === null) return undefined;
  const [, digits = '', letter = ''] = match;
  const value = readNumber(digits, decimal);
  return Number.isNaN(value) ? undefined : { value, unit: letter.toUpperCase() === 'F' ? '°F' : '°C' };
}

/** The decimal mark that the cells use; `.` when none shows one. */
export function guessDecimal(cells: Iterable<string>): Decimal {
  let commas = 0;
  let points = 0;
  for (const cell of cells) {
    if (/^\s*[+\-−]?\d+,\d+\s*(?:°?\s*[CF])?\s*$/i.test(cell)) commas += 1;
    if (/^\s*[+\-−]?\d+\.\d+\s*(?:°?\s*[CF])?\s*$/i.test(cell)) points += 1;
  }
  return commas > points ? ',' : '.';
}

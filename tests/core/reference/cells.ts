import type { ValueCell } from '../../../src/core/reference/value-cell.js';

/** The first twelve digits of the SHA-256 of a text, computed by the platform, in Node and in a page. */
export async function fingerprintOf(text: string): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return [...new Uint8Array(digest)]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('')
    .slice(0, 12);
}

const plain = (quotation: string) => quotation.replace(/[−–—]/g, '-').replace(/1\/2/g, '0.5');

/** Numbers that a quotation prints, a decimal comma read both ways, and the ends of what it prints as m ± t. */
function numbersIn(quotation: string): Set<number> {
  const text = plain(quotation);
  const all = [text, text.replaceAll(',', '.')].flatMap((one) => one.match(/\d+(?:\.\d+)?/g) ?? []);
  const ends = [...text.matchAll(/(-?\d+(?:\.\d+)?)\s?°?\s?±\s?(\d+(?:\.\d+)?)/g)].flatMap(([, m, t]) => [
    Math.abs(Number(m) - Number(t)),
    Math.abs(Number(m) + Number(t)),
  ]);
  return new Set([...all.map(Number), ...ends]);
}

/**
 * Numbers of a value that do not stand in the words it is said to stand in. Some tables are kept with their cells run
 * together, `AppleR, F, H–1 to 490–952–4 months`: there the digits must stand in the words.
 */
export function numbersMissing({ printed }: Pick<ValueCell, 'printed'>, quotation: string): number[] {
  const numbers = numbersIn(quotation);
  const text = plain(quotation);
  return printed
    .flatMap(({ low, high }) => [low, high])
    .filter((number) => number !== undefined)
    .filter((number) => !numbers.has(Math.abs(number)) && !text.includes(String(Math.abs(number))));
}

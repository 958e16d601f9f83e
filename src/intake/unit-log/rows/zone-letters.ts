/** Letters of a zone behind a time of day: at the end, or before the year as in `Mon Sep 28 16:18:02 EDT 2026`. */
const LETTERS = /(?<=\d(?:\s*[AaPp]\.?[Mm]\.?)?)\s+\(?([A-Z]{2,4}T)\)?(?=\s+\d{4}$|$)/;

/** The letters of a zone that a time states, and the text without them; undefined for a time without. */
export function zoneLetters(text: string): { letters: string; rest: string } | undefined {
  if (text.length > 64 || !text.includes('T')) return undefined;
  const [all = '', letters] = LETTERS.exec(text) ?? [];
  // GMT is an offset like any other.
  return letters === undefined || letters === 'GMT' ? undefined : { letters, rest: text.replace(all, '') };
}

export const withoutLetters = (text: string): string => zoneLetters(text)?.rest ?? text;

/** A time with its letters as the offset that they mean, in minutes; without them where that is not known. */
export function withOffset(text: string, offsets: Readonly<Record<string, number | null>>): string {
  const found = zoneLetters(text);
  if (found === undefined || !Object.hasOwn(offsets, found.letters)) return text;
  const minutes = offsets[found.letters];
  if (minutes === null || minutes === undefined) return found.rest;
  const two = (n: number) => String(n).padStart(2, '0');
  const size = Math.abs(minutes);
  const offset = `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
  // The year behind the time of day goes before it, so that the offset ends the text.
  const [, head, clock, year] = /^(.*?)\s+(\d{1,2}:\d{2}(?::\d{2})?)\s+(\d{4})$/.exec(found.rest) ?? [];
  return clock === undefined ? `${found.rest} ${offset}` : `${head}, ${year} ${clock} ${offset}`;
}

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ask, type Program, pdfdetach, pdffonts, pdftotext, scratch } from './programs.js';

/** What Poppler's programs read in a PDF. Each throws when its program does not get to its end. */

function inFolder<T>(pdf: Uint8Array, use: (file: string, folder: string) => T): T {
  const disk = scratch();
  try {
    return use(disk.put('x.pdf', pdf), disk.folder);
  } finally {
    disk.end();
  }
}

function said(asked: Program, ...words: string[]): string {
  const { status, out } = ask(asked, ...words);
  if (status !== 0) throw new Error(`${asked.name} ended with ${status}: ${out}`);
  return out;
}

export const textOf = (pdf: Uint8Array): string => inFolder(pdf, (file) => said(pdftotext, file, '-'));

export const attachmentOf = (pdf: Uint8Array, name: string): Uint8Array =>
  inFolder(pdf, (file, folder) => {
    said(pdfdetach, '-savefile', name, '-o', join(folder, 'out'), file);
    return readFileSync(join(folder, 'out'));
  });

/** Names of fonts and whether each is embedded. */
export const fontsOf = (pdf: Uint8Array): { name: string; embedded: boolean }[] =>
  inFolder(pdf, (file) => said(pdffonts, file))
    .split('\n')
    .slice(2)
    .filter((line) => line.trim() !== '')
    .map((line) => ({
      name: line
        .slice(0, 36)
        .trim()
        .replace(/^[A-Z]{6}\+/, ''),
      embedded: /\s(yes|no)\s+(yes|no)\s+(yes|no)\s+\d+\s+\d+\s*$/.exec(line)?.[1] === 'yes',
    }));

/** Words that reach into the right margin, given in points. */
export function wordsBeyond(pdf: Uint8Array, margin: number): string[] {
  const boxes = inFolder(pdf, (file) => said(pdftotext, '-bbox', file, '-'));
  const width = Number(/<page width="([\d.]+)"/.exec(boxes)?.[1] ?? 0);
  return [...boxes.matchAll(/xMax="([\d.]+)"[^>]*>([^<]*)</g)]
    .filter(([, right]) => Number(right) > width - margin)
    .map(([, , word]) => word ?? '');
}

/**
 * What stands in a part of a page (counted from 1) of some height, with single blanks. The part is left, bottom, right
 * and top in points, from the lower left corner; Poppler counts from the upper.
 */
export function textWithin(
  pdf: Uint8Array,
  page: number,
  height: number,
  [left, bottom, right, top]: readonly [number, number, number, number],
): string {
  const at = [left, height - top, right - left, top - bottom].map((n) => String(Math.round(n)));
  const [x = '', y = '', width = '', high = ''] = at;
  const pages = ['-f', String(page), '-l', String(page)];
  const box = ['-x', x, '-y', y, '-W', width, '-H', high];
  return inFolder(pdf, (file) => said(pdftotext, ...pages, ...box, '-layout', file, '-'))
    .replace(/\s+/g, ' ')
    .trim();
}

import type { PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { PDFArray, PDFDict, PDFDocument, PDFName } from '#pdf-lib';

const { push } = Array.prototype;
const { getDocument, VerbosityLevel } = await import('pdfjs-dist/legacy/build/pdf.mjs');
Object.assign(globalThis, { pdfjsWorker: await import('pdfjs-dist/legacy/build/pdf.worker.mjs') });
// For engines before V8 12.2, PDF.js puts a slow `push` of its own in the place of every array's, in the whole process.
Array.prototype.push = push;

/** What a made PDF holds, read back by libraries that had no part in making it: PDF.js and pdf-lib. */

async function reading<T>(pdf: Uint8Array, use: (document: PDFDocumentProxy) => Promise<T>): Promise<T> {
  const task = getDocument({
    data: Uint8Array.from(pdf),
    isEvalSupported: false,
    disableFontFace: true,
    useSystemFonts: false,
    verbosity: VerbosityLevel.ERRORS,
  });
  try {
    return await use(await task.promise);
  } finally {
    await task.destroy();
  }
}

/** Pieces of text as they are placed on a page, in reading order; lengths in points. */
interface Piece {
  text: string;
  endsLine: boolean;
  left: number;
  right: number;
  /** Of the line it stands on, from the foot of the page. */
  baseline: number;
}

interface Page {
  width: number;
  pieces: Piece[];
}

/** Several questions are asked about one PDF, and reading it takes longer than setting it. */
const read = new WeakMap<Uint8Array, Promise<Page[]>>();

/** Of each page its width and its text. The bytes are not changed afterwards. */
function pagesOf(pdf: Uint8Array): Promise<Page[]> {
  const pages = read.get(pdf) ?? readPages(pdf);
  read.set(pdf, pages);
  return pages;
}

const readPages = (pdf: Uint8Array): Promise<Page[]> =>
  reading(pdf, (document) =>
    Promise.all(
      Array.from({ length: document.numPages }, async (_, index) => {
        const page = await document.getPage(index + 1);
        const { items } = await page.getTextContent();
        return {
          width: page.getViewport({ scale: 1 }).width,
          pieces: items.flatMap((item) => {
            if (!('str' in item)) return [];
            const [left, baseline] = [Number(item.transform[4]), Number(item.transform[5])];
            return [{ text: item.str, endsLine: item.hasEOL, left, right: left + item.width, baseline }];
          }),
        };
      }),
    ),
  );

/** All text of a PDF, line by line. */
export async function textOf(pdf: Uint8Array): Promise<string> {
  const pages = await pagesOf(pdf);
  return pages
    .map(({ pieces }) => pieces.map(({ text, endsLine }) => (endsLine ? `${text}\n` : text)).join(''))
    .join('\n');
}

/** Without white space, since lines break where the page wants them to. */
export const squeezed = (text: string): string => text.replace(/\s+/g, '');

/** Text that reaches into the right margin, given in points. */
export async function textBeyond(pdf: Uint8Array, margin: number): Promise<string[]> {
  const pages = await pagesOf(pdf);
  return pages.flatMap(({ width, pieces }) =>
    pieces.filter(({ text, right }) => text.trim() !== '' && right > width - margin).map(({ text }) => text),
  );
}

/** Whether a piece goes on where the one before it ends. */
const follows = (before: Piece | undefined, { baseline, left }: Piece) =>
  before !== undefined && Math.abs(before.baseline - baseline) < 1 && Math.abs(before.right - left) < 1;

/**
 * What stands in a part of a page (counted from 1), line by line and from left to right, with single blanks. The part
 * is left, bottom, right and top in points, from the lower left corner.
 */
export async function textWithin(
  pdf: Uint8Array,
  page: number,
  [left, bottom, right, top]: readonly [number, number, number, number],
): Promise<string> {
  const { pieces = [] } = (await pagesOf(pdf))[page - 1] ?? {};
  return pieces
    .filter((one) => one.left >= left && one.right <= right && one.baseline >= bottom && one.baseline <= top)
    .sort((a, b) => (Math.abs(a.baseline - b.baseline) < 1 ? a.left - b.left : b.baseline - a.baseline))
    .map((one, index, all) => (follows(all[index - 1], one) ? one.text : ` ${one.text}`))
    .join('')
    .replace(/\s+/g, ' ')
    .trim();
}

/** The bytes of every attached file, by its name. */
export const attachmentsOf = (pdf: Uint8Array): Promise<Map<string, Uint8Array>> =>
  reading(pdf, async (document) => {
    const attached: Record<string, { content: Uint8Array }> = (await document.getAttachments()) ?? {};
    return new Map(Object.entries(attached).map(([name, { content }]) => [name, content]));
  });

/** Names of fonts without the mark of a subset, and whether their outlines are in the file (ISO 32000-1 §9.9). */
export async function fontsOf(pdf: Uint8Array): Promise<{ name: string; embedded: boolean }[]> {
  const { context } = await PDFDocument.load(pdf, { updateMetadata: false });
  return context.enumerateIndirectObjects().flatMap(([, object]) => {
    if (!(object instanceof PDFDict) || object.get(PDFName.of('Type')) !== PDFName.of('Font')) return [];
    // A composite font has its outlines in its descendants, which are fonts of their own here.
    if (object.lookupMaybe(PDFName.of('DescendantFonts'), PDFArray) !== undefined) return [];
    const descriptor = object.lookupMaybe(PDFName.of('FontDescriptor'), PDFDict);
    const embedded = ['FontFile', 'FontFile2', 'FontFile3'].some((key) => descriptor?.has(PDFName.of(key)));
    const name = object.lookupMaybe(PDFName.of('BaseFont'), PDFName)?.decodeText() ?? '';
    return [{ name: name.replace(/^[A-Z]{6}\+/, ''), embedded }];
  });
}

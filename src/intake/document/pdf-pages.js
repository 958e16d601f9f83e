import { PDFDocument } from '#pdf-lib';

/**
 * Pages in the page tree of a PDF. Throws what the library throws for one that it cannot read.
 * @param {Uint8Array} bytes
 */
export async function pagesOf(bytes) {
  const read = await PDFDocument.load(bytes, { updateMetadata: false, throwOnInvalidObject: true });
  return read.getPageCount();
}

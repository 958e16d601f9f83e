import { PDFArray, PDFDict, PDFDocument, PDFName } from '#pdf-lib';

/**
 * Counts the pages in the page tree of a PDF (ISO 32000-2, §7.7.3), each once: a tree that names its branches twice
 * at each fork would have more leaves than anything can count. Throws what the library throws for an unreadable
 * file.
 * @param {Uint8Array} bytes
 */
export async function pagesOf(bytes) {
  const { context, catalog } = await PDFDocument.load(bytes, {
    updateMetadata: false,
    throwOnInvalidObject: true,
  });
  const waiting = [catalog.get(PDFName.of('Pages'))];
  const seen = new Set(waiting);
  let pages = 0;
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const node = context.lookup(next);
    if (!(node instanceof PDFDict)) continue;
    const kids = node.lookup(PDFName.of('Kids'));
    if (!(kids instanceof PDFArray)) pages += 1;
    else
      for (const kid of kids.asArray())
        if (!seen.has(kid)) {
          seen.add(kid);
          waiting.push(kid);
        }
  }
  return pages;
}

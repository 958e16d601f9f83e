import { refuse } from '../malformed.js';
import { type PdfFile, resolveReference } from './file.js';
import { nameOf, type PdfDict, type PdfValue } from './value.js';

const DEEPEST = 32;

/** The pages in their order (ISO 32000-1 §7.7.3). @throws Malformed for a tree that is too deep or no tree */
export function pagesInOrder(file: PdfFile): PdfDict[] {
  const pages: PdfDict[] = [];
  const seen = new Set<PdfValue>();
  const walk = (at: PdfValue | undefined, depth: number): void => {
    const node = resolveReference(file, at);
    if (node?.is !== 'dict' || seen.has(node) || depth > DEEPEST) refuse('the order of pages is damaged');
    seen.add(node);
    if (nameOf(node.get('Type')) === 'Page') {
      pages.push(node);
      return;
    }
    const kids = resolveReference(file, node.get('Kids'));
    for (const kid of kids?.is === 'array' ? kids.items : []) walk(kid, depth + 1);
  };
  walk(file.catalog.get('Pages'), 0);
  return pages;
}

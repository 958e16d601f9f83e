import { type PdfFile, resolveReference } from './file.js';
import { nameOf, type PdfDict, type PdfValue, visit } from './value.js';

/** Deeper trees of pages than any typesetter makes. */
const DEEPEST = 32;
const MOST_NAMED = 5;

/**
 * What a file carries without showing it, in words: objects that nothing refers to, and pages that are not in the
 * order of pages, which an update could bring up (shadow attacks; Mainka, Mladenov, Rohlmann, NDSS 2021), and counts
 * of pages by which programs could show fewer. Empty when there is nothing of the kind.
 */
export function hiddenParts(file: PdfFile): string[] {
  const reached = reachable(file);
  const found = [...file.objects.keys()]
    .filter((number) => !reached.has(number))
    .map((number) => `object ${number}, to which nothing refers`);
  for (const number of reached)
    if (!file.objects.has(number)) found.push(`object ${number}, which is referred to and not there`);
  const shown = new Set<PdfDict>();
  found.push(...pagesBelow(file, file.catalog.get('Pages'), shown, 0).wrong);
  for (const dict of file.dictionaries)
    if (nameOf(dict.get('Type')) === 'Page' && !shown.has(dict))
      found.push(`a page in object ${dict.object} that is not in the order of pages`);
  return found.length <= MOST_NAMED
    ? found
    : [...found.slice(0, MOST_NAMED), `and ${found.length - MOST_NAMED} more`];
}

/** Numbers of the objects to which the trailer leads. */
function reachable({ objects, trailer }: PdfFile): Set<number> {
  const reached = new Set<number>();
  const reach = (value: PdfValue) => {
    if (value.is === 'ref') reached.add(value.number);
  };
  visit(trailer, reach);
  // Iterating a Set also visits members that are added meanwhile.
  for (const number of reached) {
    const object = objects.get(number);
    if (object !== undefined) visit(object.value, reach);
  }
  return reached;
}

/** ISO 32000-1 §7.7.3.2: a node counts the pages below it. */
function pagesBelow(
  file: PdfFile,
  at: PdfValue | undefined,
  seen: Set<PdfDict>,
  depth: number,
): { count: number; wrong: string[] } {
  const node = resolveReference(file, at);
  const type = node?.is === 'dict' ? nameOf(node.get('Type')) : undefined;
  if (node?.is !== 'dict' || seen.has(node) || depth > DEEPEST || (type !== 'Page' && type !== 'Pages'))
    return { count: 0, wrong: ['a page that stands twice in the order of pages, or is none'] };
  seen.add(node);
  if (type === 'Page') return { count: 1, wrong: [] };
  const kids = resolveReference(file, node.get('Kids'));
  const below = (kids?.is === 'array' ? kids.items : []).map((kid) => pagesBelow(file, kid, seen, depth + 1));
  const count = below.reduce((sum, one) => sum + one.count, 0);
  const wrong = below.flatMap((one) => one.wrong);
  const said = resolveReference(file, node.get('Count'));
  if (said?.is !== 'number' || said.value !== count) wrong.push(`pages that are counted wrongly`);
  return { count, wrong };
}

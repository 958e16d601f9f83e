import type { PdfFile } from './file.js';
import { nameOf, type PdfDict, type PdfValue } from './value.js';

/**
 * Entries that let a page show something else than what it draws, or differ between programs: transparency and blending
 * (ISO 32000-1 §11), patterns and shadings (§8.7), transfer functions and halftones (§10.4, §10.5).
 */
const SEE_THROUGH = [
  'Group',
  'BM',
  'CA',
  'ca',
  'PatternType',
  'ShadingType',
  'TR',
  'TR2',
  'HT',
  'BG2',
  'UCR2',
];
const PAGE_KEYS = new Set([
  ...['Type', 'Parent', 'Resources', 'MediaBox', 'Contents', 'Annots'],
  ...['StructParents', 'Tabs'],
]);
const PAGES_KEYS = new Set(['Type', 'Parent', 'Kids', 'Count']);
const LINK_KEYS = new Set([
  ...['Type', 'Subtype', 'Rect', 'Border', 'Dest', 'A', 'F', 'StructParent', 'Contents'],
]);
const MOST_NAMED = 5;

/**
 * What the pages have beside plain drawing, in words: other boxes than the paper's, turned or scaled pages, links that
 * draw, transparency, fonts and forms that are drawings of their own. Empty for pages as dossiers have them.
 */
export function unplainParts(file: PdfFile): string[] {
  const found = file.dictionaries.flatMap((dict) =>
    oddEntries(file, dict).map((what) => `${what} in object ${dict.object}`),
  );
  return found.length <= MOST_NAMED
    ? found
    : [...found.slice(0, MOST_NAMED), `and ${found.length - MOST_NAMED} more`];
}

function oddEntries(file: PdfFile, dict: PdfDict): string[] {
  const odd = SEE_THROUGH.filter((key) => dict.has(key)).map((key) => `/${key}`);
  switch (nameOf(dict.get('Type'))) {
    case 'Page':
      return [
        ...odd,
        ...others(dict, PAGE_KEYS),
        ...(isPaper(dict.get('MediaBox')) ? [] : ['an odd /MediaBox']),
      ];
    case 'Pages':
      return [...odd, ...others(dict, PAGES_KEYS)];
    case 'ExtGState':
      return [...odd, 'a state of graphics'];
    default:
      return [...odd, ...oddBySubtype(file, dict)];
  }
}

function oddBySubtype(file: PdfFile, dict: PdfDict): string[] {
  switch (nameOf(dict.get('Subtype'))) {
    case 'Link':
      return others(dict, LINK_KEYS);
    case 'Type3':
      return ['a font whose letters are drawings'];
    case 'Form':
      return isEmptyForm(file, dict) ? [] : ['a drawing beside the pages'];
    default:
      return [];
  }
}

const others = (dict: PdfDict, known: ReadonlySet<string>): string[] =>
  [...dict.keys()].filter((key) => !known.has(key)).map((key) => `/${key}`);

/** A lower left corner at 0 0, and two positive lengths. */
function isPaper(box: PdfValue | undefined): boolean {
  if (box?.is !== 'array' || box.items.length !== 4) return false;
  const [x, y, width, height] = box.items.map((one) => (one.is === 'number' ? one.value : Number.NaN));
  return x === 0 && y === 0 && width !== undefined && width > 0 && height !== undefined && height > 0;
}

/** The appearance of the field that holds the signature draws nothing. */
function isEmptyForm(file: PdfFile, dict: PdfDict): boolean {
  const object = file.objects.get(dict.object);
  return object?.value === dict && object.stream !== undefined && object.stream.from === object.stream.to;
}

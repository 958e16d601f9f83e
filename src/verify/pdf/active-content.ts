import { lookUp, type PdfFile } from './file.js';
import { nameOf, type PdfDict, textOf } from './value.js';

/**
 * Entries that make a viewer do something on its own, show a form that is not in the pages, or another picture on
 * paper than on the screen.
 */
const KEYS = [
  ...['OpenAction', 'AA', 'JS', 'JavaScript', 'Launch', 'XFA', 'RichMediaContent', 'Collection'],
  ...['OCProperties', 'OC', 'Alternates', 'OPI'],
];
/** Where a click may lead: never to a file or a script. */
const LINK = /^(?:https?:\/\/|mailto:)/i;
/** The only actions in a dossier: jump inside it, or follow a web link when clicked (ISO 32000-1 table 198). */
const ALLOWED_ACTIONS = new Set(['GoTo', 'URI']);
/** Refused wherever they stand, since an action need not say that it is one. */
const OTHER_ACTIONS = new Set([
  ...['JavaScript', 'Launch', 'SubmitForm', 'ResetForm', 'ImportData', 'GoToR', 'GoToE', 'Rendition'],
  ...['RichMediaExecute', 'Movie', 'Sound', 'Hide', 'Named', 'SetOCGState', 'Thread', 'Trans', 'GoTo3DView'],
]);
const ALLOWED_ANNOTATIONS = new Set(['Link', 'Widget']);

/** Everything in the file that pages to be read have no need of, in words; empty when there is nothing. */
export function activeContent(file: PdfFile): string[] {
  const found: string[] = [];
  for (const object of file.objects.values())
    for (const dict of object.dictionaries)
      for (const what of activeParts(file, dict)) found.push(`${what} in object ${object.number}`);
  return found;
}

function* activeParts(file: PdfFile, dict: PdfDict): Generator<string> {
  for (const key of KEYS) if (dict.entries.has(key)) yield `/${key}`;
  const type = nameOf(dict.entries.get('Type'));
  const kind = nameOf(dict.entries.get('S')) ?? 'unknown';
  if (type === 'Action' ? !ALLOWED_ACTIONS.has(kind) : type !== 'StructElem' && OTHER_ACTIONS.has(kind))
    yield `an action of the kind /${kind}`;
  // ISO 32000-1 §8.8.2 and §8.10.4: programs of a printer, and pages of other files.
  const drawn = nameOf(dict.entries.get('Subtype'));
  if (drawn === 'PS' || nameOf(dict.entries.get('Subtype2')) === 'PS') yield 'a PostScript program';
  if (drawn === 'Form' && dict.entries.has('Ref')) yield 'a page of another file';
  const address = lookUp(file, dict.entries.get('URI'));
  if (address?.is === 'string' && !LINK.test(textOf(address) ?? '')) yield 'a link that is no web link';
  if (!dict.entries.has('Rect')) return;
  const subtype = nameOf(dict.entries.get('Subtype')) ?? 'unknown';
  if (!ALLOWED_ANNOTATIONS.has(subtype)) yield `an annotation of the kind /${subtype}`;
  const action = lookUp(file, dict.entries.get('A'));
  const does = action?.is === 'dict' ? (nameOf(action.entries.get('S')) ?? 'unknown') : undefined;
  if (action !== undefined && !ALLOWED_ACTIONS.has(does ?? '')) yield `an annotation that does /${does}`;
}

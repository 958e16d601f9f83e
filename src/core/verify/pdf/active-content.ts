import type { DictShape } from './dict-shape.js';
import { dictionariesOf, type PdfFile, resolveReference, sortedByOffset } from './file.js';
import { nameOf, type PdfDict, type PdfValue, textOf } from './value.js';

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

/** Where viewers look for an action; in outlines /Next is only the next item, which has no /S. */
const ACTION_PLACES = ['A', 'Next'];
/** What something is: a name, and never one that stands elsewhere, where two programs could read it in two ways. */
const WHAT_IT_IS = ['S', 'Subtype', 'Subtype2'];
/** What has none of these keys does nothing, unless it says that it is an action. */
const ASKED = [...KEYS, ...ACTION_PLACES, ...WHAT_IT_IS, 'URI', 'Rect'];

/** Everything in the file that pages to be read have no need of, in words; empty when there is nothing. */
export function activeContent(file: PdfFile): string[] {
  const found = dictionariesOf(file, mayAct).filter((dict) => activeParts(file, dict).length > 0);
  return sortedByOffset(found).flatMap((dict) =>
    activeParts(file, dict).map((what) => `${what} in object ${dict.object}`),
  );
}

function mayAct(kind: DictShape): boolean {
  return kind.type === 'Action' || kind.has(...ASKED) || (kind.type === undefined && kind.has('Type'));
}

function activeParts(file: PdfFile, dict: PdfDict): string[] {
  const found: string[] = [];
  for (const key of KEYS) if (dict.has(key)) found.push(`/${key}`);
  for (const key of ['Type', ...WHAT_IT_IS])
    if (dict.has(key) && dict.get(key)?.is !== 'name') found.push(`/${key} that is no name`);
  const kind = nameOf(dict.get('S')) ?? 'unknown';
  // Viewers do not ask whether an action says that it is one, or that it is something else.
  const acts = nameOf(dict.get('Type')) === 'Action' ? !ALLOWED_ACTIONS.has(kind) : OTHER_ACTIONS.has(kind);
  if (acts) found.push(`an action of the kind /${kind}`);
  for (const key of ACTION_PLACES)
    for (const action of dictionariesAt(file, dict.get(key))) {
      const does = action.has('S') ? (nameOf(action.get('S')) ?? 'unknown') : undefined;
      if (does !== undefined && !ALLOWED_ACTIONS.has(does)) found.push(`/${key} that does /${does}`);
    }
  // ISO 32000-1 §8.8.2 and §8.10.4: programs of a printer, and pages of other files.
  const drawn = nameOf(dict.get('Subtype'));
  if (drawn === 'PS' || nameOf(dict.get('Subtype2')) === 'PS') found.push('a PostScript program');
  if (drawn === 'Form' && dict.has('Ref')) found.push('a page of another file');
  const address = resolveReference(file, dict.get('URI'));
  if (address?.is === 'string' && !LINK.test(textOf(address) ?? '')) found.push('a link that is no web link');
  if (!dict.has('Rect')) return found;
  const subtype = nameOf(dict.get('Subtype')) ?? 'unknown';
  if (!ALLOWED_ANNOTATIONS.has(subtype)) found.push(`an annotation of the kind /${subtype}`);
  const action = resolveReference(file, dict.get('A'));
  if (action !== undefined && (action.is !== 'dict' || !action.has('S')))
    found.push('an annotation that does something unknown');
  return found;
}

/** The dictionary that stands there, or those of a list. */
function dictionariesAt(file: PdfFile, value: PdfValue | undefined): PdfDict[] {
  const there = resolveReference(file, value);
  const all = there?.is === 'array' ? there.items.map((one) => resolveReference(file, one)) : [there];
  return all.filter((one) => one?.is === 'dict');
}

import { type PdfFile, resolveReference } from './file.js';
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
/** Keys that are refused in any dictionary, since an action need not name its type. */
const OTHER_ACTIONS = new Set([
  ...['JavaScript', 'Launch', 'SubmitForm', 'ResetForm', 'ImportData', 'GoToR', 'GoToE', 'Rendition'],
  ...['RichMediaExecute', 'Movie', 'Sound', 'Hide', 'Named', 'SetOCGState', 'Thread', 'Trans', 'GoTo3DView'],
]);
const ALLOWED_ANNOTATIONS = new Set(['Link', 'Widget']);

/** What an entry under a key may make a viewer do, in words. */
type Rule = (value: PdfValue, dict: PdfDict, file: PdfFile) => string[];

/** A rule for a key whose value must be a name and no reference, which programs could resolve in two ways. */
const named =
  (key: string, rule: (name: string, dict: PdfDict) => string[]): Rule =>
  (value, dict) =>
    value.is === 'name' ? rule(value.name, dict) : [`/${key} that is no name`];

const RULES = new Map<string, Rule>([
  ...KEYS.map((key): [string, Rule] => [key, () => [`/${key}`]]),
  // Viewers run an action whatever its /Type says.
  ['Type', named('Type', (name, dict) => (name === 'Action' ? otherAction(dict, isAllowed) : []))],
  [
    'S',
    named('S', (_, dict) => (nameOf(dict.get('Type')) === 'Action' ? [] : otherAction(dict, isHarmless))),
  ],
  // The /Next of an outline item is the next item, not an action: it has no /S.
  ['A', (value, _, file) => actionsAt(file, 'A', value)],
  ['Next', (value, _, file) => actionsAt(file, 'Next', value)],
  // PostScript and reference XObjects bring in printer programs and pages of other files (ISO 32000-1 §8.8.2, §8.10.4).
  ['Subtype', named('Subtype', (name, dict) => [...postScript(name), ...otherFile(name, dict)])],
  ['Subtype2', named('Subtype2', postScript)],
  ['URI', (value, _, file) => linkAt(file, value)],
  ['Rect', (_, dict, file) => annotation(file, dict)],
]);

/** Names everything in the file that acts, or draws what the pages do not show; empty for plain pages. */
export function activeContent(file: PdfFile): string[] {
  const found: string[] = [];
  for (const dict of file.dictionaries)
    for (const [key, value] of dict)
      for (const what of RULES.get(key)?.(value, dict, file) ?? [])
        found.push(`${what} in object ${dict.object}`);
  return found;
}

const isAllowed = (kind: string): boolean => ALLOWED_ACTIONS.has(kind);
const isHarmless = (kind: string): boolean => !OTHER_ACTIONS.has(kind);

function otherAction(dict: PdfDict, mayBe: (kind: string) => boolean): string[] {
  const kind = nameOf(dict.get('S')) ?? 'unknown';
  return mayBe(kind) ? [] : [`an action of the kind /${kind}`];
}

function actionsAt(file: PdfFile, key: string, value: PdfValue): string[] {
  return dictionariesAt(file, value).flatMap((action) => {
    if (!action.has('S')) return [];
    const does = nameOf(action.get('S')) ?? 'unknown';
    return isAllowed(does) ? [] : [`/${key} that does /${does}`];
  });
}

function postScript(name: string): string[] {
  return name === 'PS' ? ['a PostScript program'] : [];
}

function otherFile(name: string, dict: PdfDict): string[] {
  return name === 'Form' && dict.has('Ref') ? ['a page of another file'] : [];
}

function linkAt(file: PdfFile, value: PdfValue): string[] {
  const address = resolveReference(file, value);
  return address?.is === 'string' && !LINK.test(textOf(address) ?? '') ? ['a link that is no web link'] : [];
}

function annotation(file: PdfFile, dict: PdfDict): string[] {
  const subtype = nameOf(dict.get('Subtype')) ?? 'unknown';
  const found = ALLOWED_ANNOTATIONS.has(subtype) ? [] : [`an annotation of the kind /${subtype}`];
  const action = resolveReference(file, dict.get('A'));
  if (action !== undefined && (action.is !== 'dict' || !action.has('S')))
    found.push('an annotation that does something unknown');
  return found;
}

/** The dictionary of a value, or the dictionaries of a list. */
function dictionariesAt(file: PdfFile, value: PdfValue | undefined): PdfDict[] {
  const there = resolveReference(file, value);
  const all = there?.is === 'array' ? there.items.map((one) => resolveReference(file, one)) : [there];
  return all.filter((one) => one?.is === 'dict');
}

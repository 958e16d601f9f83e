import { inflate } from '#platform/inflate';
import { refuse } from '../malformed.js';
import { type PdfFile, resolveReference } from './file.js';
import type { PdfObject } from './object.js';
import { nameOf, type PdfDict, type PdfValue, textOf } from './value.js';

export interface EmbeddedFile {
  name: string;
  /** Bytes as embedded. @throws Malformed when they cannot be unpacked, or are more than `most` */
  read: (most: number) => Promise<Uint8Array>;
}

const DEEPEST_TREE = 32;
const MOST_ATTACHMENTS = 20_000;

/**
 * Every file embedded in the PDF, from the catalog's name tree (ISO 32000-1 §7.7.4, §7.11.4), in its order.
 * @throws Malformed for a name that stands twice, a file specification whose names disagree, or one that the
 *   tree does not list: programs would show different attachments
 */
export function embeddedFiles(file: PdfFile): EmbeddedFile[] {
  const names = resolveReference(file, file.catalog.get('Names'));
  const root = names?.is === 'dict' ? names.get('EmbeddedFiles') : undefined;
  const specifications = new Map<string, PdfDict>();
  if (root !== undefined) walk(file, root, specifications, new Set(), 0);
  const listed = new Set(specifications.values());
  requireUsed(file, listed);
  if (file.dictionaries.some((dict) => dict.has('EF') && !listed.has(dict)))
    refuse('an embedded file that the list of attachments does not name');
  return [...specifications].map(([name, specification]) => embedded(file, name, specification));
}

/** Every embedded stream is that of a listed file: none lies beside them, as a related file (§7.11.4.3) or alone. */
function requireUsed(file: PdfFile, listed: ReadonlySet<PdfDict>): void {
  const used = new Set<number>();
  for (const specification of listed) {
    if (specification.has('RF')) refuse('an attachment with related files beside it');
    const streams = resolveReference(file, specification.get('EF'));
    if (streams?.is !== 'dict') continue;
    for (const one of streams.values()) if (one.is === 'ref') used.add(one.number);
  }
  for (const dict of file.dictionaries) {
    const stands = file.objects.get(dict.object)?.value === dict;
    if (nameOf(dict.get('Type')) === 'EmbeddedFile' && stands && !used.has(dict.object))
      refuse('an embedded file that the list of attachments does not name');
  }
}

function walk(
  file: PdfFile,
  at: PdfValue,
  found: Map<string, PdfDict>,
  seen: Set<PdfValue>,
  depth: number,
): void {
  const node = resolveReference(file, at);
  if (node?.is !== 'dict' || seen.has(node) || depth > DEEPEST_TREE)
    refuse('the list of attachments is damaged');
  seen.add(node);
  const kids = resolveReference(file, node.get('Kids'));
  if (kids?.is === 'array') for (const kid of kids.items) walk(file, kid, found, seen, depth + 1);
  const pairs = resolveReference(file, node.get('Names'));
  if (pairs === undefined) return;
  if (pairs.is !== 'array' || pairs.items.length % 2 !== 0) refuse('the list of attachments is damaged');
  for (let i = 0; i < pairs.items.length; i += 2) {
    const specification = resolveReference(file, pairs.items[i + 1]);
    if (specification?.is !== 'dict') refuse('an attachment without its description');
    const name = textOf(specification.get('UF')) ?? refuse('an attachment without a name');
    for (const other of [pairs.items[i], specification.get('F')])
      if (textOf(other) !== name) refuse(`the attachment "${name}" has a second name`);
    if (found.has(name)) refuse(`two attachments have the name "${name}"`);
    if (found.size >= MOST_ATTACHMENTS) refuse(`more than ${MOST_ATTACHMENTS} attachments`);
    found.set(name, specification);
  }
}

function embedded(file: PdfFile, name: string, specification: PdfDict): EmbeddedFile {
  const streams = resolveReference(file, specification.get('EF'));
  if (streams?.is !== 'dict') refuse(`the attachment "${name}" has no bytes`);
  const refs = [...streams.values()].map((one) => (one.is === 'ref' ? one.number : -1));
  const object = file.objects.get(refs[0] ?? -1);
  if (object?.stream === undefined || refs.some((number) => number !== refs[0]))
    refuse(`the attachment "${name}" has more than one content, or none`);
  return { name, read: (most) => unpack(file, object, name, most) };
}

async function unpack(
  file: PdfFile,
  { value, stream }: PdfObject,
  name: string,
  most: number,
): Promise<Uint8Array> {
  if (value.is !== 'dict' || stream === undefined) refuse(`the attachment "${name}" has no bytes`);
  const raw = file.bytes.subarray(stream.from, stream.to);
  const filter = resolveReference(file, value.get('Filter'));
  const filters = filter?.is === 'array' ? filter.items : filter === undefined ? [] : [filter];
  if (filters.length === 0) return raw.length <= most ? raw : refuse(`the attachment "${name}" is too large`);
  if (filters.length > 1 || nameOf(filters[0]) !== 'FlateDecode' || value.has('DecodeParms'))
    refuse(`the attachment "${name}" is packed in a way that dossiers do not use`);
  const unpacked = await inflate(raw, most);
  return unpacked ?? refuse(`the attachment "${name}" cannot be unpacked, or is larger than it may be`);
}

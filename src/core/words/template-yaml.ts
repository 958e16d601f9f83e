import { type Document, isCollection, isMap, isScalar, LineCounter, parseDocument } from 'yaml';
import type { z } from 'zod';
import { DossierError } from '../model/error.js';

const MOST_ALIASES = 100;

/** One YAML file of the templates. */
export interface YamlFile {
  text: string;
  /** For messages. */
  file: string;
  /** What the text says, where that is known already. */
  value?: unknown;
}

export interface TemplateYaml<T> {
  read: T;
  /** Line of the node at a path, or of its nearest ancestor; counted from 1. */
  rowOf(path: readonly PropertyKey[]): number;
}

/**
 * Parses one YAML file of the templates and checks it against a schema.
 * @param what what the file must be, for the message Throws DossierError `bad-template` with file and line of the
 * first fault.
 */
export function readTemplateYaml<S extends z.ZodType>(
  schema: S,
  { text, file, value }: YamlFile,
  { what, fix }: { what: string; fix: string },
): TemplateYaml<z.output<S>> {
  const refuse = (message: string, row: number) =>
    new DossierError('bad-template', message, { where: { file, row }, fix });
  const rowOf = (path: readonly PropertyKey[]) => rowIn(parsed(text, refuse), path);
  const plain = value ?? plainOf(parsed(text, refuse).document, (message) => refuse(message, 1));
  const read = schema.safeParse(plain);
  if (!read.success) {
    const path = read.error.issues[0]?.path ?? [];
    throw refuse(`${what}${path.length === 0 ? '' : ` (${path.map(String).join('.')})`}`, rowOf(path));
  }
  return { read: read.data, rowOf };
}

interface Parsed {
  document: Document.Parsed;
  lines: LineCounter;
}

function parsed(text: string, refuse: (message: string, row: number) => DossierError): Parsed {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, stringKeys: true });
  const [error] = document.errors;
  if (error !== undefined)
    throw refuse(error.message.split('\n')[0] ?? 'not YAML', lines.linePos(error.pos[0]).line);
  return { document, lines };
}

function rowIn({ document, lines }: Parsed, path: readonly PropertyKey[]): number {
  let node: unknown = document.contents;
  let row = 1;
  for (const key of path) {
    const pair = isMap(node)
      ? node.items.find((one) => isScalar(one.key) && one.key.value === key)
      : undefined;
    const next: unknown = isCollection(node) ? node.get(key, true) : undefined;
    const at = pair === undefined ? next : pair.key;
    if (isScalar(at) || isCollection(at)) row = lines.linePos(at.range?.[0] ?? 0).line;
    node = next;
  }
  return row;
}

/** The plain value; aliases without an anchor, and aliases of aliases that would fill the memory, are rejected. */
function plainOf(document: Document.Parsed, refuse: (message: string) => DossierError): unknown {
  try {
    return document.toJS({ maxAliasCount: MOST_ALIASES });
  } catch (cause) {
    throw refuse(cause instanceof Error ? cause.message : 'the aliases cannot be resolved');
  }
}

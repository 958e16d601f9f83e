import { createHash } from 'node:crypto';
import {
  isAlias,
  isCollection,
  isMap,
  isPair,
  isScalar,
  LineCounter,
  type Node,
  parseDocument,
  visit,
} from 'yaml';
import type { z } from 'zod';
import { DossierError, type ErrorCode, type Problem } from '../core/model/error.js';
import type { Sha256 } from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { prepared } from '../platform/node/prepared.js';
import { explainIssues } from './settings/schema-errors.js';

/** Settings written by hand are small; anything larger is not one of them. */
const MAX_YAML_CHARACTERS = 1_000_000;
const MAX_DEPTH = 40;
const MAX_ALIASES = 100;
/** Keys that reach into a JavaScript object's prototype (CWE-1321). */
const REFUSED_KEYS = new Set(['__proto__', 'constructor', 'prototype']);

export interface YamlText {
  /** Plain JSON as written: no dates, no tags, no custom objects. */
  value: unknown;
  /** Line of the node at a path, or of its nearest ancestor; counted from 1. */
  rowOf(path: readonly PropertyKey[]): number;
}

/**
 * Reads YAML 1.2 (core schema, unique keys, strict). Bounded in size, depth and aliases.
 * Throws DossierError with `code`, naming every problem with its line.
 */
export function readYaml(text: string, fileName: string, code: ErrorCode): YamlText {
  const refuse = (message: string, row?: number): DossierError =>
    problemsAsError([{ code, message, where: { file: fileName, ...omitUndefined({ row }) } }]);
  if (text.length > MAX_YAML_CHARACTERS)
    throw refuse(`${text.length} characters; at most ${MAX_YAML_CHARACTERS} are read`);
  const lines = new LineCounter();
  const row = (node: Node | null | undefined): number => lines.linePos(node?.range?.[0] ?? 0).line || 1;
  const deep = tooDeep(text);
  if (deep !== undefined) throw refuse(`nested deeper than ${MAX_DEPTH} levels`, deep);

  const parsed = parseDocument(text, {
    lineCounter: lines,
    schema: 'core',
    uniqueKeys: true,
    strict: true,
    stringKeys: true,
    prettyErrors: false,
    logLevel: 'error',
  });
  if (parsed.errors.length > 0)
    throw problemsAsError(
      parsed.errors.map((e) => ({
        code,
        message: e.message,
        where: { file: fileName, row: lines.linePos(e.pos[0]).line },
      })),
    );
  let problem: DossierError | undefined;
  visit(parsed, (key, node, path) => {
    if (path.length > 2 * MAX_DEPTH) problem ??= refuse(`nested deeper than ${MAX_DEPTH} levels`);
    else if (isPair(node) && isScalar(node.key) && REFUSED_KEYS.has(String(node.key.value)))
      problem ??= refuse(`the key "${String(node.key.value)}" is not allowed`, row(node.key));
    else if (key === 'value' && isAlias(node) && node.resolve(parsed) === undefined)
      problem ??= refuse(`there is no anchor &${node.source}`, row(node));
    return problem === undefined ? undefined : visit.BREAK;
  });
  if (problem !== undefined) throw problem;

  let value: unknown;
  try {
    value = parsed.toJS({ maxAliasCount: MAX_ALIASES });
  } catch (cause) {
    throw refuse(cause instanceof Error ? cause.message : 'the aliases cannot be resolved');
  }
  return {
    value,
    rowOf(path) {
      let node: unknown = parsed.contents;
      let found = row(parsed.contents);
      for (const key of path) {
        const pair = isMap(node) ? node.items.find((p) => isScalar(p.key) && p.key.value === key) : undefined;
        if (pair !== undefined && isScalar(pair.key)) found = row(pair.key);
        const next: unknown = isCollection(node) ? node.get(key, true) : undefined;
        if (next === undefined) break;
        node = next;
        if (pair === undefined && isNode(next)) found = row(next);
      }
      return found;
    },
  };
}

/** A text that was read and held against a schema. */
export interface YamlRead<T> {
  read: T;
  /** The plain value. */
  written: unknown;
  sha256: Sha256;
  rowOf: YamlText['rowOf'];
}

/**
 * Reads YAML and holds it against a schema. Throws one DossierError: its place and
 * message are the first problem's, and `others` lists the rest.
 * @param form under which the build keeps what it read of shipped texts
 */
export function readYamlAs<S extends z.ZodType>(
  schema: S,
  text: string,
  fileName: string,
  code: ErrorCode,
  form?: string,
): YamlRead<z.output<S>> {
  const kept =
    form === undefined ? undefined : prepared<Pick<YamlRead<z.output<S>>, 'read' | 'written'>>(form, text);
  if (kept !== undefined)
    return {
      ...kept,
      sha256: hashOf(text),
      rowOf: (path) => readYaml(text, fileName, code).rowOf(path),
    };
  const yaml = readYaml(text, fileName, code);
  const result = schema.safeParse(yaml.value, { reportInput: true });
  if (!result.success)
    throw problemsAsError(
      explainIssues(result.error.issues).map((issue) => ({
        code,
        message: issue.message,
        where: { file: fileName, row: yaml.rowOf(issue.path), field: issue.field },
        ...omitUndefined({ fix: issue.fix }),
      })),
    );
  return { read: result.data, written: yaml.value, sha256: hashOf(text), rowOf: yaml.rowOf };
}

/** SHA-256 of the text's UTF-8 bytes. */
function hashOf(text: string): Sha256 {
  return createHash('sha256').update(text, 'utf8').digest('hex') as Sha256;
}

function problemsAsError(problems: Problem[]): DossierError {
  const [first, ...rest] = problems;
  if (first === undefined) throw new Error('no problem to report');
  const line = (p: Problem) =>
    [
      p.where.row === undefined ? '' : `line ${p.where.row}: `,
      p.where.field ? `${p.where.field}: ` : '',
      p.message,
    ].join('');
  return new DossierError(first.code, first.message, {
    where: first.where,
    ...omitUndefined({ fix: first.fix, others: rest.length === 0 ? undefined : rest.map(line) }),
  });
}

function isNode(value: unknown): value is Node {
  return isScalar(value) || isCollection(value) || isAlias(value);
}

/** Line on which brackets or dashes go deeper than any settings file does, before the parser recurses into them. */
function tooDeep(text: string): number | undefined {
  let open = 0;
  const rows = text.split('\n');
  for (const [i, row] of rows.entries()) {
    const dashes = /^(?:\s*[-?]\s)*/.exec(row)?.[0].length ?? 0;
    if (dashes > 8 * MAX_DEPTH) return i + 1;
    for (const mark of row) {
      if (mark === '[' || mark === '{') open += 1;
      else if ((mark === ']' || mark === '}') && open > 0) open -= 1;
      // Brackets in quoted text count too: no text of a settings file opens so many.
      if (open > 4 * MAX_DEPTH) return i + 1;
    }
  }
  return undefined;
}

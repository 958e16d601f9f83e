import type { z } from 'zod';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { nearestWord, suggestZone } from './did-you-mean.js';

export interface ExplainedIssue {
  path: readonly PropertyKey[];
  /** The path as people read it: `stops[1].zone`. */
  field: string;
  message: string;
  fix?: string;
}

/** Schema issues in words for the person who wrote the file; a union's issues are those of its likeliest branch. */
export function explainIssues(
  issues: readonly z.core.$ZodIssue[],
  under: readonly PropertyKey[] = [],
): ExplainedIssue[] {
  return issues.flatMap((issue) => explainOne(issue, under));
}

function explainOne(issue: z.core.$ZodIssue, under: readonly PropertyKey[]): ExplainedIssue[] {
  const path = [...under, ...issue.path];
  const said = (message: string, fix?: string, at = path): ExplainedIssue => ({
    path: at,
    field: fieldName(at),
    message,
    ...omitUndefined({ fix }),
  });
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => said(`"${key}" is not a field here`, undefined, [...path, key]));
    case 'invalid_union': {
      const branch = likeliest(issue.errors);
      return branch === undefined ? [said(issue.message)] : explainIssues(branch, path);
    }
    case 'invalid_value': {
      const values = issue.values.map(String);
      const close = typeof issue.input === 'string' ? nearestWord(issue.input, values) : undefined;
      return [
        said(
          issue.input === undefined
            ? 'is missing'
            : `${shown(issue.input)} is not one of: ${values.join(', ')}`,
          close === undefined ? `use one of: ${values.join(', ')}` : `did you mean ${close}?`,
        ),
      ];
    }
    case 'invalid_type': {
      if (issue.input === undefined) return [said(`is missing (${issue.expected} expected)`)];
      // A schema that has words of its own for it knows better.
      if (!issue.message.startsWith('Invalid input')) return [said(issue.message)];
      const quote = issue.expected === 'string' && ['number', 'boolean'].includes(typeof issue.input);
      return [
        said(
          `${shown(issue.input)} is not a ${issue.expected}`,
          quote ? `put it in quotes: "${String(issue.input)}"` : undefined,
        ),
      ];
    }
    case 'custom': {
      const close =
        path.at(-1) === 'zone' && typeof issue.input === 'string' ? suggestZone(issue.input) : undefined;
      return [said(issue.message, close === undefined ? undefined : `did you mean ${close}?`)];
    }
    default:
      return [said(issue.message)];
  }
}

/** The branch that someone most likely meant: it fails deepest, then with the fewest issues. */
function likeliest(
  branches: readonly (readonly z.core.$ZodIssue[])[],
): readonly z.core.$ZodIssue[] | undefined {
  const cost = (branch: readonly z.core.$ZodIssue[]): number =>
    branch.reduce((sum, issue) => {
      if (issue.code === 'unrecognized_keys') return sum + 2 * issue.keys.length;
      if (issue.code === 'invalid_type' && issue.input === undefined && issue.path.length === 1)
        return sum + 3;
      return sum + 1 / (1 + issue.path.length);
    }, 0);
  return branches.filter((b) => b.length > 0).toSorted((a, b) => cost(a) - cost(b))[0];
}

function fieldName(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (name, key) =>
      typeof key === 'number' ? `${name}[${key}]` : name === '' ? String(key) : `${name}.${String(key)}`,
    '',
  );
}

function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

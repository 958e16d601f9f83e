import { DossierError } from '../../core/model/error.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { type RuleSet, type RuleSetOrigin, rule, ruleSet } from '../../core/model/rule-set.js';
import type { ParsedRuleSetFile } from '../rule-set-file.js';
import { nearestWord } from '../settings/did-you-mean.js';
import { explainIssues } from '../settings/schema-errors.js';
import { changeRule, type WrittenRule } from './change.js';

/** A rule as written, and the file it comes from. */
interface Held {
  written: WrittenRule;
  from: ParsedRuleSetFile;
}

export interface ResolvedRuleSet {
  ruleSet: RuleSet;
  origin: RuleSetOrigin;
}

/**
 * Resolves a chain of files into one rule set: the first is complete, each later one extends the one before it.
 * Throws DossierError `bad-rule-set` with file, line and field for a rule that is unknown, repeated or invalid
 * after a change.
 */
export function resolveRuleSet(chain: readonly ParsedRuleSetFile[]): ResolvedRuleSet {
  const held = new Map<string, Held>();
  const origin: RuleSetOrigin = { files: [], changed: [], off: [] };
  for (const file of chain) {
    switchOff(file, held, origin);
    changeAll(file, held, origin);
    addAll(file, held);
    const { ruleSet: name, version } = file.file;
    origin.files.push({ name: file.name, ruleSet: name, version, sha256: file.sha256 });
  }
  const last = chain.at(-1);
  if (last === undefined) throw new Error('a rule set comes from at least one file');
  if (held.size === 0) throw refused(last, ['off'], 'every rule is switched off');
  if (held.size > 300) throw refused(last, ['rules'], `${held.size} rules; at most 300 are read`);
  const tolerance = chain.findLast((one) => one.file.tolerance !== undefined)?.written.tolerance;
  const { ruleSet: name, version, title } = last.file;
  return {
    ruleSet: ruleSet.parse({
      ruleSet: name,
      version,
      title,
      ...omitUndefined({ tolerance }),
      rules: [...held.values()].map((one) => one.written),
    }),
    origin,
  };
}

function switchOff(file: ParsedRuleSetFile, held: Map<string, Held>, origin: RuleSetOrigin): void {
  for (const [id, why] of Object.entries(file.file.off)) {
    const one = find(file, held, 'off', id);
    held.delete(id);
    origin.off.push({ rule: id, title: titleOf(one), by: file.file.ruleSet, why });
  }
}

function changeAll(file: ParsedRuleSetFile, held: Map<string, Held>, origin: RuleSetOrigin): void {
  const changes = file.written.change;
  for (const id of Object.keys(file.file.change)) {
    const one = find(file, held, 'change', id);
    const change = isMap(changes) ? changes[id] : undefined;
    if (!isMap(change)) continue;
    const { written, problem } = changeRule(one.written, change);
    if (problem !== undefined) throw refused(file, ['change', id, ...problem.path], problem.message);
    const read = rule.safeParse(written, { reportInput: true });
    if (!read.success) {
      const [first] = explainIssues(read.error.issues);
      const path = first?.path ?? [];
      const at = path[0] !== undefined && path[0] in change ? path : ['thresholds', ...path.slice(-1)];
      throw refused(file, ['change', id, ...at], first?.message ?? 'the changed rule does not hold together');
    }
    held.set(id, { written, from: one.from });
    const fields = Object.keys(change).flatMap((field) =>
      field === 'thresholds' && isMap(change.thresholds) ? Object.keys(change.thresholds) : [field],
    );
    origin.changed.push({ rule: id, title: titleOf({ written }), by: file.file.ruleSet, fields });
  }
}

function addAll(file: ParsedRuleSetFile, held: Map<string, Held>): void {
  const rules = Array.isArray(file.written.rules) ? file.written.rules : [];
  rules.forEach((written: unknown, index) => {
    if (!isMap(written)) return;
    const id = String(written.id);
    const had = held.get(id);
    if (had !== undefined)
      throw refused(
        file,
        ['rules', index, 'id'],
        `rule "${id}" stands in ${had.from.name} already`,
        `To change it, say so under change: ${id}.`,
      );
    held.set(id, { written, from: file });
  });
}

function find(
  file: ParsedRuleSetFile,
  held: ReadonlyMap<string, Held>,
  field: 'change' | 'off',
  id: string,
): Held {
  const one = held.get(id);
  if (one !== undefined) return one;
  const close = nearestWord(id, [...held.keys()]);
  throw refused(
    file,
    [field, id],
    `there is no rule "${id}" in ${file.file.extends ?? 'the set'}`,
    close === undefined ? undefined : `did you mean ${close}?`,
  );
}

const isMap = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const titleOf = ({ written }: { written: WrittenRule }) => String(written.title);

function refused(
  file: ParsedRuleSetFile,
  path: readonly PropertyKey[],
  message: string,
  fix?: string,
): DossierError {
  return new DossierError('bad-rule-set', message, {
    where: { file: file.name, row: file.rowOf(path), field: path.map(String).join('.') },
    ...omitUndefined({ fix }),
  });
}

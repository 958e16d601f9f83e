import { omitUndefined } from '../../core/model/omit-undefined.js';
import { type RuleSet, type RuleSetOrigin, rule, ruleSet } from '../../core/model/rule-set.js';
import type { ParsedRuleSetFile } from '../rule-set-file.js';
import { explainIssues } from '../settings/schema-errors.js';
import { changeRule, type WrittenRule } from './change.js';
import { type PlanStep, planRules, type RuleSetLayer, refused } from './plan.js';

export interface ResolvedRuleSet {
  ruleSet: RuleSet;
  origin: RuleSetOrigin;
}

const MOST_RULES = 300;

/**
 * Resolves files into one rule set: the first is complete, each later one extends others or stands beside them.
 * @param named the sets that a delivery names, in their order; the others are what they extend
 * @throws DossierError 'bad-rule-set' with file, line and field for a rule that is unknown, repeated or invalid after a
 * change
 */
export function resolveRuleSet(
  layers: readonly RuleSetLayer[],
  named: readonly ParsedRuleSetFile[],
): ResolvedRuleSet {
  const { steps, conflicts } = planRules(layers);
  const held = new Map<string, WrittenRule>();
  const origin: RuleSetOrigin = { files: [], changed: [], off: [] };
  for (const step of steps) take(step, held, origin);
  for (const { file } of layers) {
    const { ruleSet: name, version } = file.file;
    origin.files.push({ name: file.name, ruleSet: name, version, sha256: file.sha256 });
  }
  const last = named.at(-1);
  if (last === undefined) throw new Error('a rule set comes from at least one file');
  if (held.size === 0) throw refused(last, ['off'], 'every rule is switched off');
  if (held.size > MOST_RULES)
    throw refused(last, ['rules'], `${held.size} rules; at most ${MOST_RULES} are read`);
  const titles = new Map([...held].map(([id, written]) => [id, titleOf(written)]));
  for (const { rule: id, title } of origin.off) if (!titles.has(id)) titles.set(id, title);
  const together = (part: (file: ParsedRuleSetFile['file']) => string) =>
    named.map(({ file }) => part(file)).join(' + ');
  const tolerance = layers.findLast(({ file }) => file.file.tolerance !== undefined)?.file.written.tolerance;
  return {
    ruleSet: ruleSet.parse({
      ruleSet: together((file) => file.ruleSet),
      version: together((file) => file.version),
      title: together((file) => file.title),
      ...omitUndefined({ tolerance }),
      rules: [...held.values()],
    }),
    origin: {
      ...origin,
      ...omitUndefined({
        conflicts:
          conflicts.length === 0
            ? undefined
            : conflicts.map((one) => ({
                ...one,
                ...omitUndefined({ title: one.rule === undefined ? undefined : titles.get(one.rule) }),
              })),
      }),
    },
  };
}

function take(step: PlanStep, held: Map<string, WrittenRule>, origin: RuleSetOrigin): void {
  const { file, id } = step;
  switch (step.is) {
    case 'off':
      origin.off.push({ rule: id, title: titleOf(held.get(id) ?? {}), by: file.file.ruleSet, why: step.why });
      held.delete(id);
      return;
    case 'change':
      change(file, id, held, origin);
      return;
    case 'add': {
      const rules = Array.isArray(file.written.rules) ? file.written.rules : [];
      const written: unknown = rules[step.index];
      if (isMap(written)) held.set(id, written);
      return;
    }
  }
}

function change(
  file: ParsedRuleSetFile,
  id: string,
  held: Map<string, WrittenRule>,
  origin: RuleSetOrigin,
): void {
  const changes = file.written.change;
  const wanted = isMap(changes) ? changes[id] : undefined;
  const was = held.get(id);
  if (!isMap(wanted) || was === undefined) return;
  const { written, problem } = changeRule(was, wanted);
  if (problem !== undefined) throw refused(file, ['change', id, ...problem.path], problem.message);
  const read = rule.safeParse(written, { reportInput: true });
  if (!read.success) {
    const [first] = explainIssues(read.error.issues);
    const path = first?.path ?? [];
    const at = path[0] !== undefined && path[0] in wanted ? path : ['thresholds', ...path.slice(-1)];
    throw refused(file, ['change', id, ...at], first?.message ?? 'the changed rule does not hold together');
  }
  held.set(id, written);
  const fields = Object.keys(wanted).flatMap((field) =>
    field === 'thresholds' && isMap(wanted.thresholds) ? Object.keys(wanted.thresholds) : [field],
  );
  origin.changed.push({ rule: id, title: titleOf(written), by: file.file.ruleSet, fields });
}

const isMap = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const titleOf = (written: WrittenRule) => String(written.title);

import { isDeepStrictEqual } from 'node:util';
import { DossierError } from '../../core/model/error.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { RuleConflict } from '../../core/model/rule-set.js';
import type { ParsedRuleSetFile } from '../rule-set-file.js';
import { nearestWord } from '../settings/did-you-mean.js';

/** A file that takes part in a rule set, and the files that it extends, whether directly or not. */
export interface RuleSetLayer {
  file: ParsedRuleSetFile;
  over: readonly ParsedRuleSetFile[];
}

/** What one file does to the rules before it, in the order in which it is done. */
export type PlanStep =
  | { is: 'off'; file: ParsedRuleSetFile; id: string; why: string; onlyOthers: boolean }
  | { is: 'change'; file: ParsedRuleSetFile; id: string }
  | { is: 'add'; file: ParsedRuleSetFile; id: string; index: number };

export interface RulePlan {
  steps: readonly PlanStep[];
  conflicts: readonly RuleConflict[];
}

/**
 * Plans how files make one set of rules: the extended one first, sets that are named together in the order in which they
 * are named. Of two sets that do not extend each other the later counts where they change the same field of a rule or add
 * the same rule, and a rule that one switches off stays off whatever the other changes; each such conflict is named.
 * Throws DossierError `bad-rule-set` with file, line and field for a rule that is unknown or repeated.
 */
export function planRules(layers: readonly RuleSetLayer[]): RulePlan {
  const planner = new Planner();
  for (const layer of layers) planner.add(layer);
  return { steps: planner.steps, conflicts: planner.conflicts };
}

class Planner {
  readonly steps: PlanStep[] = [];
  readonly conflicts: RuleConflict[] = [];
  /** The file that each rule comes from. */
  readonly #held = new Map<string, ParsedRuleSetFile>();
  readonly #offBy = new Map<string, ParsedRuleSetFile>();
  /** The last change of each field of each rule. */
  readonly #changed = new Map<string, Map<string, { by: ParsedRuleSetFile; value: unknown }>>();
  #tolerance: { by: ParsedRuleSetFile; value: unknown } | undefined;

  add(layer: RuleSetLayer): void {
    this.#switchOff(layer);
    this.#keepOnly(layer);
    this.#change(layer);
    this.#addRules(layer);
    this.#setTolerance(layer);
  }

  #switchOff(layer: RuleSetLayer): void {
    const { file } = layer;
    for (const [id, why] of Object.entries(file.file.off)) {
      this.#requireKnown(layer, 'off', id);
      this.#off(layer, id, why, false);
    }
  }

  /** Rules of the extended sets that `only` does not name are off. */
  #keepOnly(layer: RuleSetLayer): void {
    const { file, over } = layer;
    const { only } = file.file;
    if (only === undefined) return;
    const kept = new Set(only.rules);
    for (const id of kept) this.#requireKnown(layer, 'only', id);
    for (const [id, from] of [...this.#held])
      if (over.includes(from) && !kept.has(id)) this.#off(layer, id, only.why, true);
  }

  #off({ file, over }: RuleSetLayer, id: string, why: string, onlyOthers: boolean): void {
    if (!this.#held.has(id)) return;
    for (const { by } of this.#changed.get(id)?.values() ?? [])
      if (!over.includes(by)) this.#conflict(id, 'off', by, file, file);
    this.#held.delete(id);
    this.#offBy.set(id, file);
    this.steps.push({ is: 'off', file, id, why, onlyOthers });
  }

  #change(layer: RuleSetLayer): void {
    const { file, over } = layer;
    for (const [id, change] of Object.entries(file.file.change)) {
      this.#requireKnown(layer, 'change', id);
      const offBy = this.#offBy.get(id);
      if (!this.#held.has(id) && offBy !== undefined) {
        this.#conflict(id, 'off', offBy, file, offBy);
        continue;
      }
      const fields = this.#changed.get(id) ?? new Map();
      for (const [field, value] of fieldsOf(change)) {
        const before = fields.get(field);
        if (before !== undefined && !over.includes(before.by) && !isDeepStrictEqual(before.value, value))
          this.#conflict(id, field, before.by, file, file);
        fields.set(field, { by: file, value });
      }
      this.#changed.set(id, fields);
      this.steps.push({ is: 'change', file, id });
    }
  }

  #addRules({ file, over }: RuleSetLayer): void {
    file.file.rules.forEach((rule, index) => {
      const had = this.#held.get(rule.id);
      if (had !== undefined && over.includes(had))
        throw refused(
          file,
          ['rules', index, 'id'],
          `rule "${rule.id}" stands in ${had.name} already`,
          `To change it, say so under change: ${rule.id}.`,
        );
      if (had !== undefined) {
        if (
          isDeepStrictEqual(
            had.file.rules.find(({ id }) => id === rule.id),
            rule,
          )
        )
          return;
        this.#conflict(rule.id, 'rule', had, file, file);
      }
      this.#held.set(rule.id, file);
      this.#offBy.delete(rule.id);
      this.#changed.delete(rule.id);
      this.steps.push({ is: 'add', file, id: rule.id, index });
    });
  }

  #setTolerance({ file, over }: RuleSetLayer): void {
    const value = file.file.tolerance;
    if (value === undefined) return;
    const before = this.#tolerance;
    if (before !== undefined && !over.includes(before.by) && !isDeepStrictEqual(before.value, value))
      this.conflicts.push({ field: 'tolerance', ...between(before.by, file, file) });
    this.#tolerance = { by: file, value };
  }

  /** A rule that an extended set lacks is a mistake; one that another set switched off is not. */
  #requireKnown({ file, over }: RuleSetLayer, field: 'change' | 'off' | 'only', id: string): void {
    const offBy = this.#offBy.get(id);
    if (this.#held.has(id) || (offBy !== undefined && !over.includes(offBy))) return;
    const close = nearestWord(id, [...this.#held.keys()]);
    throw refused(
      file,
      field === 'only' ? ['only', 'rules'] : [field, id],
      `there is no rule "${id}" in ${file.file.extends ?? 'the set'}`,
      close === undefined ? undefined : `did you mean ${close}?`,
    );
  }

  #conflict(
    rule: string,
    field: string,
    first: ParsedRuleSetFile,
    second: ParsedRuleSetFile,
    counts: ParsedRuleSetFile,
  ): void {
    const conflict = { rule, field, ...between(first, second, counts) };
    if (!this.conflicts.some((one) => isDeepStrictEqual(one, conflict))) this.conflicts.push(conflict);
  }
}

const between = (first: ParsedRuleSetFile, second: ParsedRuleSetFile, counts: ParsedRuleSetFile) => ({
  sets: [first.file.ruleSet, second.file.ruleSet],
  counts: counts.file.ruleSet,
});

/** The fields of a change, thresholds each on its own. */
function fieldsOf({
  thresholds = {},
  ...fields
}: ParsedRuleSetFile['file']['change'][string]): [string, unknown][] {
  return [
    ...Object.entries(fields).filter(([, value]) => value !== undefined),
    ...Object.entries(thresholds),
  ];
}

/** What is wrong with a rule file, with its line and field. */
export function refused(
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

import { DossierError } from '../../core/model/error.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import {
  RULE_TEXTS,
  type RuleSetWords,
  type RuleText,
  type RuleWordsFile,
  ruleWordsFile,
} from '../../core/model/rule-words.js';
import type { ParsedRuleSetFile } from '../rule-set-file.js';
import { nearestWord } from '../settings/did-you-mean.js';
import { readYamlAs } from '../yaml.js';
import { planRules, type RuleSetLayer } from './plan.js';

/**
 * Parses the words of one rule file in another language.
 * @param of the rule file Throws DossierError `bad-rule-set` with file and line for invalid words, and for words of
 * a rule that `of` lacks, or of a text that it does not change.
 */
export function readRuleWords(text: string, name: string, of: ParsedRuleSetFile): RuleWordsFile {
  const { read, rowOf } = readYamlAs(ruleWordsFile, text, name, 'bad-rule-set', 'rule-words');
  const refuse = (path: readonly string[], message: string, fix?: string) =>
    new DossierError('bad-rule-set', message, {
      where: { file: name, row: rowOf(path), field: path.join('.') },
      ...omitUndefined({ fix }),
    });
  const { rules, change, off, only } = of.file;
  const own = new Set(rules.map(({ id }) => id));
  for (const [field, known] of [
    ['rules', [...own, ...Object.keys(change)]],
    ['off', Object.keys(off)],
  ] as const)
    for (const id of Object.keys(read[field]))
      if (!known.includes(id)) {
        const close = nearestWord(id, known);
        throw refuse(
          [field, id],
          `${of.name} says nothing of "${id}" under ${field === 'off' ? 'off' : 'rules or change'}`,
          close === undefined ? 'Leave the words out.' : `did you mean ${close}?`,
        );
      }
  if (read.only !== undefined && only === undefined)
    throw refuse(['only'], `${of.name} has no only`, 'Leave the words out.');
  for (const [id, words] of Object.entries(read.rules))
    for (const part of RULE_TEXTS)
      if (words[part] !== undefined && !own.has(id) && change[id]?.[part] === undefined)
        throw refuse(
          ['rules', id, part],
          `${of.name} does not change the ${part} of "${id}"`,
          'Leave the line out: the words of the set that is extended hold.',
        );
  return read;
}

/**
 * The words of the files of a rule set, in the order in which they make it. Where a file changes a text without words for
 * it, the words of the file before no longer apply, and the text stays as written.
 */
export function resolveRuleWords(
  layers: readonly (RuleSetLayer & { words: RuleWordsFile | undefined })[],
  named: readonly ParsedRuleSetFile[],
): RuleSetWords {
  const rules = new Map<string, RuleText>();
  const off: { title?: string; why?: string }[] = [];
  const changed: { title?: string }[] = [];
  const wordsOf = new Map(layers.map(({ file, words }) => [file, words]));
  const titleOf = (id: string) => omitUndefined({ title: rules.get(id)?.title });
  const { steps } = planRules(layers);
  for (const { is, file, id, ...step } of steps) {
    const words = wordsOf.get(file);
    switch (is) {
      case 'off': {
        const said = 'onlyOthers' in step && step.onlyOthers ? words?.only : words?.off[id];
        off.push({ ...titleOf(id), ...omitUndefined({ why: said }) });
        rules.delete(id);
        break;
      }
      case 'change': {
        const change = file.file.change[id];
        changed.push(titleOf(id));
        const kept = Object.entries(rules.get(id) ?? {}).filter(
          ([part]) => !RULE_TEXTS.some((one) => one === part && change?.[one] !== undefined),
        );
        rules.set(id, { ...Object.fromEntries(kept), ...words?.rules[id] });
        break;
      }
      case 'add':
        rules.set(id, words?.rules[id] ?? {});
        break;
    }
  }
  const titles = named.map((file) => wordsOf.get(file)?.title ?? file.file.title);
  const isSaid = named.some((file) => wordsOf.get(file)?.title !== undefined);
  return { ...omitUndefined({ title: isSaid ? titles.join(' + ') : undefined }), rules, off, changed };
}

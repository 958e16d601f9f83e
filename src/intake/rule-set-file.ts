import type { Sha256 } from '../model/evidence.js';
import { type RuleSet, ruleSet } from '../model/rule-set.js';
import { readYamlAs } from './yaml.js';

/**
 * Reads a rule set.
 * Throws DossierError `bad-rule-set`: place of the first problem, all of them in the message.
 */
export function parseRuleSetFile(text: string, fileName: string): { ruleSet: RuleSet; sha256: Sha256 } {
  const { read, sha256 } = readYamlAs(ruleSet, text, fileName, 'bad-rule-set');
  return { ruleSet: read, sha256 };
}

import { readFile } from 'node:fs/promises';
import { isAbsolute, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseRuleSetFile } from '../intake/rule-set-file.js';
import { DossierError } from '../model/error.js';
import type { Sha256 } from '../model/evidence.js';
import type { RuleSet } from '../model/rule-set.js';

const SHIPPED = fileURLToPath(new URL('../../templates/rule-sets/', import.meta.url));

export interface LoadedRuleSet {
  ruleSet: RuleSet;
  sha256: Sha256;
  /** The text as it lies on disk: what the hash is of. */
  text: string;
}

/**
 * The rule set that a delivery names: a shipped one by its name, else a path relative to the delivery.
 * Throws DossierError `bad-rule-set` when it is missing or wrong.
 */
export async function loadRuleSet(named: string, folder: string): Promise<LoadedRuleSet> {
  const isName = /^[a-z0-9-]+$/.test(named);
  const file = isName ? join(SHIPPED, `${named}.yaml`) : isAbsolute(named) ? named : join(folder, named);
  const text = await readFile(file, 'utf8').catch((cause: unknown) => {
    throw new DossierError('bad-rule-set', `there is no rule set "${named}"`, {
      where: { file: 'delivery.yaml', field: 'rules' },
      fix: 'Use the name of a shipped set (produce), or a path from the delivery folder to a YAML file.',
      cause,
    });
  });
  return { ...parseRuleSetFile(text, isName ? `${named}.yaml` : named), text };
}

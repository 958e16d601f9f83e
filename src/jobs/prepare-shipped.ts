import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { z } from 'zod';
import { SHIPPED } from '../compose/shipped.js';
import { claimDeadlines } from '../core/model/claim-deadlines.js';
import { ruleSetFile } from '../core/model/rule-set-file.js';
import { ruleWordsFile } from '../core/model/rule-words.js';
import { readTemplateYaml } from '../core/words/template-yaml.js';
import { readYamlAs } from '../intake/yaml.js';
import { prepare } from '../platform/node/prepared.js';
import { loadRuleSet, RESOLVED } from './rule-set.js';

/**
 * Parses and checks the YAML files of the shipped templates, and stores the results beside the built program, so
 * that no command has to do it again. Throws DossierError for an invalid file.
 */
export async function prepareShipped(): Promise<void> {
  const named = (folder: string, pattern: RegExp) =>
    readdirSync(join(SHIPPED, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => pattern.test(name))
      .map((name) => join(SHIPPED, folder, name));
  const sets = named('rule-sets', /^[^/\\]+\.yaml$/);
  prepareAs('claim-deadlines', claimDeadlines, named('', /^claim-deadlines\.yaml$/));
  prepareAs('rule-set-file', ruleSetFile, sets);
  prepareAs('rule-words', ruleWordsFile, named('rule-sets', /[/\\].*\.yaml$/));
  for (const file of sets) {
    const { ruleSet, origin, text } = await loadRuleSet(basename(file, '.yaml'), SHIPPED);
    prepare(RESOLVED, text, { ruleSet, origin });
  }
  for (const file of [...named('words', /\.yaml$/), ...named('letters', /\.yaml$/)]) {
    const text = readFileSync(file, 'utf8');
    const { read } = readTemplateYaml(z.unknown(), { text, file }, { what: 'not YAML', fix: '' });
    prepare('yaml', text, read);
  }
}

function prepareAs(form: string, schema: z.ZodType, files: readonly string[]): void {
  for (const file of files) {
    const text = readFileSync(file, 'utf8');
    const { read, written } = readYamlAs(schema, text, file, 'bad-template');
    prepare(form, text, { read, written });
  }
}

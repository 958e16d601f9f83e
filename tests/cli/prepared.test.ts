import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { claimDeadlines } from '../../src/core/model/claim-deadlines.js';
import { ruleSetFile } from '../../src/core/model/rule-set-file.js';
import { ruleWordsFile } from '../../src/core/model/rule-words.js';
import { readTemplateYaml } from '../../src/core/words/template-yaml.js';
import { readYamlAs } from '../../src/intake/yaml.js';
import { loadRuleSet } from '../../src/jobs/rule-set.js';

const DIST = join(import.meta.dirname, '../../dist');
/** As a command that was built finds them; the sources beside this test find none. */
const { prepared } = await import(pathToFileURL(join(DIST, 'platform/node/prepared.js')).href);

const TEMPLATES = 'templates';
const shipped = readdirSync(TEMPLATES, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => [name, readFileSync(join(TEMPLATES, name), 'utf8')] as const);

/** The form that a file is kept in, and what it comes to when it is read anew. */
function formOf(name: string, text: string): [form: string, made: unknown] | undefined {
  const as = (form: string, schema: z.ZodType): [string, unknown] => {
    const { read, written } = readYamlAs(schema, text, name, 'bad-template');
    return [form, { read, written }];
  };
  if (/^claim-[a-z]+\.yaml$/.test(name)) return as('claim-deadlines', claimDeadlines);
  if (/^rule-sets[/\\][^/\\]+$/.test(name)) return as('rule-set-file', ruleSetFile);
  if (/^rule-sets[/\\]/.test(name)) return as('rule-words', ruleWordsFile);
  if (/^(?:words|letters)[/\\]/.test(name))
    return ['yaml', readTemplateYaml(z.unknown(), { text, file: name }, { what: '', fix: '' }).read];
  return undefined;
}

describe('what the build keeps of the shipped texts', () => {
  it('is known of all but the copies, which few commands read', () => {
    expect(shipped.length).toBeGreaterThan(15);
    const without = shipped.filter(([name, text]) => formOf(name, text) === undefined).map(([name]) => name);
    expect(without).toEqual(['copies.yaml']);
  });

  it.each(
    shipped.flatMap(([name, text]) => (formOf(name, text) === undefined ? [] : [[name, text] as const])),
  )('of %s is what it comes to when it is read anew', (name, text) => {
    const [form, made] = formOf(name, text) ?? [];
    expect(prepared(form, text)).toEqual(made);
    expect(prepared(form, `${text} `)).toBeUndefined();
  });

  it.each(
    shipped.flatMap(([name]) => (/^rule-sets[/\\][^/\\]+$/.test(name) ? [basename(name, '.yaml')] : [])),
  )('of the set %s is what its files come to together', async (name) => {
    const { text, ruleSet, origin } = await loadRuleSet(name, '.');
    expect(prepared('rule-set', text)).toEqual({ ruleSet, origin });
  });
});

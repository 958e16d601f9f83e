import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Handlebars from 'handlebars';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { TEMPLATED_LETTER_KINDS } from '../../../src/compose/letters/kinds.js';

const folderOf = (language: string) => join(import.meta.dirname, '../../../templates/letters', language);
const filesOf = (language: string) => readdirSync(folderOf(language)).sort();
const read = (language: string, file: string) => readFileSync(join(folderOf(language), file), 'utf8');

/** Facts and places to fill in of a template, in the order in which they are printed. */
function used(template: string): string[] {
  const found: string[] = [];
  const visitor = new Handlebars.Visitor();
  visitor.PathExpression = (path) => {
    if (!/^(if|each|unless|counted|blank|this)$/.test(path.original)) found.push(path.original);
  };
  visitor.MustacheStatement = (one) => {
    const [first] = one.params;
    if (first?.type === 'StringLiteral' && 'original' in one.path && one.path.original === 'blank')
      found.push(`blank ${String((first as hbs.AST.StringLiteral).value)}`);
    Handlebars.Visitor.prototype.MustacheStatement.call(visitor, one);
  };
  visitor.accept(Handlebars.parse(template));
  return found.sort();
}

const templates = filesOf('en').filter((file) => file.endsWith('.md'));

describe('letters in Spanish have the same as in English', () => {
  it('in files, with one for each kind of letter', () => {
    expect(filesOf('es')).toEqual(filesOf('en'));
    expect(templates).toEqual(expect.arrayContaining(TEMPLATED_LETTER_KINDS.map((kind) => `${kind}.md`)));
  });

  it('in the names of labels, each with words', () => {
    const keys = (language: string) =>
      Object.entries(parse(read(language, 'labels.yaml')) as Record<string, Record<string, string>>).flatMap(
        ([group, names]) =>
          Object.entries(names).map(([name, words]) => [`${group}.${name}`, words] as const),
      );
    expect(keys('es').map(([key]) => key)).toEqual(keys('en').map(([key]) => key));
    for (const [key, words] of keys('es')) expect(words, key).toMatch(/\S/);
    const places = (language: string) =>
      keys(language).flatMap(([key, words]) =>
        [...words.matchAll(/(?<!\p{L})(?:DELIVERY|SIZE|N)(?!\p{L})/gu)].map(([place]) => `${key}: ${place}`),
      );
    expect(places('es').sort()).toEqual(places('en').sort());
  });

  it.each(templates)('in the facts and places to fill in of %s', (file) => {
    expect(used(read('en', file)).length).toBeGreaterThan(0);
    expect(used(read('es', file))).toEqual(used(read('en', file)));
  });
});

import fc from 'fast-check';
import Handlebars from 'handlebars';
import { describe, expect, it } from 'vitest';
import { MarkdownText, ShownFact } from '../../../src/core/words/facts.js';
import { helpersFor } from '../../../src/core/words/helpers.js';
import { readTemplate } from '../../../src/core/words/template.js';
import { cases } from '../../properties.js';

const SHIPPED = import.meta.glob<string>('../../../templates/{words,letters}/**/[a-z]*.md', {
  query: '?raw',
  import: 'default',
  eager: true,
});

const labels = Object.assign((key: string) => `<${key} N>`, {
  find: (key: string) => (key.endsWith('a') ? `words of ${key}` : undefined),
});
const helpers = helpersFor({ labels, blank: (id) => `fill in ${id}` });
type Facts = Readonly<Record<string, unknown>>;
type Fill = (facts: Facts, exhibits?: readonly number[]) => string;

function read(template: string): Fill {
  const fill = readTemplate(template, helpers);
  return (facts, exhibits = []) => fill(facts, { exhibits });
}

/** Handlebars itself, with the same helpers: it makes code of the template and runs that. */
function compiled(template: string): Fill {
  const own = Handlebars.create();
  for (const [name, helper] of helpers)
    own.registerHelper(name, (...values: unknown[]) => {
      const options: unknown = values.pop();
      return helper(values, (options as Handlebars.HelperOptions).data);
    });
  const fill = own.compile(template, { noEscape: true, strict: true });
  return (facts, exhibits = []) => fill(facts, { data: { exhibits } });
}

/** Names of facts in a template; those behind #each are lists. */
function factsIn(template: string): { names: string[]; lists: string[] } {
  const inside = [...template.matchAll(/\{\{\{?[#^/&]?([^{}]*)\}\}/g)].map(([, words = '']) => words);
  const names = inside.flatMap((words) => words.replace(/"[^"]*"/g, '').match(/\w+/g) ?? []);
  const lists = [...template.matchAll(/\{\{#each (\w+)/g)].map(([, name = '']) => name);
  return { names: [...new Set(names)], lists };
}

const text = fc.string({ maxLength: 5 });
const item = text.map((words) => new MarkdownText(words));
const shown = fc
  .tuple(text, fc.boolean(), fc.constantFrom('up' as const, 'down' as const, 'none' as const, undefined))
  .map(([words, some, way]) => new ShownFact(words, some, way && { by: words, way }));
const value = fc.oneof(shown, item, fc.integer({ min: 0, max: 3 }), fc.boolean(), fc.constant(undefined));
const list = fc.option(fc.array(item, { maxLength: 3 }), { nil: undefined });

const factsFor = (template: string) => {
  const { names, lists } = factsIn(template);
  return fc.record(Object.fromEntries(names.map((name) => [name, lists.includes(name) ? list : value])));
};

describe('a template says what Handlebars says', () => {
  it('finds the shipped ones', () => {
    expect(Object.keys(SHIPPED).length).toBeGreaterThan(250);
  });

  it.each(Object.entries(SHIPPED))('%s', (_, template) => {
    const [ours, theirs] = [read(template), compiled(template)];
    fc.assert(
      fc.property(factsFor(template), fc.array(fc.nat(99), { maxLength: 6 }), (facts, exhibits) => {
        expect(ours(facts, exhibits)).toBe(theirs(facts, exhibits));
      }),
      { numRuns: cases(20) },
    );
  });

  it.each([
    'plain words\nof two lines\n',
    'a{{! said to writers }}b {{!-- {{x}} --}}c',
    '{{#if x}}\nalone on its line\n{{else}}\nother\n{{/if}}\n',
    'a {{~x~}} b\n{{~#if y~}}  c  {{~/if}}',
    '{{#if x}}1{{else if y}}2{{else}}3{{/if}}',
    '{{#unless x}}1{{else}}2{{/unless}}',
    '{{#each xs}}- {{this}} of {{../x}}{{#if ../y}}, {{../y}}{{/if}}\n{{else}}none{{/each}}',
    '{{#each xs}}{{#each ../ys}}{{this}}{{../../x}};{{/each}}{{/each}}',
    '{{{x}}} {{&y}} \\{{x}} \\\\{{x}}',
    '{{plural x "one" "many"}} {{counted y "box" "boxes"}}{{exhibits}}',
    '{{#if (some x)}}{{moved x "rose" "fell" "stayed"}}{{/if}}{{#if (several y)}}s{{/if}}',
    '{{word \'quoted\'}} {{words "a, b"}} {{blank "date"}} {{word 3}} {{word true}}',
  ])('%j', (template) => {
    const [ours, theirs] = [read(template), compiled(template)];
    const facts = fc.record({ x: value, y: value, xs: list, ys: list });
    fc.assert(
      fc.property(facts, (all) => {
        expect(ours(all, [1, 2])).toBe(theirs(all, [1, 2]));
      }),
    );
  });
});

describe('a template is refused, with its row,', () => {
  it.each([
    ['for a fact that is not there', 'a\n{{missing}}', 'there is no fact "missing" here', 2],
    [
      'for one that is only outside of the list',
      '{{#each xs}}{{x}}{{/each}}',
      'there is no fact "x" here',
      1,
    ],
    ['for what every object has', '{{toString}}', 'there is no fact "toString" here', 1],
    ['for part of a fact', '{{x.text}}', 'there is no fact "x.text": facts have no parts', 1],
    ['for the engine’s own data', '{{#each xs}}{{@index}}{{/each}}', '"@index": facts have no parts', 1],
    ['for a helper that is not there', 'a\n\n{{nothing 1}}', 'there is no helper "nothing"', 3],
    [
      'for another block',
      '{{#with x}}{{/with}}',
      'there is no block "#with", only #if, #unless and #each',
      1,
    ],
    ['for a block on a fact', '{{^x}}a{{/x}}', 'there is no block "#x"', 1],
    ['for a condition of two', '{{#if x x}}{{/if}}', '#if is followed by one fact', 1],
    ['for a list that is none', '{{#each x}}{{/each}}', '#each is followed by a list', 1],
    ['for names of arguments', '{{word a=x}}', 'helpers take no arguments with names', 1],
    ['for another template', 'a\n{{> x}}', 'a template cannot take in another one', 2],
    ['for words where a fact is due', '{{"x"}}', 'a fact or a helper comes first', 1],
    [
      'for nothing where a fact is due',
      '{{word null}}',
      'a fact, or words in quotation marks, stand here',
      1,
    ],
    ['for a block that does not end', 'a\n{{#if x}}', 'Parse error on line 2', 2],
    ['for a block that ends as another', 'a\n{{#if x}}{{/unless}}', "if doesn't match unless", 2],
  ])('%s', (_, template, message, row) => {
    const facts = { x: new ShownFact('words'), xs: [new MarkdownText('one')] };
    expect(() => read(template)(facts)).toThrow(
      expect.objectContaining({ message: expect.stringContaining(message), row }),
    );
  });
});

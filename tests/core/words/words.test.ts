import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { catalogue, findingIds } from '../../../src/core/assess/findings/catalogue.js';
import * as evidence from '../../../src/core/model/evidence.js';
import * as rules from '../../../src/core/model/rule-set.js';
import { timeBasis, type Zone } from '../../../src/core/model/time.js';
import { type Block, wordsOf } from '../../../src/core/words/blocks.js';
import { escapeMarkdown } from '../../../src/core/words/escape.js';
import type { FactValue } from '../../../src/core/words/facts.js';
import { formatFor } from '../../../src/core/words/format.js';
import { readLabels } from '../../../src/core/words/labels.js';
import { readMarkdown } from '../../../src/core/words/tree.js';
import { type Words, wordsFrom } from '../../../src/core/words/words.js';
import LABELS from '../../../templates/words/en/labels.yaml?raw';

const SHIPPED = import.meta.glob<string>('../../../templates/words/en/**/*.md', {
  query: '?raw',
  import: 'default',
  eager: true,
});
const templates = Object.fromEntries(
  Object.entries(SHIPPED).map(([path, text]) => [path.replace(/^.*\/words\/en\/|\.md$/g, ''), text]),
);
const names = { line: (id: string) => `line ${id}`, stop: (id: string) => `stop ${id}` };
const labels = readLabels({ text: LABELS, file: 'labels.yaml' });
const shipped = from(templates);

function from(texts: Record<string, string>): Words {
  return wordsFrom({
    templates: new Map(Object.entries(texts)),
    labels,
    folder: 'words',
    names,
    format: formatFor({ temperature: '°F', language: 'en' }, { zoneUnknown: '', notKnown: '' }),
  });
}
const textOf = (blocks: Block[]): string =>
  blocks.map((block) => (block.is === 'paragraph' ? wordsOf(block.of) : `[${block.is}]`)).join('|');

const SAMPLE: Record<string, FactValue> = {
  text: 'words',
  count: 3,
  flag: true,
  amount: { is: 'amount', value: 4, unit: 'cartons', of: 100 },
  temperature: { is: 'temperature', celsius: 2 },
  difference: { is: 'difference', kelvin: 1 },
  duration: { is: 'duration', seconds: 3600 },
  time: { is: 'time', at: 0, zone: 'America/Phoenix' as Zone },
  'degree-hours': { is: 'degree-hours', kelvinHours: 2 },
  share: { is: 'share', of: 0.5 },
  published: {
    is: 'published',
    of: 'temperature',
    by: [
      {
        low: 0,
        high: 2,
        source: 'A handbook',
        printed: '0 to 2 °C',
        passage: 'handbook 1',
        secondary: false,
      },
    ],
  },
  length: { is: 'length', metres: 0.47 },
  weight: { is: 'weight', kilograms: 5000 },
  acceleration: { is: 'acceleration', value: 5.2, unit: 'g' },
  line: { is: 'line', line: 'romaine' },
  stop: { is: 'stop', stop: 'load-1' },
};

describe('the sentences of the findings', () => {
  it('stand for every finding of the catalogue, and for no other', () => {
    const written = Object.keys(templates).flatMap((name) => /^findings\/(.*)$/.exec(name)?.[1] ?? []);
    expect(written.sort()).toEqual([...findingIds].sort());
  });

  it.each(findingIds)('%s can be said with all its facts, and with only those it must have', (id) => {
    for (const optional of [true, false]) {
      const facts = Object.fromEntries(
        Object.entries(catalogue[id].facts).map(([name, kind]): [string, FactValue] => [
          name,
          String(kind).endsWith('?') && !optional ? undefined : SAMPLE[String(kind).replace('?', '')],
        ]),
      );
      const said = shipped.blocks(`findings/${id}`, facts, [4, 9]);
      expect(said).toHaveLength(1);
      const sentence = textOf(said);
      expect(sentence).toMatch(/^[A-Z\dl].*\.$/);
      expect(sentence).not.toMatch(/undefined|\[object|NaN|\{\{| {2}|\\/);
    }
  });
});

describe('the labels', () => {
  it.each([
    ['kind', [...evidence.readingKind.options, 'photo', 'unit-log', 'readings', 'document']],
    ['subject', evidence.subjectName.options],
    ['event', evidence.eventName.options],
    ['flag', evidence.flagName.options],
    ['channel', evidence.channel.options],
    ['position', evidence.position.options],
    ['reading-from', evidence.readingFrom.options],
    ['stage', rules.stage.options],
    ['element', rules.element.options],
    ['basis', timeBasis.options],
    ['seal-state', evidence.seal.shape.state.options],
    ['device', evidence.bracing.shape.device.options],
    ['contact-with', evidence.contact.shape.with.options],
    ['contact-how', evidence.contact.shape.how.options],
    ['set-point-source', [...evidence.setPointSource.options, 'log']],
  ])('have words for every %s', (group, keys) => {
    expect(keys.filter((key) => labels.find(`${group}.${key}`) === undefined)).toEqual([]);
  });

  it('that lack something name it', () => {
    expect(() => labels('no.such')).toThrow(/no\.such/);
    expect(() => readLabels({ text: 'time: 3', file: 'labels.yaml' })).toThrow(/labels are not groups/);
  });
});

describe('what a person wrote', () => {
  const said = (value: string) => textOf(from({ t: 'Said: {{v}}.' }).blocks('t', { v: value }));

  it.each([
    '*bold* and _slanted_',
    '{{tool}} {{{tool}}} {{#each this}}x{{/each}}',
    '[1](exhibit:1) ![x](y) <b>x</b> <https://x.example>',
    '`code` ~~~ # head > quote | a | b',
    '1. list',
    '- list',
    '&amp; &#35; \\*',
    '#panic("x") $x$ = y @ref <label>',
  ])('comes out as the literal text it is: %s', (value) => {
    expect(said(value)).toBe(`Said: ${value}.`);
  });

  it('can’t start a new paragraph', () => {
    expect(said('one\n\n# two\r\n    three')).toBe('Said: one # two three.');
  });

  it('comes out literally whatever it is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary-ascii' }), (value) => {
        const clean = value.replace(/\p{Cc}/gu, '');
        const blocks = readMarkdown(`x ${escapeMarkdown(clean)} x`);
        expect(textOf(blocks).replace(/ +/g, ' ')).toBe(`x ${clean.trim()} x`.replace(/ +/g, ' '));
      }),
    );
  });
});

describe('templates', () => {
  it('link exhibits, and say how many more there are', () => {
    const [block] = from({ t: 'It is so{{exhibits}}.' }).blocks('t', {}, [1, 2, 3, 4, 5, 6]);
    expect(block).toMatchObject({ is: 'paragraph' });
    expect(textOf(block === undefined ? [] : [block])).toBe('It is so (1, 2, 3, 4, 2 more).');
    expect(JSON.stringify(block)).toContain('{"is":"exhibit","number":1}');
  });

  it('look values of closed lists up, and leave others as they are', () => {
    const words = from({ t: '{{word a}}, {{words b}}, {{word c}}' });
    expect(textOf(words.blocks('t', { a: 'return-air', b: 'bill, log', c: '*x*' }))).toBe(
      'return air, bill, unit log, *x*',
    );
  });

  it.each([
    ['a fact that is not there', 'x {{missing}}'],
    ['a helper that is not there', 'x {{lookup this "constructor"}} {{nohelper 1}}'],
    ['a part that is not closed', 'x {{#if a}}'],
    ['what lies behind an object', 'x {{constructor.constructor}}'],
  ])('with %s are refused, naming the file', (_, template) => {
    expect(() => from({ 'findings/t': template }).blocks('findings/t', { a: 1 })).toThrow(
      expect.objectContaining({ code: 'bad-template', where: { row: 1, file: 'words/findings/t.md' } }),
    );
  });

  it('may use headings, lists and code; what else Markdown has becomes its text', () => {
    expect(readMarkdown('## H\n\n- a\n- b\n\n```\ncode\n```\n\n> q\n\n<div>raw</div>')).toEqual([
      { is: 'heading', level: 2, text: 'H' },
      {
        is: 'list',
        ordered: false,
        items: [
          [{ is: 'paragraph', of: [{ is: 'text', text: 'a' }] }],
          [{ is: 'paragraph', of: [{ is: 'text', text: 'b' }] }],
        ],
      },
      { is: 'code', text: 'code' },
      { is: 'quote', of: [{ is: 'paragraph', of: [{ is: 'text', text: 'q' }] }] },
      { is: 'paragraph', of: [{ is: 'text', text: '<div>raw</div>' }] },
    ]);
  });
});

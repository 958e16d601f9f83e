import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Handlebars from 'handlebars';
import { beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { composeDossier, prepareDossier } from '../../src/compose/compose.js';
import type { ComposeInput } from '../../src/compose/input.js';
import { loadTemplates } from '../../src/compose/load-words.js';
import { catalogue, findingIds } from '../../src/core/assess/findings/catalogue.js';
import type { Zone } from '../../src/core/model/time.js';
import { wordsOf } from '../../src/core/words/blocks.js';
import type { FactValue } from '../../src/core/words/facts.js';
import { formatFor } from '../../src/core/words/format.js';
import { readLabels } from '../../src/core/words/labels.js';
import { type Words, wordsFrom } from '../../src/core/words/words.js';
import { codeOf, ENGLISH, englishIn, ownWords } from './own-words.js';
import { textOf } from './pages.js';
import { sampleInput } from './sample.js';
import { withClaim } from './sample-claim.js';

const folderOf = (language: string) => join(import.meta.dirname, '../../templates/words', language);
const filesOf = (language: string) =>
  readdirSync(folderOf(language), { recursive: true })
    .map(String)
    .filter((name) => /\.\w+$/.test(name))
    .sort();
const read = (language: string, file: string) => readFileSync(join(folderOf(language), file), 'utf8');
const templates = filesOf('en').filter((file) => file.endsWith('.md'));

/** Helpers that only choose words by number or direction: a language may need them oftener or less. */
const CHOOSES_WORDS = ['counted', 'plural'];

/** Facts that a template prints or asks for, and the helpers that it puts them through, without its words. */
function used(template: string): { facts: string[]; helpers: string[] } {
  const facts = new Set<string>();
  const helpers = new Set<string>();
  const visitor = new Handlebars.Visitor();
  visitor.PathExpression = (path) => {
    (/^(if|else|unless|exhibits|words?|counted|plural|moved|some|several)$/.test(path.original)
      ? helpers
      : facts
    ).add(path.original);
  };
  visitor.accept(Handlebars.parse(template));
  for (const name of CHOOSES_WORDS) helpers.delete(name);
  return { facts: [...facts].sort(), helpers: [...helpers].sort() };
}
describe('Spanish has the same as English', () => {
  it('in files', () => {
    expect(filesOf('es')).toEqual(filesOf('en'));
  });

  it.each(['answer.yaml', 'labels.yaml', 'checklist.yaml'])('in the names of %s, each with words', (file) => {
    const keys = (language: string) =>
      Object.entries(parse(read(language, file)) as Record<string, Record<string, unknown>>).flatMap(
        ([group, names]) =>
          Object.entries(names).map(([name, words]) => [`${group}.${name}`, words] as const),
      );
    expect(keys('es').map(([key]) => key)).toEqual(keys('en').map(([key]) => key));
    for (const [key, words] of keys('es')) expect(words, key).toMatch(/\S/);
  });

  it('in the places of labels that code fills', () => {
    const filled = (language: string) =>
      Object.entries(parse(read(language, 'labels.yaml')) as Record<string, Record<string, string>>).flatMap(
        ([group, names]) =>
          Object.entries(names).flatMap(([name, words]) =>
            [...words.matchAll(/(?<!\p{L})(?:[A-Z]{4,}|ALL|N)(?!\p{L})/gu)].map(
              ([place]) => `${group}.${name}: ${place}`,
            ),
          ),
      );
    expect(filled('en').length).toBeGreaterThan(5);
    expect(filled('es').sort()).toEqual(filled('en').sort());
  });

  it.each(templates)('in the facts, helpers and code of %s', (file) => {
    expect(used(read('es', file))).toEqual(used(read('en', file)));
    expect(codeOf(read('es', file))).toEqual(codeOf(read('en', file)));
  });
});

const SAMPLE: Record<string, FactValue> = {
  text: 'palabras',
  count: 3,
  flag: true,
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
      { low: 0, high: 2, source: 'Un manual', printed: '0 to 2 °C', passage: 'handbook 1', secondary: false },
    ],
  },
  length: { is: 'length', metres: 0.47 },
  weight: { is: 'weight', kilograms: 5000 },
  acceleration: { is: 'acceleration', value: 5.2, unit: 'g' },
  line: { is: 'line', line: 'romaine' },
  stop: { is: 'stop', stop: 'load-1' },
  amount: { is: 'amount', value: 8, unit: 'pallets', of: 18 },
};

describe('the Spanish sentences of the findings', () => {
  let words: Words;
  beforeAll(async () => {
    const loaded = await loadTemplates(folderOf('es'));
    words = wordsFrom({
      templates: loaded.templates,
      labels: readLabels(loaded.labels),
      folder: 'words',
      names: { line: (id) => `Línea ${id}`, stop: (id) => `parada ${id}` },
      format: formatFor({ temperature: '°F', language: 'es' }, { zoneUnknown: '', notKnown: '' }),
    });
  });
  const said = (id: keyof typeof catalogue, change: (name: string, kind: string) => FactValue) =>
    wordsOf(
      words.line(
        `findings/${id}`,
        Object.fromEntries(
          Object.entries(catalogue[id].facts).map(([name, kind]) => [name, change(name, String(kind))]),
        ),
        [4, 9],
      ),
    );

  it.each(findingIds)('%s can be said with all its facts, and with only those it must have', (id) => {
    for (const optional of [true, false]) {
      const sentence = said(id, (_, kind) =>
        kind.endsWith('?') && !optional ? undefined : SAMPLE[kind.replace('?', '')],
      );
      expect(sentence).toMatch(/^[\p{Lu}\d].*\.$/u);
      expect(sentence).not.toMatch(/undefined|\[object|NaN|\{\{| {2}|\\/);
    }
  });

  it.each(findingIds)('%s never contracts an article of a listed word wrongly', (id) => {
    for (const word of ['bill', 'shipper', 'log', 'half-cooling-time', 'return-air', 'air-return', 'above'])
      expect(
        said(id, (_, kind) => (kind.startsWith('text') ? word : SAMPLE[kind.replace('?', '')])),
      ).not.toMatch(/\b(de|a) el\b/);
  });
});

describe('a Spanish dossier', () => {
  let input: ComposeInput;
  let made: Awaited<ReturnType<typeof composeDossier>>;
  beforeAll(async () => {
    input = withClaim(
      await sampleInput({ facts: { show: { temperature: '°F', language: 'es', paper: 'Letter' } } }),
    );
    made = await composeDossier(input);
  });

  const withoutWritten = (text: string) => ownWords(text, input);

  it('is set with no more warnings than an English one, and says that its language is Spanish', async () => {
    expect(made.warnings).toEqual((await prepareDossier(await sampleInput())).warnings);
    expect(Buffer.from(made.pdf).toString('latin1')).toMatch(/\/Lang\s*\(es/);
  });

  it('has no English of our own on its pages', async () => {
    const text = withoutWritten(await textOf(made.pdf));
    expect(text.length).toBeGreaterThan(10_000);
    expect(englishIn(text)).toEqual([]);
  });

  it('has none in the words of its drawings and their alternative texts', async () => {
    const { job } = await prepareDossier(input);
    const drawn = [...job.assets]
      .filter(([name]) => name.endsWith('.svg'))
      .flatMap(([, svg]) =>
        [...new TextDecoder().decode(svg).matchAll(/<text[^>]*>([^<]*)</g)].map(([, words]) => words ?? ''),
      );
    const alternative = JSON.stringify(job.document).match(/"alt":"[^"]*"/g) ?? [];
    expect(drawn.length).toBeGreaterThan(20);
    expect(alternative.length).toBeGreaterThan(3);
    for (const words of [...drawn, ...alternative.map((one) => one.slice(7, -1))])
      expect(withoutWritten(words)).not.toMatch(ENGLISH);
  });

  it('keeps the whole caution', async () => {
    const { cover } = (await prepareDossier(input)).job.document;
    const cautions = JSON.stringify(cover.cautions);
    for (const part of [
      /no es asesoría legal/,
      /ley del lugar, el contrato de transporte y el ejercicio profesional autorizado/,
      /Nunca dice si un alimento es apto para comer/,
    ])
      expect(cautions).toMatch(part);
  });
});

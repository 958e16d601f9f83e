import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  closingMilestone,
  milestoneText,
  shortfallText,
  substituteText,
} from '../../src/compose/view/gap-words.js';
import { shortfallFacts } from '../../src/core/assess/gaps/shortfalls.js';
import {
  contact,
  eventName,
  readingFrom,
  setPointSource,
  subjectName,
} from '../../src/core/model/evidence.js';
import type { FindingQuantity, Shortfall } from '../../src/core/model/results.js';
import { milestone } from '../../src/core/model/rule-set.js';
import type { Zone } from '../../src/core/model/time.js';
import { gapWording } from '../../src/jobs/gap-wording.js';
import { facts } from '../core/assess/made.js';

const FOLDER = join(import.meta.dirname, '../../templates/words/en');
const wording = await gapWording(facts());

const SAMPLE: Record<string, string | number | FindingQuantity> = {
  text: 'AB 123',
  thing: 'pulp',
  moment: 'doors-closed',
  source: 'display',
  run: 'start-stop',
  position: 'nose,tail',
  party: 'receiver',
  count: 3,
  temperature: { is: 'temperature', celsius: 2 },
  difference: { is: 'difference', kelvin: 1 },
  duration: { is: 'duration', seconds: 5400 },
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
  time: { is: 'time', at: 0, zone: 'America/Phoenix' as Zone },
};
const sample = (name: keyof typeof shortfallFacts): Shortfall => ({
  is: name,
  facts: Object.fromEntries(
    Object.entries(shortfallFacts[name]).map(([fact, kind]) => [
      fact,
      SAMPLE[kind] ?? 'nothing of this kind',
    ]),
  ),
});

describe('what a rule can lack', () => {
  const names = Object.keys(shortfallFacts) as (keyof typeof shortfallFacts)[];

  it('has words for every one, and for no other', () => {
    const files = readdirSync(join(FOLDER, 'lacking')).map((name) => name.replace(/\.md$/, ''));
    expect(files.sort()).toEqual([...names].sort());
  });

  it.each(names)('%s is said in one line, with every fact', (name) => {
    const said = shortfallText(wording, sample(name));
    expect(said).not.toMatch(/undefined|nothing of this kind|\[object|NaN|\{\{|\\| {2}/);
    expect(said.length).toBeGreaterThan(5);
    expect(said).not.toMatch(/\.$/);
  });

  it.each<[Shortfall, string]>([
    [{ is: 'none', facts: { thing: 'drains', need: 1 } }, 'no photo of the drains'],
    [
      { is: 'too-few', facts: { thing: 'pulp', have: 1, need: 3 }, line: 'romaine' },
      'Lettuce romaine: 1 of 3: pulp temperature',
    ],
    [
      { is: 'none', facts: { thing: 'contact-with-shipper,contact-with-broker', need: 1 } },
      'no note of telling the shipper or note of telling the broker',
    ],
    [{ is: 'none-at-position', facts: { positions: 'nose,tail' } }, 'none at the nose or tail'],
    [
      { is: 'stands-in', facts: { moment: 'doors-closed', standIn: 'departed' } },
      'the time of “doors closed” is not recorded, “departed” stands in for it',
    ],
    [
      { is: 'seal-differs', facts: { applied: 'AB 123', found: '*AB* 124' } },
      'seal *AB* 124 was found, AB 123 was applied',
    ],
    [
      {
        is: 'one-of',
        facts: {},
        stop: 'load-1',
        ways: [
          [{ is: 'none', facts: { thing: 'bracing', need: 1 }, stop: 'load-1' }],
          [{ is: 'no-log', facts: {} }],
        ],
      },
      'Cooler A: one of these: no photo of the bracing; or no unit log',
    ],
  ])('%j', (lack, words) => {
    expect(shortfallText(wording, lack)).toBe(words);
  });
});

describe('labels', () => {
  it.each([
    ...subjectName.options,
    'pulp',
    ...readingFrom.options.map((from) => `pulp-of-${from}`),
    ...setPointSource.options.map((source) => `set-point-of-${source}`),
    ...contact.shape.with.options.map((party) => `contact-with-${party}`),
    ...eventName.options.map((name) => `time-of-${name}`),
    ...['set-point', 'bracing', 'contact', 'statement', 'round', 'fuel-level', 'box-air'],
    ...['seal', 'seal-applied', 'seal-intact'],
  ])('say what is asked for: %s', (thing) => {
    expect(wording.labels.find(`asked.${thing}`)).toBeDefined();
  });

  it.each(milestone.options)('name the moment %s', (name) => {
    expect(milestoneText(wording, name)).not.toContain('-');
    expect(milestoneText(wording, name, 86_400)).toContain('after');
  });

  it('name what stands in', () => {
    expect(substituteText(wording, { document: 'shipper-pulp-sheet' })).toBe('shipper’s pulp sheet');
    expect(substituteText(wording, { photo: 'drains' })).toBe('photo of the drains');
    expect(substituteText(wording, { statement: 'person' })).toBe('statement of a person');
    expect(substituteText(wording, { computed: 'pull-down' })).toContain('unit log');
  });

  it('say until when', () => {
    expect(closingMilestone(wording, { is: 'now' })).toBeUndefined();
    expect(closingMilestone(wording, { is: 'until', moment: 'doors-closed' })).toBe('doors closed');
    expect(closingMilestone(wording, { is: 'lost', since: 'refused', seconds: 86_400 })).toMatch(
      / after refused$/,
    );
  });
});

it('no word of English stands in what is computed', () => {
  const folder = join(import.meta.dirname, '../../src/core/assess/gaps');
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((one) =>
    one.endsWith('.ts'),
  )) {
    const text = readFileSync(join(folder, name), 'utf8')
      .replace(/\/\*[\s\S]*?\*\//g, '')
      .replace(/\/\/.*$/gm, '')
      .replace(/^import [\s\S]*?;$/gm, '');
    const sentences = [...text.matchAll(/(['"`])((?:(?!\1)[^\\\n])*)\1/g)].filter(([, , words = '']) =>
      / \w/.test(words.replace(/\$\{[^}]*\}/g, '')),
    );
    expect(sentences.map(([all]) => `${name}: ${all}`)).toEqual([]);
  }
});

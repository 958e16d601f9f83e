import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DossierError } from '../../src/core/model/error.js';
import { loadRuleSet } from '../../src/jobs/rule-set.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'rule-sets-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const head = (name: string, rest: string) =>
  `ruleSet: ${name}\nversion: "3"\ntitle: Rules of ${name}\n${rest}`;
const RULE = (id: string) => `  - id: ${id}
    stage: loading
    title: A rule of our own
    needs: { photo: seal }
    proves: [care-in-transit]
    why: Because.
    how: Photograph it.
    basis: common practice
`;
const write = (name: string, text: string) => writeFileSync(join(folder, name), text);
const load = (name = './ours.yaml') => loadRuleSet(name, folder);

async function refused(name?: string): Promise<DossierError> {
  try {
    await load(name);
  } catch (error) {
    if (error instanceof DossierError) return error;
    throw error;
  }
  throw new Error('it was accepted');
}

describe('a shipped set', () => {
  it.each([
    ['produce', 45],
    ['drop-trailer', 35],
    ['frozen', 45],
  ])('%s is found by its name', async (name, least) => {
    const { ruleSet, sha256, text } = await load(name);
    expect(ruleSet.ruleSet).toBe(name);
    expect(ruleSet.rules.length).toBeGreaterThanOrEqual(least);
    expect(sha256).toBe(createHash('sha256').update(text).digest('hex'));
  });

  it('drop-trailer asks nothing of a load that nobody could see, and says what it leaves out and why', async () => {
    const { ruleSet, origin } = await load('drop-trailer');
    const ids = ruleSet.rules.map((rule) => rule.id);
    expect(ids).not.toContain('pulp-before-loading');
    expect(ids).toEqual(expect.arrayContaining(['seal-applied', 'display-at-pick-up', 'signed-bill']));
    expect(origin.files.map((file) => file.name)).toEqual(['produce.yaml', 'drop-trailer.yaml']);
    expect(origin.off.find((one) => one.rule === 'pulp-before-loading')).toMatchObject({
      title: 'Pulp temperatures before the pallets went on',
      by: 'drop-trailer',
      why: expect.stringContaining('sealed'),
    });
  });

  it('frozen allows what the bill asks for, and a wider band', async () => {
    const { ruleSet } = await load('frozen');
    expect(ruleSet.tolerance).toEqual({ difference: 5, unit: '°F' });
    const within = ruleSet.rules.find((rule) => rule.id === 'pulp-within-instruction');
    expect(JSON.stringify(within?.needs)).toContain('"difference":5');
  });
});

describe('a set of one’s own', () => {
  it('adds rules, changes fields and thresholds, switches rules off', async () => {
    write(
      'ours.yaml',
      head(
        'ours',
        `extends: produce
tolerance: 3 °F
rules:
${RULE('our-rule')}change:
  pulp-before-loading: { thresholds: { atLeast: 5 }, how: Probe five. }
  unit-watched: { thresholds: { coverage: 0.99 } }
  first-look: { thresholds: { atLeast: 2 } }
off:
  ice-at-loading: Our shippers photograph the ice
`,
      ),
    );
    const { ruleSet, origin, text, sha256 } = await load();
    const rule = (id: string) => ruleSet.rules.find((one) => one.id === id);
    expect(ruleSet.title).toBe('Rules of ours');
    expect(ruleSet.tolerance?.difference).toBe(3);
    expect(rule('our-rule')?.title).toBe('A rule of our own');
    expect(rule('pulp-before-loading')).toMatchObject({ how: 'Probe five.', needs: { atLeast: 5 } });
    // Stated inside `any` and `all`: it is set where it stands.
    expect(JSON.stringify(rule('unit-watched')?.needs)).toContain('"coverage":0.99');
    // Stated nowhere, and there is one need: it is added.
    expect(rule('first-look')?.needs).toMatchObject({ atLeast: 2 });
    expect(rule('ice-at-loading')).toBeUndefined();
    expect(origin.changed.map((one) => [one.rule, one.fields])).toEqual([
      ['pulp-before-loading', ['atLeast', 'how']],
      ['unit-watched', ['coverage']],
      ['first-look', ['atLeast']],
    ]);
    expect(origin.off).toEqual([
      {
        rule: 'ice-at-loading',
        title: 'Ice on the iced goods when they went on',
        by: 'ours',
        why: 'Our shippers photograph the ice',
      },
    ]);
    // One hash over all files that took part, of a text that holds them all.
    expect(sha256).toBe(createHash('sha256').update(text).digest('hex'));
    for (const file of origin.files) expect(text).toContain(file.sha256);
  });

  it('extends one of one’s own by a path from its own folder', async () => {
    write('base.yaml', head('base', `rules:\n${RULE('base-rule')}`));
    write('ours.yaml', head('ours', `extends: ./base.yaml\nrules:\n${RULE('our-rule')}`));
    const { ruleSet, origin } = await load();
    expect(ruleSet.rules.map((rule) => rule.id)).toEqual(['base-rule', 'our-rule']);
    expect(origin.files.map((file) => file.name)).toEqual(['base.yaml', 'ours.yaml']);
  });

  it('another hash for another text of any file that took part', async () => {
    write('base.yaml', head('base', `rules:\n${RULE('base-rule')}`));
    write('ours.yaml', head('ours', `extends: ./base.yaml\nrules:\n${RULE('our-rule')}`));
    const before = (await load()).sha256;
    write('base.yaml', head('base', `# a word more\nrules:\n${RULE('base-rule')}`));
    expect((await load()).sha256).not.toBe(before);
  });
});

describe('errors name file, line and field', () => {
  it.each([
    [
      'an unknown rule under change',
      'extends: produce\nchange:\n  pulp-befor-loading: { how: X. }\n',
      6,
      'change.pulp-befor-loading',
      /no rule/,
      'did you mean pulp-before-loading?',
    ],
    [
      'an unknown rule under off',
      'extends: produce\noff:\n  no-such-rule: we do not\n',
      6,
      'off.no-such-rule',
      /no rule "no-such-rule" in produce/,
      undefined,
    ],
    [
      'a rule that is there already',
      `extends: produce\nrules:\n${RULE('signed-bill')}`,
      6,
      'rules.0.id',
      /stands in produce.yaml already/,
      'To change it, say so under change: signed-bill.',
    ],
    [
      'a threshold that is stated nowhere',
      'extends: produce\nchange:\n  bracing:\n    thresholds: { everyHours: 3 }\n',
      7,
      'change.bracing.thresholds.everyHours',
      /state no everyHours/,
      undefined,
    ],
    [
      'a threshold that makes no sense',
      'extends: produce\nchange:\n  unit-download:\n    thresholds: { coverage: 7 }\n',
      7,
      'change.unit-download.thresholds.coverage',
      /1/,
      undefined,
    ],
    [
      'changed and off',
      'extends: produce\nchange:\n  bracing: { how: X. }\noff:\n  bracing: we do not\n',
      8,
      'off.bracing',
      /changed and switched off/,
      undefined,
    ],
    [
      'off without a reason',
      'extends: produce\noff:\n  bracing: no\n',
      6,
      'off.bracing',
      /reason/,
      undefined,
    ],
    [
      'off without a set',
      `rules:\n${RULE('a-rule')}off:\n  bracing: we do not\n`,
      13,
      'off',
      /extends/,
      undefined,
    ],
    [
      'a moment that is none',
      `rules:\n${RULE('a-rule').replace('basis', 'closes: doors-shut\n    basis')}`,
      12,
      'rules[0].closes',
      /not one of/,
      undefined,
    ],
    [
      'a time that is none',
      `rules:\n${RULE('a-rule').replace('photo: seal', 'photo: seal, within: 30 min after doors-shut')}`,
      8,
      'rules[0].needs.within',
      /"doors-shut" is not a moment/,
      undefined,
    ],
    [
      'a set that is not there',
      'extends: ./nowhere.yaml\n',
      4,
      'extends',
      /no rule set/,
      expect.stringContaining('path'),
    ],
  ])('%s', async (_, text, row, field, message, fix) => {
    write('ours.yaml', head('ours', text));
    const error = await refused();
    expect(error.code).toBe('bad-rule-set');
    expect(error.where).toEqual({ file: 'ours.yaml', row, field });
    expect(error.message).toMatch(message);
    if (fix !== undefined) expect(error.fix).toEqual(fix);
  });

  it('a circle of sets', async () => {
    write('ours.yaml', head('ours', 'extends: ./theirs.yaml\n'));
    write('theirs.yaml', head('theirs', 'extends: ./ours.yaml\n'));
    const error = await refused();
    expect(error.where).toEqual({ file: 'theirs.yaml', row: 4, field: 'extends' });
    expect(error.message).toContain('extends itself');
  });

  it('a set that delivery.yaml names and that is not there', async () => {
    expect((await refused('no-such-set')).where).toEqual({ file: 'delivery.yaml', field: 'rules' });
  });
});

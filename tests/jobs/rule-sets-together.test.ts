import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DossierError } from '../../src/core/model/error.js';
import { loadRuleSet, loadRuleWords } from '../../src/jobs/rule-set.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'rule-sets-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const write = (name: string, text: string) => {
  mkdirSync(dirname(join(folder, name)), { recursive: true });
  writeFileSync(join(folder, name), text);
  return `./${name}`;
};
const set = (name: string, rest: string) =>
  write(
    `${name}.yaml`,
    `ruleSet: ${name}\nversion: "${name.length}"\ntitle: Set ${name}\nextends: produce\n${rest}`,
  );
const rule = (id: string, how = 'Photograph it.') => `  - id: ${id}
    stage: loading
    title: Rule ${id}
    needs: { photo: seal }
    proves: [care-in-transit]
    why: Because.
    how: ${how}
    basis: common practice
`;
const load = async (...sets: string[]) => {
  const loaded = await loadRuleSet(sets, folder);
  const ids = new Set(loaded.ruleSet.rules.map(({ id }) => id));
  const of = (id: string) => loaded.ruleSet.rules.find((one) => one.id === id);
  return { ...loaded, ids, of, conflicts: loaded.origin.conflicts ?? [] };
};

describe('sets that a delivery names together', () => {
  it('hold each with all of its own: frozen, a trailer picked up loaded, and the carrier’s', async () => {
    const ours = set('ours', `rules:\n${rule('our-rule')}`);
    const { ids, ruleSet, origin } = await load('frozen', 'drop-trailer', ours);
    for (const id of ['no-signs-of-thawing', 'display-at-pick-up', 'our-rule', 'signed-bill'])
      expect(ids).toContain(id);
    expect(ids).not.toContain('pulp-before-loading');
    expect(ruleSet.tolerance).toMatchObject({ difference: 5 });
    expect(ruleSet.ruleSet).toBe('frozen + drop-trailer + ours');
    // What they all extend takes part once.
    expect(origin.files.map(({ ruleSet: name }) => name)).toEqual([
      'produce',
      'frozen',
      'drop-trailer',
      'ours',
    ]);
  });

  it('ask no rule that one of them switches off, in whatever order they are named', async () => {
    const orders = [await load('frozen', 'drop-trailer'), await load('drop-trailer', 'frozen')];
    expect(orders.map(({ ids }) => ids.has('pulp-before-loading'))).toEqual([false, false]);
    const [one, two] = orders.map(({ ids }) => [...ids].toSorted());
    expect(one).toEqual(two);
    for (const { conflicts } of orders)
      expect(conflicts).toContainEqual(
        expect.objectContaining({
          rule: 'pulp-before-loading',
          title: expect.stringMatching(/before the pallets went on/),
          field: 'off',
          sets: expect.arrayContaining(['frozen', 'drop-trailer']),
          counts: 'drop-trailer',
        }),
      );
  });

  it('take both changes where they are of different fields, and name no conflict', async () => {
    const how = set('how', 'change:\n  bracing: { how: Two bars. }\n');
    const why = set('why', 'change:\n  bracing: { why: Pallets fall. }\n');
    const { of, conflicts } = await load(how, why);
    expect(of('bracing')).toMatchObject({ how: 'Two bars.', why: 'Pallets fall.' });
    expect(conflicts).toEqual([]);
  });

  it.each([
    [
      'the same field of a rule',
      'change:\n  bracing: { how: Two bars. }\n',
      'change:\n  bracing: { how: Three bars. }\n',
      { rule: 'bracing', field: 'how' },
    ],
    [
      'the same threshold',
      'change:\n  unit-watched: { thresholds: { everyHours: 3 } }\n',
      'change:\n  unit-watched: { thresholds: { everyHours: 2 } }\n',
      { rule: 'unit-watched', field: 'everyHours' },
    ],
    [
      'a rule of the same name',
      `rules:\n${rule('ours')}`,
      `rules:\n${rule('ours', 'Film it.')}`,
      { rule: 'ours', field: 'rule' },
    ],
    ['the tolerance', 'tolerance: 3 °F\n', 'tolerance: 4 °F\n', { field: 'tolerance' }],
  ])('name it where they differ in %s: the later counts', async (_, first, second, conflict) => {
    const [one, two] = [set('one', first), set('two', second)];
    const there = await load(one, two);
    expect(there.conflicts).toMatchObject([{ ...conflict, sets: ['one', 'two'], counts: 'two' }]);
    const back = await load(two, one);
    expect(back.conflicts).toMatchObject([{ ...conflict, sets: ['two', 'one'], counts: 'one' }]);
    expect(JSON.stringify([there.ruleSet.rules, there.ruleSet.tolerance])).not.toBe(
      JSON.stringify([back.ruleSet.rules, back.ruleSet.tolerance]),
    );
  });

  it('that say the same are no conflict', async () => {
    const same = `tolerance: 3 °F\nrules:\n${rule('ours')}change:\n  bracing: { how: Two bars. }\n`;
    const { conflicts, ids } = await load(set('one', same), set('two', same));
    expect(conflicts).toEqual([]);
    expect(ids).toContain('ours');
  });

  it('are one set with itself extended: nothing twice, and nothing named', async () => {
    const { ids, conflicts, origin } = await load('produce', 'frozen');
    expect(ids).toEqual((await load('frozen')).ids);
    expect([conflicts, origin.files.length]).toEqual([[], 2]);
  });

  it('have the words of another language like one', async () => {
    const ours = set('ours', `rules:\n${rule('our-rule')}`);
    const loaded = await load('drop-trailer', 'frozen', ours);
    const words = await loadRuleWords(loaded, 'es');
    expect(words.title).toBe(
      'Productos frescos en un remolque que se recogió ya cargado + Mercancía congelada en camión refrigerado + Set ours',
    );
    expect(words.off).toHaveLength(loaded.origin.off.length);
    expect(words.changed).toHaveLength(loaded.origin.changed.length);
    for (const { id } of loaded.ruleSet.rules)
      if (id !== 'our-rule') expect([id, words.rules.get(id)?.title]).toEqual([id, expect.any(String)]);
  });
});

describe('only some rules of a set', () => {
  it('hold, the others are off for the reason given; rules of other sets stay', async () => {
    const few = set('few', 'only:\n  rules: [signed-bill, unit-download]\n  why: We keep what decides\n');
    const alone = await load(few);
    expect([...alone.ids]).toEqual(['signed-bill', 'unit-download']);
    expect(alone.origin.off.every(({ why }) => why === 'We keep what decides')).toBe(true);
    const beside = await load('frozen', few);
    expect([...beside.ids]).toEqual(expect.arrayContaining(['signed-bill', 'no-signs-of-thawing']));
    expect(beside.ids).not.toContain('pulp-before-loading');
  });

  it.each([
    ['a rule there is not', 'only:\n  rules: [signed-bil]\n  why: We keep it\n', /no rule "signed-bil"/],
    ['no reason', 'only:\n  rules: [signed-bill]\n  why: no\n', /reason/],
  ])('refuses %s with file and line', async (_, text, says) => {
    const error = await load(set('few', text)).then(
      () => undefined,
      (thrown: unknown) => thrown,
    );
    expect(error).toBeInstanceOf(DossierError);
    expect(error).toMatchObject({ message: expect.stringMatching(says), where: { file: 'few.yaml' } });
  });
});

describe('refused is', () => {
  it('a set that is named twice', async () => {
    await expect(load('frozen', 'frozen')).rejects.toThrow(/named twice/);
  });

  it('a threshold for needs that another set took away, with file and line', async () => {
    const whole = set('whole', 'change:\n  unit-watched: { needs: { photo: unit-display } }\n');
    const part = set('part', 'change:\n  unit-watched: { thresholds: { everyHours: 2 } }\n');
    await expect(load(whole, part)).rejects.toMatchObject({ where: { file: 'part.yaml', row: 6 } });
  });
});

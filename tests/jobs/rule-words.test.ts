import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DossierError } from '../../src/core/model/error.js';
import { RULE_TEXTS } from '../../src/core/model/rule-words.js';
import { loadRuleSet, loadRuleWords } from '../../src/jobs/rule-set.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'rule-words-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const write = (name: string, text: string) => {
  mkdirSync(dirname(join(folder, name)), { recursive: true });
  writeFileSync(join(folder, name), text);
};
const HEAD = 'ruleSet: ours\nversion: "1"\ntitle: Our rules\nextends: produce\n';
const OWN_RULE = `rules:
  - id: floor-swept
    stage: loading
    title: Floor swept
    needs: { photo: trailer-inside }
    proves: [care-in-transit]
    why: Because.
    how: Photograph it.
    basis: common practice
`;
const words = async (named = './ours.yaml') => loadRuleWords(await loadRuleSet(named, folder), 'es');

async function refused(): Promise<DossierError> {
  try {
    await words();
  } catch (error) {
    if (error instanceof DossierError) return error;
    throw error;
  }
  throw new Error('it was accepted');
}

const SHIPPED = readdirSync(join(import.meta.dirname, '../../templates/rule-sets'))
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => name.replace('.yaml', ''));
const numbersIn = (text: string) => (text.match(/\d+/g) ?? []).sort();

describe.each(SHIPPED)('the shipped set %s', (name) => {
  it('has Spanish words for every rule, and for itself', async () => {
    const [{ ruleSet, origin }, es] = await Promise.all([loadRuleSet(name, folder), words(name)]);
    expect(es.title).toMatch(/\S/);
    for (const rule of ruleSet.rules)
      for (const part of RULE_TEXTS) {
        const original = rule[part];
        if (original === undefined) throw new Error(`${rule.id} has no ${part}`);
        const said = es.rules.get(rule.id)?.[part];
        expect([rule.id, part, said]).toEqual([rule.id, part, expect.stringMatching(/\S/)]);
        expect([rule.id, part, said === original]).toEqual([rule.id, part, false]);
        expect([rule.id, part, numbersIn(said ?? '')]).toEqual([rule.id, part, numbersIn(original)]);
      }
    expect(es.off).toHaveLength(origin.off.length);
    for (const [i, { rule }] of origin.off.entries())
      expect([rule, es.off[i]]).toEqual([
        rule,
        { title: expect.stringMatching(/\S/), why: expect.stringMatching(/\S/) },
      ]);
    expect(es.changed).toHaveLength(origin.changed.length);
    for (const [i, { rule }] of origin.changed.entries())
      expect([rule, es.changed[i]]).toEqual([rule, { title: expect.stringMatching(/\S/) }]);
  });
});

describe('rules of a carrier', () => {
  it('stand as they were written where they have no words in the language', async () => {
    write('ours.yaml', `${HEAD}${OWN_RULE}change:\n  seal-photo: { title: Seal from near }\n`);
    const { rules, title, changed } = await words();
    expect(title).toBeUndefined();
    expect(rules.get('floor-swept')).toEqual({});
    // The shipped Spanish title would say what this set no longer asks; its other words still hold.
    expect(rules.get('seal-photo')).toEqual({
      why: expect.stringContaining('imagen'),
      how: expect.stringContaining('sello'),
      weightWhy: expect.stringContaining('número'),
    });
    // What was changed is named as it was called before.
    expect(changed).toEqual([{ title: 'Foto del sello cerrado' }]);
  });

  it('are said in the words of the file beside them', async () => {
    write('rules/ours.yaml', `${HEAD}${OWN_RULE}off: { bracing: We carry no pallets }\n`);
    write(
      'rules/es/ours.yaml',
      'title: Nuestras reglas\nrules:\n  floor-swept: { title: Piso barrido }\noff:\n  bracing: No llevamos tarimas\n',
    );
    const { rules, title, off } = await words('./rules/ours.yaml');
    expect([title, rules.get('floor-swept'), off]).toEqual([
      'Nuestras reglas',
      { title: 'Piso barrido' },
      [{ title: 'Carga sujeta', why: 'No llevamos tarimas' }],
    ]);
  });

  it.each([
    [
      'a rule there is not',
      'rules:\n  seal-photo: { why: Porque }\n  floor-swep: { why: x }\n',
      2,
      'seal-photo',
    ],
    ['a slip of the hand', 'rules:\n  floor-swep:\n    why: Porque sí\n', 2, 'floor-swep'],
    ['a text that is not changed', 'rules:\n  bracing:\n    title: Sujeta\n    why: Porque\n', 4, 'why'],
    ['a field that there is not', 'rules:\n  floor-swept:\n    needs: Nada\n', 3, 'needs'],
    ['no reason', '\noff:\n  bracing: no\n', 3, 'reason'],
    ['a title twice', 'title: a\ntitle: b\n', 2, 'unique'],
  ])('that are wrongly said are refused with file and line: %s', async (_, text, row, named) => {
    write('ours.yaml', `${HEAD}${OWN_RULE}change:\n  bracing: { title: Braced }\n`);
    write('es/ours.yaml', text);
    const { code, message, where } = await refused();
    expect([code, where.file, where.row]).toEqual(['bad-rule-set', 'es/ours.yaml', row]);
    expect(message).toContain(named);
  });

  it('are not switched off in words alone', async () => {
    write('ours.yaml', `${HEAD}${OWN_RULE}`);
    write('es/ours.yaml', 'off:\n  bracing: No llevamos tarimas\n');
    expect((await refused()).message).toContain('bracing');
  });
});

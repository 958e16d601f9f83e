import { beforeAll, describe, expect, it } from 'vitest';
import { boxesOf, type ChecklistPart } from '../../src/compose/checklist/box.js';
import { checklistLabels, composeChecklist } from '../../src/compose/checklist/compose.js';
import { checklistDocument } from '../../src/compose/checklist/document.js';
import { checklistParts } from '../../src/compose/checklist/parts.js';
import { boxLabel, choicesOf } from '../../src/compose/checklist/words.js';
import { type Delivery, delivery, language, paper } from '../../src/core/model/delivery.js';
import { sceneSubject } from '../../src/core/model/evidence.js';
import type { RuleSet } from '../../src/core/model/rule-set.js';
import { loadRuleSet } from '../../src/jobs/rule-set.js';
import { fontsOf, squeezed, textBeyond, textOf } from './pages.js';
import { BUILT_AT, SAMPLE_FACTS } from './sample.js';

const facts: Delivery = delivery.parse(SAMPLE_FACTS);
let rules: RuleSet;
let parts: ChecklistPart[];
beforeAll(async () => {
  rules = (await loadRuleSet('produce', '.')).ruleSet;
  parts = checklistParts(facts, rules);
});

describe('the boxes of a form', () => {
  it('are numbered from 1 without a gap, in the order in which they are printed', () => {
    const numbers = parts.flatMap((part) => boxesOf([part]).map(({ number }) => number));
    expect(numbers).toEqual(numbers.map((_, i) => i + 1));
    expect(numbers.length).toBeGreaterThan(50);
  });

  it('are the same for the same delivery and rules', () => {
    expect(checklistParts(facts, rules)).toEqual(parts);
  });

  it('ask one driver’s pulp per line and position at both ends, and the receiver’s at the last', () => {
    const pulps = boxesOf(parts).flatMap(({ question }) =>
      question.is === 'pulp'
        ? [`${question.stop} ${question.from} ${question.line} ${question.position}`]
        : [],
    );
    expect(pulps).toHaveLength(2 * 3 * 3);
    expect(new Set(pulps).size).toBe(pulps.length);
    expect(pulps.filter((one) => one.includes('receiver')).every((one) => one.startsWith('drop-1'))).toBe(
      true,
    );
  });

  it('ask only what the rules ask for', () => {
    const quiet = { ...rules, rules: rules.rules.filter(({ id }) => id === 'dock-times') };
    const asked = new Set(boxesOf(checklistParts(facts, quiet)).map(({ question }) => question.is));
    expect(asked).toContain('event');
    for (const left of ['pulp', 'bracing', 'round']) expect(asked).not.toContain(left);
  });
});

describe.each(language.options)('the words of the form in %s', (name) => {
  it('are there for every box, choice and photo', async () => {
    const labels = await checklistLabels(name);
    for (const { question } of boxesOf(parts)) {
      expect(boxLabel(question, labels)).not.toBe('');
      choicesOf(question, labels);
    }
    for (const scene of sceneSubject.options) expect(labels(`photo.${scene}`)).not.toBe('');
    expect(() =>
      checklistDocument(parts, { delivery: facts, language: name, paper: 'A4', labels }),
    ).not.toThrow();
  });
});

describe('the printed form', () => {
  const printed = language.options.flatMap((name) => paper.options.map((on) => [name, on] as const));
  it.each(printed)('%s on %s has every number, on two pages, inside the margins', async (name, on) => {
    const { pdf, pages } = await composeChecklist({
      delivery: facts,
      ruleSet: rules,
      language: name,
      paper: on,
      madeAt: BUILT_AT,
    });
    expect(pages).toBe(2);
    const text = await textOf(pdf);
    const words = new Set(text.split(/\s+/));
    const printed = parts.filter(({ is }) => is !== 'inspection');
    for (const { number } of boxesOf(printed)) expect(words).toContain(String(number));
    expect(squeezed(text)).toContain(squeezed('Romaine 24s'));
    expect(await textBeyond(pdf, 20)).toEqual([]);
    expect((await fontsOf(pdf)).every(({ embedded }) => embedded)).toBe(true);
  });

  it('has a page for an inspection certificate where that is asked for', async () => {
    const { pdf, pages } = await composeChecklist({
      delivery: facts,
      ruleSet: rules,
      language: 'en',
      paper: 'Letter',
      madeAt: BUILT_AT,
      inspection: true,
    });
    expect(pages).toBe(3);
    const words = new Set((await textOf(pdf)).split(/\s+/));
    for (const { number } of boxesOf(parts)) expect(words).toContain(String(number));
  });

  it('leaves at least 9 mm to write in each box', async () => {
    const { readFile } = await import('node:fs/promises');
    const source = await readFile('templates/checklist/boxes.typ', 'utf8');
    expect(Number(/#let row-height = (\d+(?:\.\d+)?)mm/.exec(source)?.[1])).toBeGreaterThanOrEqual(9);
  });
});

import { beforeAll, describe, expect } from 'vitest';
import { boxesOf } from '../../src/compose/checklist/box.js';
import { composeChecklist } from '../../src/compose/checklist/compose.js';
import { checklistParts } from '../../src/compose/checklist/parts.js';
import { composeDossier, prepareDossier } from '../../src/compose/compose.js';
import type { ComposeInput } from '../../src/compose/input.js';
import { typeset } from '../../src/compose/typeset.js';
import { delivery, language, paper } from '../../src/core/model/delivery.js';
import type { RuleSet } from '../../src/core/model/rule-set.js';
import { loadRuleSet } from '../../src/jobs/rule-set.js';
import { HOSTILE, hostileInput, spoiltPictures, unbrokenInput } from '../compose/hard-input.js';
import { englishIn, ownWords } from '../compose/own-words.js';
import { squeezed } from '../compose/pages.js';
import { BUILT_AT, SAMPLE_FACTS, sampleInput } from '../compose/sample.js';
import { FRAMES, framedDossier, lowerHalf, type Rectangle } from '../compose/signature-frame.js';
import { attachmentOf, fontsOf, textOf, textWithin, wordsBeyond } from './poppler.js';
import { checkWith, pdfdetach, pdffonts, pdftotext } from './programs.js';

/** The pages as Poppler's programs see them. tests/compose asks PDF.js and pdf-lib for the same facts. */

describe('a dossier', () => {
  let input: ComposeInput;
  let pdf: Uint8Array;
  beforeAll(async () => {
    input = await sampleInput();
    pdf = (await composeDossier(input)).pdf;
  });

  checkWith(pdffonts, 'embeds only the shipped fonts', () => {
    const fonts = fontsOf(pdf);
    expect(fonts.length).toBeGreaterThan(2);
    for (const { name, embedded } of fonts) {
      expect(name).toMatch(/^(SourceSans3|SourceCodePro)-/);
      expect(embedded).toBe(true);
    }
  });

  checkWith(pdfdetach, 'gives attachments back byte for byte', () => {
    expect(input.attachments.length).toBeGreaterThan(0);
    for (const one of input.attachments)
      expect(Buffer.from(attachmentOf(pdf, one.name)).equals(Buffer.from(one.bytes))).toBe(true);
  });

  checkWith(pdftotext, 'gives its fingerprint in one piece', () => {
    expect(textOf(pdf)).toContain(input.fingerprint.root);
  });
});

describe('what people wrote', () => {
  checkWith(pdftotext, 'comes out as the text it is, in every place', async () => {
    const { pdf, warnings } = await composeDossier(await hostileInput());
    expect(warnings).toEqual([]);
    const text = squeezed(textOf(pdf));
    for (const words of HOSTILE) expect(text).toContain(squeezed(words));
  });

  checkWith(pdftotext, 'without any space stays on the page', async () => {
    const { pdf } = await composeDossier(await unbrokenInput());
    // The pages' right margin is 19 mm, 53.9 pt.
    expect(wordsBeyond(pdf, 53)).toEqual([]);
  });
});

describe('pictures that can’t be shown', () => {
  checkWith(pdftotext, 'have a plate that says so', async () => {
    const { pdf } = await composeDossier(await spoiltPictures());
    expect(squeezed(textOf(pdf))).toContain(squeezed('This picture can’t be shown'));
  });
});

describe('a Spanish dossier', () => {
  checkWith(pdftotext, 'has no English of our own on its pages', async () => {
    const input = await sampleInput({
      facts: { show: { temperature: '°F', language: 'es', paper: 'Letter' } },
    });
    const text = ownWords(textOf((await composeDossier(input)).pdf), input);
    expect(text.length).toBeGreaterThan(10_000);
    expect(englishIn(text)).toEqual([]);
  });
});

describe('typesetting', () => {
  checkWith(pdftotext, 'of one document leaves nothing of it in the next', async () => {
    const { job } = await prepareDossier(await sampleInput({ change: () => [] }));
    const named = (name: string) => ({
      ...job,
      document: { ...job.document, cover: { ...job.document.cover, delivery: name } },
    });
    const first = await typeset(named('FIRST-4471-OAK'));
    const second = await typeset(named('SECOND-4471'));
    expect(textOf(first.pdf)).toContain('FIRST-4471-OAK');
    expect(textOf(second.pdf)).toContain('SECOND-4471');
    expect(squeezed(textOf(second.pdf))).not.toMatch(/FIRST|OAK/);
  });
});

describe.each(FRAMES)('the frame for the signature, on %s in %s', (paper, language, height, words) => {
  checkWith(pdftotext, 'stands on the last page, exactly where it is said', async () => {
    const { made } = await framedDossier(paper, language);
    const rectangle: Rectangle = made.signature?.rectangle ?? [0, 0, 0, 0];
    expect(textWithin(made.pdf, made.pages, height, rectangle)).toMatch(words);
    const half = textWithin(made.pdf, made.pages, height, lowerHalf(rectangle));
    expect(half).not.toMatch(/^(Signature|Firma) /);
  });
});

const FORMS = language.options.flatMap((name) => paper.options.map((on) => [name, on] as const));

describe.each(FORMS)('the printed form, %s on %s', (name, on) => {
  const facts = delivery.parse(SAMPLE_FACTS);
  let ruleSet: RuleSet;
  let pdf: Uint8Array;
  beforeAll(async () => {
    ruleSet = (await loadRuleSet('produce', '.')).ruleSet;
    const made = await composeChecklist({
      delivery: facts,
      ruleSet,
      language: name,
      paper: on,
      madeAt: BUILT_AT,
    });
    expect(made.pages).toBe(2);
    pdf = made.pdf;
  });

  checkWith(pdftotext, 'has every number, inside the margins', () => {
    const text = textOf(pdf);
    const words = new Set(text.split(/\s+/));
    // The boxes for inspection certificates are on a page of their own, which is printed when asked for.
    const printed = checklistParts(facts, ruleSet).filter(({ is }) => is !== 'inspection');
    for (const { number } of boxesOf(printed)) expect(words).toContain(String(number));
    expect(squeezed(text)).toContain(squeezed('Romaine 24s'));
    expect(wordsBeyond(pdf, 20)).toEqual([]);
  });

  checkWith(pdffonts, 'has all its fonts embedded', () => {
    const fonts = fontsOf(pdf);
    expect(fonts.length).toBeGreaterThan(0);
    expect(fonts.every(({ embedded }) => embedded)).toBe(true);
  });
});

import { beforeAll, describe, expect, it } from 'vitest';
import { prepareDossier } from '../../src/compose/compose.js';
import type { ComposeInput } from '../../src/compose/input.js';
import { SECTIONS, standsIn } from '../../src/compose/sections.js';
import type { Volume } from '../../src/core/model/manifest.js';
import type { DossierDocument } from '../../src/core/words/blocks.js';
import { sampleInput } from './sample.js';
import { withClaim } from './sample-claim.js';

let input: ComposeInput;
let dossier: DossierDocument;
let assessment: DossierDocument;
beforeAll(async () => {
  input = withClaim(await sampleInput());
  const made = async (volume: Volume) => {
    const { document } = (await prepareDossier({ ...input, volume })).job;
    if (!('cover' in document)) throw new Error('a letter instead of a dossier');
    return document;
  };
  dossier = await made('dossier');
  assessment = await made('assessment');
});

/** Every string of a document, without what people wrote: that is evidence, and stands in a dossier as it was written. */
const said = (document: DossierDocument) =>
  JSON.stringify([document.cover, document.sections]).replaceAll('\u00a0', ' ');

describe('the two volumes of a record', () => {
  it('share no section but the method and how to verify', () => {
    expect(SECTIONS.filter((name) => standsIn(name, 'dossier') && standsIn(name, 'assessment'))).toEqual([
      'method',
      'verify',
    ]);
    for (const [document, volume] of [
      [dossier, 'dossier'],
      [assessment, 'assessment'],
    ] as const)
      for (const { id } of document.sections)
        expect([id, SECTIONS.some((name) => name === id && standsIn(name, volume))]).toEqual([id, true]);
  });

  it('say on page one what they are', () => {
    expect(JSON.stringify(dossier.cover.says)).toMatch(/no assessment is part of this dossier/);
    expect(JSON.stringify(assessment.cover.says)).toMatch(/the carrier’s own weighing|The carrier’s own/);
  });

  it('are marked on each page where they are confidential, with their reader', () => {
    expect(dossier.marking).toBeUndefined();
    expect(assessment.marking).toBe('Confidential. Prepared for the carrier.');
  });
});

describe('a dossier has nothing of the assessment’s:', () => {
  it('no finding, and no mark of for, against and open', () => {
    expect(input.assessment.findings.length).toBeGreaterThan(5);
    expect(dossier.cover.weighing).toBeUndefined();
    expect(said(dossier)).not.toMatch(/"(For|Against|Open)"|speaks (for|against)|finding/i);
    expect(said(assessment)).toMatch(/"Against"/);
  });

  it('no requirement that is not met, and none of a rule’s why and how', () => {
    const open = input.assessment.gaps.filter(({ outcome }) => outcome === 'missing' || outcome === 'short');
    expect(open.length).toBeGreaterThan(1);
    for (const { title, why, how } of input.assessment.gaps)
      for (const words of [title, why, how].filter((one) => one.length > 12))
        expect([words, said(dossier).includes(words)]).toEqual([words, false]);
    expect(said(assessment)).toContain(open[0]?.why ?? '–');
    expect(said(dossier)).not.toMatch(/requirement|can no longer be|can still be got|is missing/i);
  });

  it('no element that must be proved, no position and no amount that may be owed', () => {
    expect(said(dossier)).not.toMatch(
      /care alone is not enough|excepted cause|freedom from negligence|burden|By the papers|4,685\.64|6,240\.00 \| /i,
    );
    expect(said(assessment)).toMatch(/care alone is not enough/);
    expect(said(assessment)).toMatch(/4,685\.64/);
  });

  it('no verdict on pulps and air together, no published limit, no mean kinetic temperature', () => {
    expect(said(dossier)).not.toMatch(/plausible|UC Davis|ASHRAE|kinetic|picked at random/i);
  });
});

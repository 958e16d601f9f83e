import { writeFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { PDFArray, PDFDict, PDFDocument, PDFName } from '#pdf-lib';
import { composeDossier, prepareDossier } from '../../src/compose/compose.js';
import type { ComposeInput } from '../../src/compose/input.js';
import { type TypesetJob, typeset } from '../../src/compose/typeset.js';
import type { Block } from '../../src/core/words/blocks.js';
import { HOSTILE, hostileInput, spoiltPictures, unbrokenInput } from './hard-input.js';
import { attachmentsOf, fontsOf, squeezed, textBeyond, textOf } from './pages.js';
import { sampleInput } from './sample.js';

let input: ComposeInput;
let job: TypesetJob;
let made: Awaited<ReturnType<typeof composeDossier>>;
beforeAll(async () => {
  input = await sampleInput();
  ({ job } = await prepareDossier(input));
  made = await composeDossier(input);
  // To look at the pages: KEEP=out.pdf npx vitest run tests/compose/dossier.test.ts
  if (process.env.KEEP !== undefined) writeFileSync(process.env.KEEP, made.pdf);
});

describe('a dossier', () => {
  it('has no warnings for plain evidence, and counts its pages', async () => {
    expect(made.warnings).toEqual([]);
    expect((await PDFDocument.load(made.pdf, { updateMetadata: false })).getPageCount()).toBe(made.pages);
  });

  it('is the same bytes for the same input', async () => {
    const again = await composeDossier(await sampleInput());
    expect(Buffer.from(again.pdf).equals(Buffer.from(made.pdf))).toBe(true);
  });

  it('is tagged PDF/A-3a with language, title and attachments', async () => {
    const pdf = await PDFDocument.load(made.pdf, { updateMetadata: false });
    const { catalog } = pdf;
    expect(pdf.getTitle()).toBe('Dossier of delivery 2026-0714-A');
    expect(catalog.lookup(PDFName.of('Lang'))?.toString()).toMatch(/en/);
    expect(catalog.lookup(PDFName.of('MarkInfo'), PDFDict).toString()).toMatch(/Marked true/);
    expect(catalog.has(PDFName.of('StructTreeRoot'))).toBe(true);
    expect(catalog.has(PDFName.of('Outlines'))).toBe(true);
    expect(catalog.lookup(PDFName.of('AF'), PDFArray).size()).toBe(input.attachments.length);
    const xmp = Buffer.from(made.pdf).toString('latin1');
    expect(xmp).toMatch(/<pdfaid:part>3<\/pdfaid:part>/);
    expect(xmp).toMatch(/<pdfaid:conformance>A<\/pdfaid:conformance>/);
  });

  it('is accessible: the same pages pass as PDF/UA-1', async () => {
    const { pdf } = await typeset({ ...job, standard: 'ua-1' });
    expect(Buffer.from(pdf).toString('latin1')).toMatch(/<pdfuaid:part>1<\/pdfuaid:part>/);
  });

  it.each([
    ['Letter', 612, 792],
    ['A4', 595.28, 841.89],
  ] as const)('is set on %s', async (paper, width, height) => {
    const { pdf } = await composeDossier(
      await sampleInput({ facts: { show: { temperature: '°C', paper } }, change: (all) => all.slice(0, 12) }),
    );
    const page = (await PDFDocument.load(pdf, { updateMetadata: false })).getPage(0);
    expect(page.getWidth()).toBeCloseTo(width, 0);
    expect(page.getHeight()).toBeCloseTo(height, 0);
  });

  it('embeds only the shipped fonts', async () => {
    const fonts = await fontsOf(made.pdf);
    expect(fonts.length).toBeGreaterThan(2);
    for (const { name, embedded } of fonts) {
      expect(name).toMatch(/^(SourceSans3|SourceCodePro)-/);
      expect(embedded).toBe(true);
    }
  });

  it('gives attachments back byte for byte, and its fingerprint in one piece', async () => {
    const attached = await attachmentsOf(made.pdf);
    for (const one of input.attachments)
      expect(Buffer.from(attached.get(one.name) ?? []).equals(Buffer.from(one.bytes))).toBe(true);
    expect(await textOf(made.pdf)).toContain(input.fingerprint.root);
  });

  it('leads to every section and to exhibits, and from each plate back', async () => {
    const { document } = job;
    const plates = document.sections
      .flatMap((one) => one.blocks)
      .flatMap((block) => (block.is === 'plates' ? block.plates : []))
      .filter((plate) => plate.size !== 'paper');
    expect(plates).toHaveLength(input.state.evidence.filter((item) => item.kind === 'photo').length);
    for (const plate of plates) expect(plate.seenIn.length).toBeGreaterThan(0);
    const pdf = await PDFDocument.load(made.pdf, { updateMetadata: false });
    const targets = pdf
      .getPages()
      .flatMap((page) => page.node.Annots()?.asArray() ?? [])
      .map((link) => pdf.context.lookup(link, PDFDict).get(PDFName.of('Dest'))?.toString() ?? '');
    const count = (target: string) => targets.filter((one) => one === target).length;
    for (const { id } of document.sections) {
      const back = plates.flatMap(({ seenIn }) => seenIn).filter((section) => section.id === id).length;
      expect([id, count(`(section-${id})`)]).toEqual([id, back + 1]);
    }
    expect(new Set(targets.filter((one) => !one.startsWith('('))).size).toBeGreaterThan(15);
  });
});

describe('the cover', () => {
  it('of an assessment shows the seven heaviest findings, for and against as they come, and how many more there are', async () => {
    const { cover, sections } = (await prepareDossier({ ...input, volume: 'assessment' })).job.document;
    const heaviest = [...input.assessment.findings].sort((a, b) => b.weight - a.weight).slice(0, 7);
    expect(cover.weighing?.lines.map((line) => line.weighs)).toEqual(heaviest.map((one) => one.weighs));
    expect(JSON.stringify(cover.weighing?.more)).toMatch(/2 more findings/);
    const all = sections.find((one) => one.id === 'findings')?.blocks.find((block) => block.is === 'table');
    expect(all?.rows).toHaveLength(input.assessment.findings.length);
  });

  it('says that the tool gives no legal advice and judges no food', () => {
    const { cover } = job.document;
    expect(JSON.stringify(cover.cautions)).toMatch(/not legal advice.*never says whether food is safe/);
  });
});

describe('a delivery without evidence', () => {
  it('has no empty sections, and no heading with nothing below', async () => {
    const empty = await sampleInput({ change: () => [] });
    const { document } = (await prepareDossier(empty)).job;
    expect(document.sections.map(({ id }) => id)).toEqual(['glance', 'method', 'custody', 'verify']);
    for (const { blocks } of document.sections)
      blocks.forEach((block, i) => {
        if (block.is === 'heading') expect(['heading', 'none', undefined]).not.toContain(blocks[i + 1]?.is);
      });
    const tables = (blocks: Block[]) => blocks.filter((block) => block.is === 'table');
    for (const section of document.sections)
      for (const table of tables(section.blocks)) expect(table.rows.length).toBeGreaterThan(0);
    expect((await composeDossier(empty)).pages).toBeGreaterThan(3);
  });
});

describe('what people wrote', () => {
  it('comes out as the text it is, in every place', async () => {
    const { pdf, warnings } = await composeDossier(await hostileInput());
    expect(warnings).toEqual([]);
    const text = squeezed(await textOf(pdf));
    for (const words of HOSTILE) expect(text).toContain(squeezed(words));
  });

  it('in letters that the fonts lack is shown by boxes, and the warning names them', async () => {
    const { warnings } = await composeDossier(
      await sampleInput({
        change: (all) => all.map((item) => ({ ...item, caption: '生菜 \u202eabc' })),
        facts: { parties: { carrier: { name: '冷链 Trucking' } } },
      }),
    );
    expect(warnings.join('\n')).toMatch(/U\+202E can't be printed and is shown as \[U\+202E\]/);
    expect(warnings.join('\n')).toMatch(/U\+51B7 can't be printed and is shown as □/);
  });

  it('without any space stays on the page', async () => {
    const { pdf } = await composeDossier(await unbrokenInput());
    // The pages' right margin is 19 mm, 53.9 pt.
    expect(await textBeyond(pdf, 53)).toEqual([]);
  });
});

describe('pictures that can’t be shown', () => {
  it('have a plate that says so, and a warning that names the file', async () => {
    const { pdf, warnings } = await composeDossier(await spoiltPictures());
    expect(warnings).toHaveLength(2);
    expect(warnings[0]).toMatch(/IMG_0401\.jpg.*can't be shown/);
    expect(warnings[1]).toMatch(/IMG_0402\.jpg.*damaged/);
    expect(squeezed(await textOf(pdf))).toContain(squeezed('This picture can’t be shown'));
  });
});

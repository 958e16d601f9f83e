import { beforeAll, describe, expect, it } from 'vitest';
import { prepareDossier } from '../../src/compose/compose.js';
import { type TypesetJob, typeset } from '../../src/compose/typeset.js';
import { type Block, paragraph, plain, text } from '../../src/core/words/blocks.js';
import { textOf } from './pages.js';
import { sampleInput } from './sample.js';

let job: TypesetJob;
beforeAll(async () => {
  ({ job } = await prepareDossier(await sampleInput()));
});

/** A heading, words and a list that lead to a table, after some lines that move them over the page. */
function group(n: number): Block[] {
  const row = [plain(`Cell ${n}`), plain('x')];
  return [
    ...Array.from({ length: n % 7 }, () => paragraph(text('Filling.'))),
    { is: 'heading', level: 2, text: `Heading ${n}` },
    paragraph(text(`Words ${n} that lead.`)),
    { is: 'list', ordered: false, items: [[paragraph(text(`Item ${n} that leads.`))]] },
    {
      is: 'table',
      columns: [
        { title: `Column ${n}`, width: 1 },
        { title: 'x', width: 1 },
      ],
      rows: [row, row, row],
    },
    paragraph(text(`Words ${n} before code.`)),
    { is: 'code', text: `code ${n}` },
    { is: 'facts', facts: Array.from({ length: 3 }, (_, i) => ({ label: `Fact ${i}`, value: plain('x') })) },
  ];
}

describe('no page ends with words that lead to what stands on the next', () => {
  it.each(['us-letter', 'a4'] as const)('on %s, wherever pages break', async (paper) => {
    const blocks = Array.from({ length: 120 }, (_, n) => group(n)).flat();
    const { pdf } = await typeset({
      ...job,
      document: {
        ...job.document,
        paper,
        exhibits: [],
        sections: [{ id: 'glance', title: 'Glance', blocks }],
      },
    });
    const lines = (await textOf(pdf)).split('\n').map((line) => line.trim());
    const last = lines.flatMap((line, i) => (/^Page \d+ of \d+$/.test(lines[i + 1] ?? '') ? [line] : []));
    expect(last.length).toBeGreaterThan(20);
    expect(last.filter((line) => /lead|before code|Heading|Column|Fact [01]/.test(line))).toEqual([]);
  });
});

describe('exhibits', () => {
  it.each([0, 3, 30, 46])('begin on a page of their own, after %i lines', async (paragraphs) => {
    const blocks = Array.from({ length: paragraphs }, () => paragraph(text('Filling.')));
    const { pdf } = await typeset({
      ...job,
      document: {
        ...job.document,
        exhibits: [],
        sections: [
          { id: 'glance', title: 'Before', blocks },
          { id: 'exhibits', title: 'Shown', blocks: [paragraph(text('The first exhibit.'))] },
        ],
      },
    });
    const pages = (await textOf(pdf)).split(/^\s*Page \d+ of \d+$/m);
    const shown = pages.filter((words) => words.includes('The first exhibit.'));
    expect(shown).toHaveLength(1);
    expect(shown[0]).not.toMatch(/Filling|Before/);
    // None before it is empty, but for the running line.
    const before = pages.slice(
      0,
      pages.findIndex((words) => words.includes('The first exhibit.')),
    );
    for (const words of before) expect(words.trim().split('\n').length).toBeGreaterThan(2);
  });
});

describe('excursions close up', () => {
  it('stand two to a picture, so that a page breaks between them', async () => {
    const blocks = job.document.sections.find(({ id }) => id === 'temperatures')?.blocks ?? [];
    const pictures = blocks.flatMap((block) =>
      block.is === 'picture' && /^excursions-/.test(block.asset) ? [block] : [],
    );
    expect(pictures.length).toBeGreaterThan(0);
    for (const { asset, alt } of pictures) {
      expect(job.assets.has(asset)).toBe(true);
      expect(alt.match(/Excursion/g)?.length).toBeLessThanOrEqual(2);
    }
  });
});

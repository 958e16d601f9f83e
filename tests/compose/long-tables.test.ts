import { beforeAll, describe, expect, it } from 'vitest';
import { prepareDossier } from '../../src/compose/compose.js';
import { sectionsByExhibit } from '../../src/compose/view/references.js';
import { evidenceId } from '../../src/core/model/evidence.js';
import { type Block, type DossierDocument, plain, wordsOf } from '../../src/core/words/blocks.js';
import { sampleInput } from './sample.js';

type Table = Extract<Block, { is: 'table' }>;
const MOST = 100;
const MORE = 250;

/** The sample delivery with the pulps of one dock taken over and over, each a tenth of a degree warmer than the last. */
let document: DossierDocument;
let all: number;
beforeAll(async () => {
  const input = await sampleInput({
    change: (evidence) => {
      const pulp = evidence.find((item) => item.kind === 'pulp' && item.place?.stop === 'load-1');
      if (pulp?.kind !== 'pulp') throw new Error('the sample has a pulp at loading');
      const more = Array.from({ length: MORE }, (_, i) => ({
        ...pulp,
        evidence: evidenceId.parse(`e${1000 + i}`),
        temperature: { ...pulp.temperature, value: pulp.temperature.value + i / 10 },
      }));
      return [...evidence, ...more];
    },
  });
  all = input.exhibits.length;
  const { job } = await prepareDossier(input);
  document = job.document;
});

const blocksOf = (id: string) => document.sections.find((section) => section.id === id)?.blocks ?? [];
const isTable = (block: Block): block is Table => block.is === 'table';
const sentences = (blocks: readonly Block[]) =>
  blocks.flatMap((block) => (block.is === 'paragraph' ? [wordsOf(block.of)] : []));
const cellText = (table: Table, row: number, column: number) => {
  const cell = table.rows[row]?.[column] ?? plain('');
  return wordsOf(Array.isArray(cell) ? cell : cell.of);
};

describe('a table of more readings than a page is for', () => {
  it('shows those that are farthest outside the range, in the order of time, and says where all are', () => {
    const blocks = blocksOf('pulps');
    const readings = blocks
      .filter(isTable)
      .flatMap((table) =>
        table.rows.flatMap((row) =>
          row.slice(1).map((cell) => wordsOf(Array.isArray(cell) ? cell : cell.of)),
        ),
      )
      .map((words) => words.split('; ').filter((one) => one !== ''))
      .find((one) => one.length > MOST / 2);
    const shown = (readings ?? []).map((words) => Number.parseFloat(words));
    // All were taken at one time: they stand in the order in which they were entered, so the warmest are the last.
    expect(shown.length).toBeGreaterThan(MOST / 2);
    expect(shown.length).toBeLessThanOrEqual(MOST);
    expect(shown).toEqual([...shown].sort((a, b) => a - b));
    expect(Math.max(...shown) - Math.min(...shown)).toBeLessThan((MOST + 1) / 10);
    expect(sentences(blocks).join('\n')).toMatch(
      /The 100 of 25\d readings that are farthest outside the instructed range .* pulps\.csv/,
    );
  });

  it('is followed by exhibits that hold every file and all that the pages refer to, and say where the rest is', () => {
    const blocks = blocksOf('exhibits');
    const shown = new Set(document.exhibits);
    expect(shown.size).toBeLessThan(all);
    expect(sentences(blocks).join('\n')).toMatch(/\d+ of \d+ are shown: .* exhibits\.csv/);
    const told = document.sections.filter(({ id }) => id !== 'exhibits' && id !== 'custody');
    const seenIn = sectionsByExhibit(told);
    for (let number = 1; number <= all; number += 1)
      if (seenIn(number).length > 0) expect(shown).toContain(number);
  });

  it('of entries gives sums by kind and person, and names the ledger', () => {
    const sums = blocksOf('custody')
      .filter(isTable)
      .find((table) => table.columns[0]?.title === 'Type');
    const counted = (sums?.rows ?? []).reduce(
      (sum, _, row) => sum + Number(cellText(sums as Table, row, 2)),
      0,
    );
    expect(counted).toBeGreaterThan(MORE);
    expect(sentences(blocksOf('custody')).join('\n')).toMatch(/ledger\.jsonl/);
  });

  it('says nothing where all are shown', async () => {
    const { job } = await prepareDossier(await sampleInput());
    const text = JSON.stringify(job.document);
    expect(text).not.toMatch(/attached file/);
    expect(job.document.exhibits.length).toBeGreaterThan(20);
  });
});

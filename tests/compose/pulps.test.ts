import { describe, expect, it } from 'vitest';
import { prepareDossier } from '../../src/compose/compose.js';
import { milliseconds } from '../../src/core/model/time.js';
import { type Block, wordsOf } from '../../src/core/words/blocks.js';
import { sampleInput } from './sample.js';

describe('pulps at loading and delivery', () => {
  it('tells the look at a thermometer by the clock of its own place, also below the pulps of another', async () => {
    const input = await sampleInput();
    const { evidence } = input.state;
    const look = evidence.find(({ place, time }) => place?.stop === 'load-1' && time.is === 'known');
    if (look?.time.is !== 'known') throw new Error('the sample has evidence of the first stop');
    const check = { evidence: look.evidence, at: milliseconds(look.time.instant), names: false };
    const pulps = input.assessment.pulps.map((group) => ({
      ...group,
      instruments: [{ instrument: 'P-7', count: group.count, guardKelvin: 0.3, check }],
    }));
    const { job } = await prepareDossier({ ...input, assessment: { ...input.assessment, pulps } });
    const { document } = job;
    if (!('sections' in document)) throw new Error('a dossier has sections');
    const blocks = document.sections.find(({ id }) => id === 'pulps')?.blocks ?? [];
    const said = blocks.flatMap(paragraphs).filter((words) => words.startsWith('P-7'));
    expect(pulps.map(({ stop }) => stop)).toEqual(expect.arrayContaining(['load-1', 'drop-1']));
    // One thermometer with one look stands once, with the readings of all lines.
    expect(said).toHaveLength(1);
    expect(said[0]).toContain(`(${pulps.reduce((sum, { count }) => sum + count, 0)})`);
    // The sample loads in Arizona and unloads in Nebraska.
    for (const words of said) expect(words).toMatch(/ MST \(/);
    const heads = blocks.flatMap((block) =>
      block.is === 'table' ? block.columns.map(({ title }) => title) : [],
    );
    expect(heads.join()).toMatch(/loading, .*unloading, /);
  });
});

function paragraphs(block: Block): string[] {
  if (block.is === 'paragraph') return [wordsOf(block.of)];
  return block.is === 'list' ? block.items.flatMap((item) => item.flatMap(paragraphs)) : [];
}

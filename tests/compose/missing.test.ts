import { describe, expect, it } from 'vitest';
import { prepareDossier } from '../../src/compose/compose.js';
import type { Sha256 } from '../../src/core/model/evidence.js';
import { omitUndefined } from '../../src/core/model/omit-undefined.js';
import type { RuleSetOrigin } from '../../src/core/model/rule-set.js';
import { type Block, type Cell, wordsOf } from '../../src/core/words/blocks.js';
import { sampleInput } from './sample.js';

const cellWords = (cell: Cell) => wordsOf(Array.isArray(cell) ? cell : cell.of);

/** The tables of the section, each with the heading above it. */
async function tables(origin?: RuleSetOrigin): Promise<Map<string, string[][]>> {
  const input = await sampleInput();
  const { ruleSet } = input.assessment;
  const { job } = await prepareDossier({
    ...input,
    volume: 'assessment',
    assessment: {
      ...input.assessment,
      ruleSet: { ...ruleSet, ...omitUndefined({ origin }) },
    },
  });
  const { document } = job;
  if (!('sections' in document)) throw new Error('a dossier has sections');
  const blocks: Block[] = document.sections.find((section) => section.id === 'missing')?.blocks ?? [];
  const found = new Map<string, string[][]>();
  let heading = '';
  for (const block of blocks) {
    if (block.is === 'heading') heading = block.text;
    if (block.is === 'table')
      found.set(
        heading,
        block.rows.map((row) => row.map(cellWords)),
      );
  }
  return found;
}

describe('what is missing', () => {
  it('says in words what each open rule lacks', async () => {
    const said = [...(await tables()).values()].flat().map((row) => row[0]);
    expect(said).toContain('Rear drains open: no photo of the drains.');
    expect(said.find((words) => words?.startsWith('Pulp temperatures'))).toMatch(
      /1 of 3: pulp temperature; .*none at the nose or tail\.$/,
    );
  });

  it('begins with what a dispute turns on, and says it once', async () => {
    const made = await tables();
    expect([...made.keys()][0]).toBe('What a dispute turns on');
    const all = [...made.values()].flat().map(([what]) => what);
    expect(new Set(all).size).toBe(all.length);
    expect(made.get('What a dispute turns on')?.map(([what]) => what)).toEqual([
      expect.stringMatching(/^Pulp temperatures/),
    ]);
  });

  it('shows what the rule set switched off, with the reason, and what it changed', async () => {
    const hash = 'cd'.repeat(32) as Sha256;
    const made = await tables({
      files: [{ name: 'ours.yaml', ruleSet: 'ours', version: '3', sha256: hash }],
      changed: [{ rule: 'unit-watched', title: 'Unit watched', by: 'ours', fields: ['everyHours'] }],
      off: [{ rule: 'air-chute-whole', title: 'Air chute whole', by: 'ours', why: 'Ducts in the ceiling' }],
    });
    expect(made.get('Not asked for in this delivery')).toEqual([
      ['Air chute whole', 'Ducts in the ceiling', 'ours'],
    ]);
    expect(made.get('Requirements changed from the set that is extended')).toEqual([
      ['Unit watched', 'everyHours', 'ours'],
    ]);
  });
});

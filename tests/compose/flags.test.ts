import { describe, expect, it } from 'vitest';
import { prepareDossier } from '../../src/compose/compose.js';
import { flagSameScenes } from '../../src/core/assess/scenes.js';
import { sampleInput } from './sample.js';

/** The sample with its first photo and so many others that look the same, a second apart. */
async function plateFlags(others: number): Promise<string[]> {
  const input = await sampleInput();
  const { state } = input;
  const [photo] = state.evidence.filter((one) => one.kind === 'photo');
  if (photo?.kind !== 'photo') throw new Error('the sample has no photo');
  let left = others + 1;
  const evidence = state.evidence.map((one) => {
    if (one.kind !== 'photo' || left === 0) return one;
    left -= 1;
    return { ...one, time: photo.time, sceneHash: '0123456789abcdef', flags: [] };
  });
  if (left > 0) throw new Error('the sample has too few photos');
  const { job } = await prepareDossier({ ...input, state: flagSameScenes({ ...state, evidence }) });
  const plates = job.document.sections
    .flatMap(({ blocks }) => blocks)
    .flatMap((block) => (block.is === 'plates' ? block.plates : []));
  const { exhibit } = input.exhibits.find((one) => one.evidence === photo.evidence) ?? {};
  return plates.find(({ number }) => number === exhibit)?.flags ?? [];
}

describe('the flag of a scene that was photographed more than once', () => {
  it.each([1, 3])('names all of %i others', async (others) => {
    const [flag = ''] = await plateFlags(others);
    expect(flag.match(/looks like exhibit \d+/g)).toHaveLength(others);
    expect(flag).not.toMatch(/more/);
  });

  it('names three of many and counts the rest', async () => {
    const [flag = ''] = await plateFlags(5);
    expect(flag.match(/looks like exhibit \d+/g)).toHaveLength(3);
    expect(flag).toMatch(/; and 2 more$/);
  });
});

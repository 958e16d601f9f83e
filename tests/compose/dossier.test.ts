import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { composeDossier } from '../../src/compose/compose.js';
import { sampleInput } from './sample.js';

describe('a dossier', () => {
  it('is set', async () => {
    const made = await composeDossier(await sampleInput());
    expect(made.warnings).toEqual([]);
    if (process.env.KEEP !== undefined) writeFileSync(process.env.KEEP, made.pdf);
  });
});

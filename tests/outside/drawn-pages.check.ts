import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect } from 'vitest';
import { ask, checkWith, node24, type Program } from './programs.js';

const PAPERS = join(import.meta.dirname, '../../fixtures/demo/evidence/papers');
const papers = readdirSync(PAPERS)
  .filter((name) => name.endsWith('.pdf'))
  .map((name) => join(PAPERS, name));
const here: Program = { name: 'node', command: [process.execPath] };

/** A line with the SHA-256 of each page, as one version of Node draws it. */
const drawnBy = (node: Program) => ask(node, join(import.meta.dirname, 'draw-pages.js'), ...papers);

describe('pages of documents', () => {
  checkWith(node24, 'are drawn alike', () => {
    const drawn = drawnBy(here);
    expect(drawn.out).toMatch(/^([0-9a-f]{64}\n){2,}$/);
    expect(drawnBy(node24)).toEqual(drawn);
  });
});

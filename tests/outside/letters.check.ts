import { afterAll, describe, expect } from 'vitest';
import { typesetLetter, writeLetter } from '../../src/compose/letters/compose.js';
import { letterInput } from '../compose/letters/sample-letter.js';
import { ask, checkWith, qpdf, scratch, verapdf } from './programs.js';

const disk = scratch();
afterAll(() => disk.end());

describe.each([
  ['denial', 'en', 'Letter'],
  ['reservation', 'es', 'A4'],
] as const)('a letter: %s in %s on %s', (kind, language, paper) => {
  const made = async () => {
    const input = await letterInput(kind, { language, paper });
    const { pdf } = await typesetLetter((await writeLetter(input)).document, input);
    return disk.put(`${kind}.pdf`, pdf);
  };

  // ISO 19005-3, level A.
  checkWith(verapdf, 'is PDF/A-3a', async () => {
    const file = await made();
    expect(ask(verapdf, '3a', file)).toMatchObject({ status: 0, out: `PASS ${file}\n` });
  });

  checkWith(qpdf, 'has no syntax errors', async () => {
    const { status, out } = ask(qpdf, '--check', await made());
    expect(out).toMatch(/No syntax or stream encoding errors found/);
    expect(status).toBe(0);
  });
});

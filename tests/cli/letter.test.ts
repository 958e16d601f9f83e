import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Yard, yard } from './a-delivery.js';

let here: Yard;
let folder: string;
beforeAll(async () => {
  here = yard();
  folder = await here.delivery();
  const claim = ['record', 'claim', 'received', 'Mock Elms Produce', '-d', folder, '--as', 'receiver'];
  const { code, err } = await here.dossier(...claim, '--on', '2026-08-03', '--amount', '900 USD');
  if (code !== 0) throw new Error(err);
}, 60_000);
afterAll(() => here.end());

describe('dossier answer --letter', () => {
  it('writes the letter and says what is to fill in, what is weak, and that nothing was sent', async () => {
    const out = here.at('ack');
    const letter = ['--letter', 'acknowledgement', '--out', out, '--no-dossier'];
    const ran = await here.dossier('answer', folder, ...letter);
    expect(ran).toMatchObject({ code: 0 });
    expect(ran.out).toMatch(/ack: acknowledgement to Mock Elms Produce/);
    expect(ran.out).toMatch(/letter\.pdf {2}\d+ bytes {2}[0-9a-f]{64}/);
    expect(ran.out).toMatch(/To fill in before it is signed:\n {2}- address/);
    expect(ran.out).toMatch(/not legal advice/);
    expect(ran.err).toMatch(
      /Nothing was sent.*record claim letter acknowledgement --way sent --with "Mock Elms Produce"/,
    );
    expect(readFileSync(join(out, 'letter.txt'), 'utf8')).toMatch(/USD 900/);
    expect(here.entries(folder).at(-1)?.body).toMatchObject({ is: 'answered', letter: 'acknowledgement' });
  });

  it.each([
    ['denial', ['--reason', 'Warm at "loading"'], 'declined "Warm at \\"loading\\"" --in-writing -d '],
    ['denial', ['--amount', '300 USD'], 'declined "REASON" --in-writing --part "300 USD" -d '],
    ['offer', ['--amount', '300 USD', '--firm'], 'offer "300 USD" --firm -d '],
  ])('of a %s %j says also what to write down of the decision', async (kind, words, said) => {
    const out = here.at(`decided-${said.length}`);
    const { err } = await here.dossier(
      'answer',
      folder,
      '--letter',
      kind,
      ...words,
      '--out',
      out,
      '--no-dossier',
    );
    expect(err).toContain(`And what it says: dossier record claim ${said}`);
  });

  it('says the same as JSON', async () => {
    const letter = ['--letter', 'offer', '--amount', '300 USD', '--out', here.at('offer'), '--no-dossier'];
    const { out, code } = await here.dossier('answer', folder, ...letter, '--language', 'es', '--json');
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ letter: 'offer', claim: 'c1', toFillIn: expect.any(Array) });
  });

  it.each([
    ['an option of a letter without one', ['--reason', 'Warm'], '--reason belongs to a letter'],
    ['no folder', ['--letter', 'denial'], 'a letter needs a folder'],
    ['a kind with a slip in it', ['--letter', 'denail', '--out', 'x'], 'Did you mean denial'],
  ])('refuses %s', async (_, words, said) => {
    const ran = await here.dossier('answer', folder, ...words);
    expect(ran.code).toBe(2);
    expect(ran.err).toContain(said);
    expect(existsSync(here.at('x'))).toBe(false);
  });
});

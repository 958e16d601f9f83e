import { describe, expect, it } from 'vitest';
import { EXIT } from '../../src/cli/exit.js';
import { dossierHere } from './run.js';

const published = (...words: string[]) => dossierHere(['published', ...words]);

describe('dossier published', () => {
  it('lists each value under its quantity with who says it, and never one joined of two', async () => {
    const { code, out } = await published('romaine');
    expect(code).toBe(0);
    expect(out).toContain('Lettuce, romaine (lettuce-romaine; Lechuga romana)');
    expect(out).toMatch(/Temperature for storage\n(?: {2}.*\n)* {2}0 °C \(32 °F\): UC Davis/);
    expect(out).toMatch(
      /Temperature for (?:transport|storage and transport|storage)\n(?: {2,}.*\n)* {2}.*32.*36 °F.*New England/,
    );
    expect(out).not.toContain('“');
  });

  it.each(['Romaine', 'lechuga romana', 'LETTUCE, ROMAINE'])('knows the goods as %s', async (name) => {
    expect((await published(...name.split(' '))).out).toContain('(lettuce-romaine;');
  });

  it('quotes the sentence or cell of each value, with its source, address and day of reading', async () => {
    const { out } = await published('romaine', '--quote');
    expect(out).toMatch(/“[^”]+”/);
    expect(out).toMatch(/read on \d{4}-\d\d-\d\d/);
    expect(out).toContain('https://');
  });

  it('gives the sentences in JSON too', async () => {
    const { quantities } = JSON.parse((await published('celery', '--json')).out);
    for (const { values } of quantities)
      for (const { quotation, source } of values)
        expect([quotation, source.address]).toEqual([expect.stringMatching(/\d|[a-z]/), expect.any(String)]);
  });

  it('says so when it has nothing on the goods, and ends with 1', async () => {
    const { code, out } = await published('moon', 'cheese');
    expect(code).toBe(EXIT.no);
    expect(out).toContain('nothing on "moon cheese"');
    expect(JSON.parse((await published('moon cheese', '--json')).out)).toEqual({ goods: null });
  });

  it('lists the goods when none is named', async () => {
    expect((await published()).out.split('\n').length).toBeGreaterThan(140);
  });
});

import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PDFDocument } from '#pdf-lib';
import { type Yard, yard } from './a-delivery.js';

let here: Yard;
let folder: string;
beforeAll(async () => {
  here = yard();
  folder = await here.delivery();
  await here.dossier('collect', here.put('notice.txt', 'NOTICE OF REJECTION'), '-d', folder);
  await here.dossier('describe', 'e1', '--caption', '=HYPERLINK("x")', '-d', folder);
  await here.dossier('record', 'pulp', '34.2F', '--line', 'romaine', '--stop', 'load-1', '-d', folder);
});
afterAll(() => here.end());

describe('dossier trail', () => {
  it('tells every entry: number, when, who, what, and what it changed', async () => {
    const { code, out } = await here.dossier('trail', folder);
    expect(code).toBe(0);
    expect(out).toMatch(/^ {3}0 {2}\w{3} .* MST {2}Test {2}delivery facts/m);
    expect(out).toMatch(/1 {2}.*evidence received e1\n\s+file notice\.txt, 19 bytes, SHA-256\s+[0-9a-f]{64}/);
    expect(out).toContain('caption: nothing → =HYPERLINK("x")');
    expect(out).toMatch(/4 entries; the record is whole\. Fingerprint [0-9a-f]{64}/);
  });

  it.each(['trail', 'gaps', 'temps', 'timeline', 'answer'])(
    '%s takes the folder with -d as well',
    async (command) => {
      const [plain, named] = [
        await here.dossier(command, folder, '--json'),
        await here.dossier(command, '-d', folder, '--json'),
      ];
      expect([named.code, named.err]).toEqual([plain.code, plain.err]);
      expect(Object.keys(JSON.parse(named.out))).toEqual(Object.keys(JSON.parse(plain.out)));
    },
  );

  it('tells the life of one piece of evidence', async () => {
    const { out } = await here.dossier('trail', folder, '--of', 'e1');
    expect(out).toContain('2 of 4 entries touch e1');
    expect(out).not.toContain('34.2');
  });

  it('is a table that a spreadsheet reads and never runs', async () => {
    const { out } = await here.dossier('trail', folder, '--csv');
    const rows: Record<string, string>[] = parse(out, { columns: true });
    expect(rows.map(({ entry, type, by }) => [entry, type, by])).toEqual([
      ['0', 'delivery-facts', 'Test'],
      ['1', 'evidence-received', 'Test'],
      ['2', 'evidence-described', 'Test'],
      ['3', 'reading-recorded', 'Test'],
    ]);
    // OWASP "CSV Injection": no cell begins with one of = + - @ tab return.
    for (const row of rows) for (const value of Object.values(row)) expect(value).not.toMatch(/^[=+\-@\t\r]/);
  });

  it('in JSON has every value in full', async () => {
    const { out } = await here.dossier('trail', folder, '--json', '--zone', 'Europe/Madrid');
    expect(JSON.parse(out)).toMatchObject({
      delivery: '2026-0714-A',
      size: 4,
      zone: 'Europe/Madrid',
      entries: [
        { seq: 0 },
        { seq: 1 },
        { changes: [{ after: '=HYPERLINK("x")' }] },
        { time: { basis: 'typed' } },
      ],
    });
  });

  it.each(['en', 'es'])('as PDF, tagged, in %s', async (language) => {
    const text = readFileSync(here.at('facts-of-delivery.yaml'), 'utf8');
    const facts = text.replace('2026-0714-A', `2026-${language}`);
    const own = await here.delivery(language, `${facts}show: { language: ${language} }\n`);
    const file = here.at(`trail-${language}.pdf`);
    const { code, out } = await here.dossier('trail', own, '--pdf', file);
    expect([code, out]).toEqual([0, expect.stringContaining('1 entries on 1 pages')]);
    const pdf = await PDFDocument.load(readFileSync(file));
    expect(pdf.getTitle()).toMatch(language === 'en' ? /^Audit trail/ : /^Registro de auditoría/);
  });

  it.each([
    [['--of', 'e9'], 'e1 to e2'],
    [['--of', 'photo'], 'there is no evidence photo'],
    [['--zone', 'Mars/Base'], 'time zone'],
    [['--csv', '--json'], 'Use one of'],
  ])('refuses %j', async (args, said) => {
    const { code, err } = await here.dossier('trail', folder, ...args);
    expect([code, err]).toEqual([2, expect.stringContaining(said)]);
  });

  it('of a changed record is refused, and nothing is shown', async () => {
    const own = await here.delivery('changed');
    const ledger = `${own}/ledger.jsonl`;
    writeFileSync(ledger, readFileSync(ledger, 'utf8').replace('Esparto', 'Asparto'));
    const { code, out, err } = await here.dossier('trail', own, '--pdf', here.at('no.pdf'));
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('ledger');
    expect(existsSync(here.at('no.pdf'))).toBe(false);
  });
});

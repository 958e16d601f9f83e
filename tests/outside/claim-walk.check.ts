import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dossierHere, type Ran } from '../cli/run.js';
import { squeezed, textOf } from '../compose/pages.js';
import { FIXTURES } from '../demo/where.js';

const PAGE = readFileSync('docs/claim.md', 'utf8');
/** The commands of the page in their order, as words. */
const TYPED = [...PAGE.matchAll(/^ {4}dossier (.*)$/gm)].map(([, line = '']) =>
  [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? ''),
);

let room: string;
const ran = new Map<string, Ran>();
const at = (...names: string[]) => join(room, ...names);
const type = (words: readonly string[]) =>
  dossierHere(
    words.map((word) => word.replace(/^demo-output/, room).replace(/^fixtures\//, FIXTURES)),
    {
      DOSSIER_IDENTITY: at('identity'),
      DOSSIER_PASSPHRASE: 'of-a-test-that-forgets-it',
      DOSSIER_BY: 'R. Tansy',
    },
  );

beforeAll(async () => {
  room = mkdtempSync(join(tmpdir(), 'claim-'));
  await type(['new', 'demo-output/delivery', '--file', 'fixtures/demo/delivery.yaml']);
  await type(['collect', 'fixtures/demo/evidence', '-d', 'demo-output/delivery']);
  for (const words of TYPED) ran.set(words.join(' '), await type(words));
});
afterAll(() => rmSync(room, { recursive: true, force: true }));

/** What the first command that begins so left. */
const leftBy = (...words: string[]): Ran => {
  const found = [...ran].find(([typed]) => words.every((word) => typed.includes(word)));
  if (found === undefined) throw new Error(`nothing typed has ${words.join(' ')}`);
  return found[1];
};

describe('the page from refusal to denial', () => {
  it('is typed to its end: each command does what it says', () => {
    expect(TYPED.length).toBeGreaterThan(20);
    const failed = [...ran].filter(([, { code }]) => code !== 0);
    expect(failed.map(([typed, { code, err }]) => [typed, code, err])).toEqual([]);
  });

  it('numbers the papers as the record does', () => {
    const { out } = leftBy('collect');
    for (const [id, name] of [
      ['e97', 'carriage-agreement.pdf'],
      ['e98', 'claim-letter.pdf'],
      ['e99', 'invoice.pdf'],
      ['e100', 'sale-account.pdf'],
    ])
      expect(out).toMatch(new RegExp(`^${id} +${name}`, 'm'));
  });

  it('shows the clocks under the contract, the acknowledgement by its shorter time', () => {
    const { out } = leftBy('answer', '--at 2026-08-04');
    // 15 days after 2026-08-03 by term 11; 120 days by 49 CFR 370.9. By hand.
    expect(squeezed(out)).toMatch(/Aug18,2026,America\/ChicagoopenAcknowledgetheclaim/);
    expect(squeezed(out)).toMatch(/Dec1,2026,America\/ChicagoopenPay,declineormakeafirm/);
    expect(out).toContain('Local law and the contract of carriage decide');
  });

  it('acknowledges with the number, and asks for what is still owed', () => {
    const letter = readFileSync(at('answers/acknowledgement/letter.txt'), 'utf8');
    expect(letter).toContain('Q-2026-014');
    expect(letter).toMatch(/please provide:\s+- evidence of the freight charges/);
    expect(readdirSync(at('answers/acknowledgement')).sort()).toEqual([
      'enclosures.txt',
      'letter.pdf',
      'letter.txt',
    ]);
  });

  it('denies with reasons, each fact with its exhibits, and keeps what is weak for the carrier alone', () => {
    const letter = readFileSync(at('answers/denial/letter.txt'), 'utf8').replace(/\s+/g, ' ');
    expect(letter).toContain('We decline the claim and disallow it in full');
    expect(letter).toContain('the shipper was told and had it loaded');
    expect(letter).toMatch(/warm when it was loaded: 2 of 3 pulps .*? \(Ex\. 11, Ex\. 13, Ex\. 15\)/);
    expect(letter).not.toContain('without a cause');
    // What is only plausible stays in the dossier, beside its assumptions.
    expect(letter).not.toContain('plausib');
    expect(leftBy('--letter denial').out.replace(/\s+/g, ' ')).toMatch(
      /- against: The air was out of range 1 time without a cause/,
    );
  });

  it('lists what goes out by its hash, in the enclosures and in the record', () => {
    const list = readFileSync(at('answers/denial/enclosures.txt'), 'utf8');
    const hash = (name: string) =>
      createHash('sha256')
        .update(readFileSync(at('answers/denial', name)))
        .digest('hex');
    const ledger = readFileSync(at('delivery/ledger.jsonl'), 'utf8');
    for (const name of ['letter.pdf', 'dossier.pdf']) expect(ledger).toContain(hash(name));
    expect(list).toContain(hash('dossier.pdf'));
    expect(leftBy('verify').out).toContain('INTACT');
  });

  it('has pages that say the same as the text', async () => {
    const text = await textOf(readFileSync(at('answers/denial/letter.pdf')));
    expect(text.replace(/\s+/g, '')).toContain('Wedeclinetheclaimanddisallowitinfull');
    const certificate = await textOf(readFileSync(at('answers/denial/certificate.pdf')));
    expect(certificate).toMatch(/draft/i);
  });

  it('is at rest once the denial is recorded: nothing of the carrier’s is due', () => {
    const { out } = leftBy('answer', '--at 2026-09-22');
    const [duties = ''] = out.split('Time limits of other parties');
    expect(duties).toContain('What the carrier must do');
    expect(duties).not.toMatch(/OVERDUE|\bopen\b/);
    expect(out).toContain('No carrier deadline has passed');
    // The two years of 49 U.S.C. 14706(e)(1) run from the written denial.
    expect(out).toMatch(/Sep 21, 2028/);
  });

  it('tells the life of the claim letter, and the whole trail as a PDF', async () => {
    expect(leftBy('trail', '--of e98').out).toMatch(/claim noted e98 c1/);
    expect(await textOf(readFileSync(at('answers/trail.pdf')))).toContain('Audit trail');
  });
});

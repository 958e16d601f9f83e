import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { verifyDossier } from '../../src/index.js';
import { recordClaim } from '../../src/jobs/claim.js';
import {
  type LetterPackageReport,
  type PackOptions,
  writeLetterPackage,
} from '../../src/jobs/letter-package.js';
import { recordReading } from '../../src/jobs/record-reading.js';
import type { SignedBy } from '../../src/jobs/signing/signed-by.js';
import { type Yard, yard } from '../cli/a-delivery.js';
import { textOf } from '../compose/pages.js';
import { sampleIdentity } from '../signing/sample-identity.js';

const now = () => new Date('2026-08-10T15:00:00Z');
let here: Yard;
let folder: string;

beforeAll(async () => {
  here = yard();
  folder = await here.delivery();
  const enter = (kind: 'pulp' | 'event' | 'contact', word: string, fields: Record<string, unknown>) =>
    recordReading({ folder, kind, word, fields, enteredBy: 'M. Ortega', now });
  for (const position of ['nose', 'middle', 'tail'])
    await enter('pulp', '42F', {
      line: 'romaine',
      stop: 'load-1',
      at: '2026-07-14T04:10',
      position,
      by: 'M. Ortega',
    });
  await enter('contact', 'shipper', {
    at: '2026-07-14T05:02',
    stop: 'load-1',
    how: 'call',
    about: 'romaine pulps 42 F',
    subject: 'pulp-temperatures',
  });
  await enter('event', 'doors-closed', { stop: 'load-1', at: '2026-07-14T06:00' });
  await enter('event', 'refused', { stop: 'drop-1', at: '2026-07-16T08:15' });
}, 60_000);
afterAll(() => here.end());

let turn = 0;
const signer = sampleIdentity();
const out = () => here.at(`answer-${turn++}`);
const packed = (more: Partial<PackOptions>, by: SignedBy = { signer }): Promise<LetterPackageReport> =>
  writeLetterPackage({
    folder,
    by: 'Office',
    now,
    letter: 'denial',
    out: out(),
    reasons: [],
    firm: false,
    disallowsRest: false,
    loading: false,
    ...by,
    progress: () => undefined,
    ...more,
  });
const lastEntry = () => here.entries(folder).at(-1);
const sizeNow = () => here.entries(folder).length;
const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

/** The same said again adds nothing. */
const claimed = () =>
  recordClaim({
    folder,
    by: 'Office',
    now,
    is: 'received',
    word: 'Mock Elms Produce',
    fields: {
      as: 'receiver',
      on: '2026-08-03',
      zone: 'America/Chicago',
      amount: '12480.50 USD',
      ourNumber: '2026-014',
    },
  });

describe('before there is a claim', () => {
  it('a reservation needs none, and no dossier goes with it', async () => {
    const report = await packed({ letter: 'reservation' });
    expect(report.files.map(({ name }) => name)).toEqual(['letter.pdf', 'letter.txt', 'enclosures.txt']);
    expect(lastEntry()).toMatchObject({
      type: 'claim-noted',
      body: { is: 'answered', letter: 'reservation', evidence: [] },
    });
    expect(lastEntry()?.body).not.toHaveProperty('claim');
    expect(readFileSync(join(report.folder, 'letter.txt'), 'utf8')).toMatch(
      /3 pulps before loading, 42\.0 °F \(5\.6 °C\) to 42\.0 °F/,
    );
  });

  it('a request for an inspection leaves the name to fill in, and the record says so', async () => {
    const report = await packed({ letter: 'inspection-request' });
    expect(report).not.toHaveProperty('to');
    expect(report.toFillIn.slice(0, 2)).toEqual(['name of who gets this', 'address']);
    expect(lastEntry()?.body).toMatchObject({ letter: 'inspection-request', to: '(not named)' });
  });

  it('a denial is refused, and nothing is left behind', async () => {
    const target = out();
    const size = sizeNow();
    await expect(packed({ letter: 'denial', out: target })).rejects.toThrow('no claim is recorded');
    expect(existsSync(target)).toBe(false);
    expect(readdirSync(here.folder).filter((name) => name.startsWith('.answer'))).toEqual([]);
    expect(sizeNow()).toBe(size);
  });
});

describe('an answer to a claim', () => {
  let report: LetterPackageReport;
  let read: (name: string) => Buffer;
  beforeAll(async () => {
    await claimed();
    report = await packed({ letter: 'denial', reasons: ['Warm when loaded'], certificate: true });
    read = (name) => readFileSync(join(report.folder, name));
  }, 120_000);

  it('is in the folder with everything that is listed, and nothing else', () => {
    expect(readdirSync(report.folder).sort()).toEqual([
      'certificate.pdf',
      'dossier.pdf',
      'enclosures.txt',
      'letter.pdf',
      'letter.txt',
    ]);
    expect(report.files.map(({ name }) => name).sort()).toEqual(readdirSync(report.folder).sort());
  });

  it('is noted in the record by the hashes of the files as they lie there', () => {
    const body = lastEntry()?.body as { files: { name: string; bytes: number; sha256: string }[] };
    expect(body).toMatchObject({ is: 'answered', claim: 'c1', letter: 'denial', to: 'Mock Elms Produce' });
    expect(body.files).toEqual(report.files);
    for (const { name, bytes, sha256: hash } of body.files) {
      expect(read(name).length, name).toBe(bytes);
      expect(sha256(read(name)), name).toBe(hash);
    }
  });

  it('lists its files in the form that sha256sum --check reads', () => {
    const sums = read('enclosures.txt')
      .toString('utf8')
      .split('\n')
      .filter((line) => line !== '' && !line.startsWith('#'));
    expect(sums).toHaveLength(4);
    for (const line of sums) {
      const [hash = '', name = ''] = line.split('  ');
      expect(sha256(read(name))).toBe(hash);
    }
  });

  it('holds a dossier that verifies, in the copy for the receiver, and names it by its hash', async () => {
    const verified = await verifyDossier(read('dossier.pdf'));
    expect(verified.checks.filter(({ result }) => result === 'failed')).toEqual([]);
    expect(verified.verdict).toBe('intact-signer-not-vouched-for');
    const built = here.entries(folder).findLast(({ type }) => type === 'dossier-built');
    expect(built?.body).toMatchObject({ for: 'receiver', sha256: sha256(read('dossier.pdf')) });
    expect(read('letter.txt').toString('utf8')).toContain(sha256(read('dossier.pdf')));
    expect((await textOf(read('certificate.pdf'))).replace(/\s/g, '')).toContain(sha256(read('dossier.pdf')));
  });

  it('says nothing that the reader’s copy leaves out, and tells the person so', () => {
    const letter = read('letter.txt').toString('utf8');
    expect(letter).toContain('Warm when loaded');
    expect(letter).not.toMatch(/was told of the pulps/);
    expect(report.kept.join(' ')).toMatch(/the shipper was told of the pulps/);
  });

  it('keeps weak points and cautions out of the letter, and tells them', () => {
    const letter = read('letter.txt').toString('utf8').replace(/\s+/g, ' ');
    expect(report.weak.length).toBeGreaterThan(2);
    for (const { says } of report.weak) expect(letter).not.toContain(says);
    expect(report.cautions.join(' ')).toMatch(/not legal advice/);
    expect(letter).not.toMatch(/legal advice/);
  });

  it('lists what is to fill in as it stands in letter and certificate', async () => {
    expect(report.toFillIn).toEqual(['address']);
    const draft = (await textOf(read('certificate.pdf'))).replace(/\s+/g, ' ');
    expect(report.certificateToFillIn?.length).toBeGreaterThan(5);
    for (const blank of report.certificateToFillIn ?? []) expect(draft).toContain(`[________ ${blank}]`);
  });

  it('goes without the dossier when the person says so, in another language with a certificate to read', async () => {
    const more = await packed({
      letter: 'offer',
      amount: '3000 USD',
      language: 'es',
      paper: 'A4',
      dossier: false,
      certificate: true,
    });
    expect(readdirSync(more.folder).sort()).toEqual([
      'certificate-es.pdf',
      'certificate.pdf',
      'enclosures.txt',
      'letter.pdf',
      'letter.txt',
    ]);
    expect(readFileSync(join(more.folder, 'letter.txt'), 'utf8')).toMatch(
      /Ofrecemos USD 3,000 para liquidar/,
    );
  });

  it('to the insurer gets the copy for the insurer', async () => {
    const more = await packed({ letter: 'notice-to-insurer', to: 'Mocked Mutual' });
    const built = here.entries(folder).findLast(({ type }) => type === 'dossier-built');
    expect(built?.body).toMatchObject({ for: 'insurer' });
    expect(lastEntry()?.body).toMatchObject({ claim: 'c1', to: 'Mocked Mutual' });
    expect(more.toFillIn).toContain('address');
  });
});

describe('is refused with the record as it was', () => {
  beforeAll(claimed);
  const cases: [string, Partial<PackOptions>, string][] = [
    ['a kind of letter that there is not', { letter: 'apology' }, 'no letter "apology"'],
    ['an amount without its currency', { letter: 'offer', amount: '300' }, 'not an amount'],
    ['an amount where none belongs', { letter: 'status-report', amount: '300 USD' }, '--amount belongs to'],
    ['reasons of an offer that disallows nothing', { letter: 'offer', reasons: ['x'] }, 'gives no reasons'],
    ['a copy that there is not', { letter: 'denial', for: 'neighbour' }, 'no copy "neighbour"'],
    ['a claim that there is not', { letter: 'denial', claim: 'c7' }, 'no claim "c7"'],
    ['paper that there is not', { letter: 'denial', paper: 'Foolscap' }, 'no paper "Foolscap"'],
  ];
  it.each(cases)('%s', async (_, asked, said) => {
    const size = sizeNow();
    const target = out();
    await expect(packed({ ...asked, out: target })).rejects.toThrow(said);
    expect(existsSync(target)).toBe(false);
    expect(sizeNow()).toBe(size);
  });

  it('a folder that holds something', async () => {
    const target = out();
    mkdirSync(target);
    writeFileSync(join(target, 'mine.txt'), 'keep');
    await expect(packed({ letter: 'reservation', out: target })).rejects.toThrow('new or empty');
    expect(readdirSync(target)).toEqual(['mine.txt']);
  });

  it('a folder among the originals of the delivery', async () => {
    const target = join(folder, 'originals', 'answer');
    await expect(packed({ letter: 'reservation', out: target })).rejects.toThrow('not among the originals');
    expect(existsSync(target)).toBe(false);
  });

  it('a passphrase that does not come: nothing is left of the answer', async () => {
    const size = sizeNow();
    const target = out();
    const by = {
      identityFolder: here.at('identity'),
      passphrase: () => Promise.reject(new Error('nobody types')),
    };
    await expect(packed({ letter: 'denial', out: target }, by)).rejects.toThrow('nobody types');
    expect(existsSync(target)).toBe(false);
    expect(readdirSync(here.folder).filter((name) => name.startsWith('.answer'))).toEqual([]);
    expect(sizeNow()).toBe(size);
  });

  it('templates with a slip, named by file and line, before any dossier is built', async () => {
    mkdirSync(here.at('own/letters/en'), { recursive: true });
    writeFileSync(here.at('own/letters/en/denial.md'), 'Dear all:\n\n{{nothing-like-it}}\n');
    const size = sizeNow();
    await expect(packed({ letter: 'denial', templates: here.at('own') })).rejects.toMatchObject({
      code: 'bad-template',
      where: { file: here.at('own/letters/en/denial.md'), row: 3 },
    });
    expect(sizeNow()).toBe(size);
  });
});

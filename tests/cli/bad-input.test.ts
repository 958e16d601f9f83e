import { copyFileSync, mkdirSync, readFileSync, symlinkSync } from 'node:fs';
import { basename, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { attachedTo } from '../demo/attached.js';
import { FIXTURES } from '../demo/where.js';
import { type Yard, yard } from './a-delivery.js';

/** Every bad file of the fixtures, and a good one among them, taken in at once. */
let here: Yard;
let delivery: string;
let ran: Awaited<ReturnType<Yard['dossier']>>;
/** The same answer as data. */
let report: {
  items: { file: string; outcome: string; takenFor: string; readings: number }[];
  counts: Record<string, number>;
  problems: { message: string; where: { file?: string; row?: number; column?: string }; fix?: string }[];
};
let before: string;
const ledger = () => readFileSync(join(delivery, 'ledger.jsonl'), 'utf8');
const bad = (name: string) => join(FIXTURES, 'bad', name);
const LOG_900 = `Clock zone,America/Phoenix
Date time,Return air (°F)
2026-07-14 05:35,50.6
2026-07-14 05:40,900
2026-07-14 05:45,39.1
`;
const FILES = [
  'truncated.jpg',
  'empty.csv',
  'no-time.csv',
  'password.pdf',
  'zero.bin',
  'reading-900.csv',
  'log-bad-rows.csv',
  'not-an-image.jpg',
  'hostile-comment.jpg',
  'cmyk.jpg',
  'unknown-zone.yaml',
];

beforeAll(async () => {
  here = yard();
  delivery = await here.delivery();
  await here.dossier('record', 'pulp', '34.2F', '--line', 'romaine', '--stop', 'load-1', '-d', 'delivery');
  before = ledger();
  mkdirSync(here.at('bad'));
  for (const name of FILES) copyFileSync(bad(name), here.at('bad', name));
  here.put('bad/log-900.csv', LOG_900);
  here.put('bad/zz-good.txt', 'The last file of the folder.\n');
  // Out of the folder: a link to a file that is nobody's evidence, and one to the folder above.
  symlinkSync(here.put('secret.txt', 'not evidence'), here.at('bad', 'link.txt'));
  symlinkSync('..', here.at('bad', 'up'));
  ran = await here.dossier('collect', 'bad', '-d', 'delivery');
  await here.delivery('as-data');
  report = JSON.parse((await here.dossier('collect', 'bad', '-d', 'as-data', '--json')).out);
});
afterAll(() => here.end());

const problemsOf = (name: string) =>
  report.problems.filter(({ where }) => basename(where.file ?? '') === name);

describe('bad files among good ones', () => {
  it('end with 2, and nothing of it is a bug', () => {
    expect(ran.code).toBe(2);
    expect(ran.err).not.toMatch(/This is a bug|\n\s+at /);
  });

  it.each([
    ['truncated.jpg', /picture.*(?:end|whole|cut)/],
    ['empty.csv', /empty/],
    ['no-time.csv', /date or time; the columns are: 1 "Set point \(°F\)", 2 "Return air \(°F\)", 3 "Mode"/],
    ['password.pdf', /encrypted|password/],
    ['zero.bin', /empty/],
    ['link.txt', /symbolic link/],
    ['up', /symbolic link/],
  ])('%s: a message that names the file, what is wrong and what to do', (name, wrong) => {
    const [problem] = problemsOf(name);
    expect(problem?.message).toMatch(wrong);
    expect(problem?.fix).toMatch(/\w/);
    const line = ran.err
      .split('\n')
      .find((text) => text.includes(`${name}:`) || text.includes(`${name}, row`));
    expect(line).toMatch(wrong);
  });

  it('reading-900.csv: names the row as an editor counts it, the column and the range', () => {
    const problems = problemsOf('reading-900.csv');
    expect(problems.map(({ where }) => [where.row, where.column])).toEqual([[3, 'value']]);
    expect(problems[0]?.message).toMatch(/^900 °F .*−112 to 185 °F/);
    expect(report.items.find(({ file }) => file === 'reading-900.csv')?.readings).toBe(3);
  });

  it('log-bad-rows.csv: names each row that is left out, and says how many sensor faults there are', () => {
    const rows = problemsOf('log-bad-rows.csv').map(({ where, message }) => [where.row, message]);
    expect(rows).toEqual(
      expect.arrayContaining([
        [6, expect.stringContaining('2026-13-45')],
        [7, expect.stringMatching(/no time/)],
        [12, expect.stringContaining('not a row at all')],
      ]),
    );
    const item = report.items.find(({ file }) => file === 'log-bad-rows.csv');
    expect(item?.takenFor).toMatch(/^unit log: .*sensor faults? left out/);
  });

  it('log-900.csv: names the row, the column and 900 °F, and reads the others', () => {
    const problems = problemsOf('log-900.csv');
    expect(problems.map(({ where }) => where.row)).toEqual([4]);
    expect(problems[0]?.message).toMatch(/Return air \(°F\): 900 is not a temperature that air/);
    expect(report.items.find(({ file }) => file === 'log-900.csv')?.takenFor).toMatch(/^unit log/);
  });

  it('the rest is taken in, and so is what can be kept of the bad', () => {
    const outcome = new Map(report.items.map(({ file, outcome }) => [file, outcome]));
    for (const name of [...FILES, 'zz-good.txt']) expect(outcome.get(name), name).toBe('taken-in');
    expect(report.counts.refused).toBe(2);
    expect(ran.out).toMatch(/^\d+ taken in, \d+ readings in them; 0 already held.*; 2 refused\.$/m);
  });

  it('what a link leads to is never read', () => {
    expect(ledger()).not.toContain('secret.txt');
    expect(report.items.map(({ file }) => file)).not.toContain('link.txt');
  });

  it('nothing recorded before is lost', () => {
    expect(ledger().startsWith(before)).toBe(true);
    expect(ledger().length).toBeGreaterThan(before.length);
  });

  it('a photo whose comment reads like a PDF signature, text named .jpg and four inks are no trouble', () => {
    for (const name of ['hostile-comment.jpg', 'not-an-image.jpg', 'cmyk.jpg'])
      expect(problemsOf(name)).toEqual([]);
  });
});

describe('the dossier of that record', () => {
  it('builds, verifies, and names what it left out and what is damaged', async () => {
    const built = await here.dossier('build', '-d', 'delivery', '-o', 'out.pdf');
    expect(built.err).toMatch(/zero\.bin is not inside.*empty/);
    expect(built.err).toMatch(/truncated\.jpg \(e\d+\): the picture is damaged/);
    expect(built.code).toBe(0);
    expect((await here.dossier('verify', 'out.pdf')).code).toBe(0);
    const manifest = JSON.parse(
      (await attachedTo(readFileSync(here.at('out.pdf')))).get('manifest.json')?.toString() ?? '',
    );
    expect(manifest.leftOut).toMatchObject([{ name: 'zero.bin', bytes: 0, why: 'empty-file' }]);
  });
});

describe('facts that are wrong', () => {
  it('an unknown zone is refused by new, with file, row and field', async () => {
    const { code, err } = await here.dossier('new', 'wrong', '--file', bad('unknown-zone.yaml'));
    expect(code).toBe(2);
    expect(err).toMatch(
      /unknown-zone\.yaml, row \d+, stops\[0\]\.zone: "America\/Phenix" is not a time zone/,
    );
  });

  it('an unknown zone written into delivery.yaml later stops every command, and loses nothing', async () => {
    const was = readFileSync(join(delivery, 'delivery.yaml'), 'utf8');
    const kept = ledger();
    here.put('delivery/delivery.yaml', was.replace('America/Phoenix', 'America/Phenix'));
    for (const args of [
      ['gaps', 'delivery'],
      ['collect', 'bad/zz-good.txt', '-d', 'delivery'],
      ['build', '-d', 'delivery'],
    ]) {
      const { code, err } = await here.dossier(...args);
      expect(err).toMatch(/delivery\.yaml, row 5, stops\[0\]\.zone: "America\/Phenix" is not a time zone/);
      expect(code).toBe(2);
    }
    expect(ledger()).toBe(kept);
    here.put('delivery/delivery.yaml', was);
    expect((await here.dossier('gaps', 'delivery')).code).toBe(1);
  });
});

describe('a log that lacks a word', () => {
  beforeAll(() => {
    here.put('map.yaml', 'columns: { time: A, return-air: 2 }\nunits: F\nzone: America/Phoenix\n');
    here.put('map-of-nothing.yaml', 'columns: { returnair: 2 }\n');
  });

  it.each([
    ['--log-zone', 'Mars/Base', /"Mars\/Base" is not a time zone/],
    ['--log-unit', 'K', /"K" is not a unit.*\n.*F or C/],
    ['--map', 'nothing.yaml', /nothing\.yaml: there is no such file/],
    ['--map', 'map-of-nothing.yaml', /map-of-nothing\.yaml, row 1.*returnair/],
  ])('%s %s is refused with the choices', async (option, word, said) => {
    const { code, err } = await here.dossier('collect', 'bad/zz-good.txt', '-d', 'delivery', option, word);
    expect(err).toMatch(said);
    expect(code).toBe(2);
  });

  const rows = '2026-07-14 06:00,37.0\n2026-07-14 06:15,37.0\n2026-07-14 06:30,36.0\n';
  it.each([
    ['its zone', `Date time,Return air (°F)\n${rows}`, /zone/, ['--log-zone', 'America/Phoenix']],
    [
      'its unit',
      `Clock zone,America/Phoenix\nDate time,Return air\n${rows}`,
      /°F or °C/,
      ['--log-unit', 'F'],
    ],
    ['its headings', `A,B\n${rows}`, /columns are: 1 "A", 2 "B"/, ['--map', 'map.yaml']],
  ])('%s: is kept and says so, and is read once the word is given', async (what, text, wrong, word) => {
    const name = `for-${what.slice(4)}`;
    await here.delivery(name);
    await here.aboard(name, '2026-07-14T06:00', '2026-07-14T08:30');
    const file = here.put(`${name}.csv`, text);
    const first = await here.dossier('collect', file, '-d', name);
    expect(first.code).toBe(2);
    expect(first.err).toMatch(wrong);
    // The advice names the option that says it.
    expect(first.err).toContain(word[0]);
    expect((await here.dossier('temps', name)).code).toBe(1);
    const second = await here.dossier('collect', file, '-d', name, ...word);
    expect(second.err.replace(/^Next: .*$/m, '')).not.toMatch(wrong);
    expect(second.code).toBe(0);
    expect((await here.dossier('temps', name)).out).toMatch(/return air/);
    const third = await here.dossier('collect', file, '-d', name, ...word);
    expect(third.out).toMatch(/0 taken in/);
  });

  it('one file held by two pieces of evidence: the dossier still adds up', async () => {
    await here.dossier('build', '-d', 'for-zone', '-o', 'twice.pdf');
    expect((await here.dossier('verify', 'twice.pdf')).code).toBe(0);
  });
});

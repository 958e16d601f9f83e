import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { squeezed, textOf } from '../compose/pages.js';
import { FACTS, type Yard, yard } from './a-delivery.js';

const PHOTO = fileURLToPath(new URL('../../fixtures/photos/plain.jpg', import.meta.url));

let here: Yard;
beforeEach(async () => {
  here = yard();
  await here.delivery('one');
});
afterEach(() => here.end());

const at =
  (delivery: string) =>
  async (...args: string[]) => {
    const ran = await here.dossier(...args, '-d', delivery);
    expect([ran.code, ran.code === 0 ? '' : ran.err]).toEqual([0, '']);
    return ran;
  };
const one = at('one');
const two = at('two');
const pulp = (word: string, minute: string) => [
  ...['record', 'pulp', word, '--line', 'romaine', '--stop', 'load-1', '--at', `2026-07-14T04:${minute}`],
];
const copy = (from: string, to: string) => cpSync(here.at(from), here.at(to), { recursive: true });
const merge = (...more: string[]) => here.dossier('merge', 'two', '-d', 'one', ...more);
const entries = (delivery: string) => here.entries(here.at(delivery));
const fingerprint = async (delivery: string) => (await here.dossier('fingerprint', delivery)).out.trim();
const pulps = async (delivery: string) => {
  const { pulps: groups } = JSON.parse((await here.dossier('temps', delivery, '--json')).out);
  return groups.flatMap((group: { readings: { celsius: number }[] }) =>
    group.readings.map(({ celsius }) => Math.round((celsius * 9) / 5 + 32)),
  );
};

describe('two copies of one record that went apart', () => {
  beforeEach(async () => {
    await one(...pulp('36F', '10'));
    copy('one', 'two');
    await one(...pulp('37F', '11'));
    await two(...pulp('38F', '12'), '--entered-by', 'R. Vela');
    await two('collect', PHOTO);
  });

  it('the one takes what it lacks, as entries that name where they were', async () => {
    const there = entries('two');
    const ran = await merge();
    expect([ran.code, ran.err]).toEqual([0, '']);
    expect(ran.out).toContain('2 entries taken over');
    const [told, reading, photo] = entries('one').slice(-3);
    expect(told).toMatchObject({
      type: 'record-merged',
      body: {
        shared: 2,
        other: { size: 4 },
        own: { size: 3 },
        leaves: [expect.any(String), expect.any(String)],
      },
    });
    expect(reading).toMatchObject({
      type: 'reading-recorded',
      by: 'Test',
      origin: { merge: 3, entry: 2, by: 'R. Vela', at: Reflect.get(there[2] ?? {}, 'at'), evidence: 'e2' },
      body: { evidence: 'e3', temperature: { value: 38 } },
    });
    expect(photo).toMatchObject({
      type: 'evidence-received',
      origin: { entry: 3 },
      body: { evidence: 'e4' },
    });
    expect(await pulps('one')).toEqual([36, 37, 38]);
  });

  it('earlier fingerprints of both stay provable, in the record and in a dossier of it', async () => {
    await two('fingerprint', '--to', 'claims desk', '--how', 'e-mail');
    const lines = [await fingerprint('one'), await fingerprint('two')];
    await merge();
    await one('build', '-o', here.at('merged.pdf'));
    const together = await here.dossier('verify', 'one', 'merged.pdf', 'two');
    expect([together.code, together.out]).toEqual([0, expect.not.stringContaining('FAILED')]);
    for (const line of lines)
      for (const what of ['one', 'merged.pdf']) {
        const { code, out } = await here.dossier('verify', what, '--fingerprint', line);
        expect([what, code, out]).toEqual([what, 0, expect.stringContaining('INTACT')]);
      }
    const foreign = lines[1]?.replace(/.{8}$/, '00000000') ?? '';
    expect((await here.dossier('verify', 'one', '--fingerprint', foreign)).code).toBe(1);
    const pages = squeezed(await textOf(readFileSync(here.at('merged.pdf'))));
    expect(pages).toContain(squeezed('Other records of this delivery, merged in'));
    expect(pages).toMatch(/\d+takenoverfromanotherrecord/);
  });

  it('merging the same again adds nothing, in either direction', async () => {
    await merge();
    const before = readFileSync(here.at('one', 'ledger.jsonl'), 'utf8');
    expect((await merge()).out).toContain('Nothing is lacking here');
    expect(readFileSync(here.at('one', 'ledger.jsonl'), 'utf8')).toBe(before);
    await here.dossier('merge', 'one', '-d', 'two');
    expect(await pulps('two')).toEqual([36, 38, 37]);
    expect((await merge()).out).toContain('0 entries taken over');
    expect((await merge()).out).toContain('Nothing is lacking here');
    for (const record of ['one', 'two'])
      expect((await here.dossier('verify', record)).out).not.toContain('FAILED');
  });

  it('a dry run writes nothing', async () => {
    const before = readFileSync(here.at('one', 'ledger.jsonl'), 'utf8');
    expect((await merge('--dry-run')).out).toContain('2 entries would be taken over');
    expect(readFileSync(here.at('one', 'ledger.jsonl'), 'utf8')).toBe(before);
  });

  it('corrections and strikes come over with what they speak of, and of what both hold', async () => {
    await two('correct', 'e2', '39F', '--why', 'read again');
    await two('strike', 'e1', '--why', 'of another load');
    await merge();
    expect(await pulps('one')).toEqual([37, 39]);
    expect((await here.dossier('verify', 'one')).code).toBe(0);
  });

  it('a build of the merged record with a bag is whole', async () => {
    await two('strike', 'e3', '--why', 'of another load');
    await merge();
    await one('build', '--bag', '-o', here.at('merged.pdf'));
    const { code, out } = await here.dossier('verify', 'merged.pdf', 'merged.bag.zip');
    expect([code, out]).toEqual([0, expect.stringContaining('INTACT')]);
  });

  it('a ledger of the other that was changed afterwards is told of', async () => {
    await merge();
    const { sha256 } = Object(entries('one').at(-3)?.body.ledger);
    const kept = here.at('one', 'originals', `${sha256}.jsonl`);
    writeFileSync(kept, readFileSync(kept, 'utf8').replace('R. Vela', 'R. Vila'));
    const changed = await here.dossier('verify', 'one');
    expect([changed.code, changed.out]).toEqual([1, expect.stringMatching(/merged record.*was\s+changed/s)]);
    rmSync(kept);
    expect((await here.dossier('verify', 'one')).code).toBe(1);
  });
});

describe('two records that were begun apart', () => {
  beforeEach(async () => {
    await here.delivery('two');
  });

  it('the same file, and the same reading, are not doubled', async () => {
    for (const [own, number] of [
      [one, '4471908'],
      [two, '4471909'],
    ] as const) {
      await own('collect', PHOTO);
      await own(...pulp('36F', '10'));
      await own(
        'record',
        'seal',
        number,
        '--state',
        'applied',
        '--stop',
        'load-1',
        '--at',
        '2026-07-14T04:30',
      );
    }
    const ran = await merge();
    expect(ran.out).toContain('1 entry taken over');
    expect(await pulps('one')).toEqual([36]);
  });

  it('one that was mistyped in the one and right in the other is one reading', async () => {
    await one(...pulp('93F', '10'), '--sure');
    await one('correct', 'e1', '39F', '--why', 'digits turned round');
    await two(...pulp('39F', '10'));
    expect((await merge()).out).toContain('0 entries taken over');
    expect(await pulps('one')).toEqual([39]);
  });

  it.each<[string, string[][], string[][], RegExp]>([
    [
      'two arrivals at one stop',
      [['record', 'event', 'arrived', '--stop', 'drop-1', '--at', '2026-07-16T05:10']],
      [['record', 'event', 'arrived', '--stop', 'drop-1', '--at', '2026-07-16T05:40']],
      /e2: arrived at drop-1 is recorded already \(e1\)/,
    ],
    [
      'the same reading, put right in two ways',
      [pulp('39F', '10'), ['correct', 'e1', '38F', '--why', 'x']],
      [pulp('39F', '10'), ['correct', 'e1', '37F', '--why', 'y']],
      /entry 1: it was put right in both, and not alike/,
    ],
    [
      'what was struck here and counts there',
      [pulp('39F', '10'), ['strike', 'e1', '--why', 'x']],
      [pulp('39F', '10')],
      /e1: it was struck here, and counts there/,
    ],
    [
      'one photo, described in two ways',
      [
        ['collect', PHOTO],
        ['describe', 'e1', '--caption', 'Dock 3'],
      ],
      [
        ['collect', PHOTO],
        ['describe', 'e1', '--caption', 'Dock 4'],
      ],
      /e1: caption: here "Dock 3", there "Dock 4"/,
    ],
  ])('%s: the word here stays, and both are named', async (_, ones, twos, says) => {
    for (const args of ones) await one(...args);
    for (const args of twos) await two(...args);
    const before = await pulps('one');
    const ran = await merge();
    expect([ran.code, ran.err]).toEqual([0, expect.stringMatching(says)]);
    expect(await pulps('one')).toEqual(before);
    expect((await here.dossier('verify', 'one')).code).toBe(0);
    expect((await merge()).out).toContain('Nothing is lacking here');
  });

  it('facts that differ are named and left to a person', async () => {
    await here.delivery('three', FACTS.replace('T-7', 'T-9'));
    const ran = await here.dossier('merge', 'three', '-d', 'one');
    expect(ran.err).toMatch(/delivery\.yaml, equipment trailer number: here T-7, there T-9/);
    expect(readFileSync(here.at('one', 'delivery.yaml'), 'utf8')).toContain('T-7');
  });

  it('claims of two claimants are two claims', async () => {
    const claim = (who: string) => [
      'record',
      'claim',
      'received',
      who,
      '--as',
      'receiver',
      '--on',
      '2026-08-03',
    ];
    await one(...claim('Mock Elms'));
    await two(...claim('Fictional Forks'));
    await two('record', 'claim', 'offer', '400 USD', '--on', '2026-09-01');
    await merge();
    const noted = entries('one').flatMap(({ type, body }) => (type === 'claim-noted' ? [body.claim] : []));
    expect(noted).toEqual(['c1', 'c2', 'c2']);
  });
});

it('a signed statement is still the one that was signed', async () => {
  await here.dossier('identity', 'make', '--name', 'M. Ortega');
  copy('one', 'two');
  await one(...pulp('36F', '10'));
  await two(
    'record',
    'statement',
    'I was there.',
    '--sign',
    '--by',
    'M. Ortega',
    '--stop',
    'load-1',
    '--at',
    '2026-07-14T05:00',
  );
  await merge();
  const { code, out } = await here.dossier('verify', 'one');
  expect([code, out]).toEqual([0, expect.stringMatching(/note.*Statements that persons signed/s)]);
});

describe('refused, with nothing written', () => {
  it.each<[string, () => Promise<unknown>, string[], RegExp]>([
    [
      'a record of another delivery',
      () => here.delivery('two', FACTS.replace('2026-0714-A', 'L-4712')),
      ['merge', 'two'],
      /of delivery L-4712, and this one is of 2026-0714-A/,
    ],
    ['the same folder', async () => undefined, ['merge', 'one'], /the same folder/],
    ['a folder that is no record', async () => undefined, ['merge', 'nowhere'], /no record of a delivery/],
    [
      'a delivery folder taken in as files',
      async () => copy('one', 'two'),
      ['collect', 'two'],
      /not taken in as files\n.*dossier merge "two"/,
    ],
  ])('%s', async (_, before, args, says) => {
    await before();
    const ran = await here.dossier(...args, '-d', 'one');
    expect([ran.code, ran.err]).toEqual([2, expect.stringMatching(says)]);
    expect(entries('one')).toHaveLength(1);
  });

  it('one whose original was changed', async () => {
    copy('one', 'two');
    await two('collect', PHOTO);
    const { file } = Object(entries('two').at(-1)?.body);
    writeFileSync(here.at('two', 'originals', `${file.sha256}.jpg`), 'changed');
    const ran = await merge();
    expect([ran.code, ran.err]).toEqual([2, expect.stringMatching(/changed/)]);
    expect(entries('one')).toHaveLength(1);
  });
});

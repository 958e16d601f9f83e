import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { squeezed, textOf } from '../compose/pages.js';
import { type Yard, yard } from './a-delivery.js';

let here: Yard;
let delivery: string;
beforeEach(async () => {
  here = yard();
  delivery = await here.delivery();
});
afterEach(() => here.end());

const dossier = (...args: string[]) => here.dossier(...args, '-d', 'delivery');
const pulp = (word: string, ...more: string[]) =>
  dossier(
    'record',
    'pulp',
    word,
    '--line',
    'romaine',
    '--stop',
    'load-1',
    '--at',
    '2026-07-14T04:10',
    ...more,
  );
const last = () => here.entries(delivery).at(-1);

describe('correct', () => {
  it('enters the right value with the reason and keeps all else of the reading', async () => {
    await pulp('39C', '--sure', '--position', 'nose');
    const ran = await dossier('correct', 'e1', '39F', '--why', 'typed C for F');
    expect(ran.code).toBe(0);
    expect(ran.out).toContain('39°F');
    expect(ran.out).toContain('in place of pulp, 39°C');
    expect(last()).toMatchObject({
      type: 'entry-corrected',
      body: {
        entry: 1,
        why: 'typed C for F',
        becomes: {
          type: 'reading-recorded',
          body: {
            evidence: 'e1',
            temperature: { value: 39, unit: '°F' },
            line: 'romaine',
            place: { stop: 'load-1', position: 'nose' },
          },
        },
      },
    });
  });

  it('puts a time of day on the day of the entry, and changes the option alone', async () => {
    await pulp('39F');
    await dossier('correct', 'e1', '--at', '2026-07-14T05:40', '--why', 'read off the watch later');
    expect(last()?.body).toMatchObject({
      becomes: { body: { time: { instant: '2026-07-14T12:40:00.000Z' }, temperature: { value: 39 } } },
    });
  });

  it.each([
    ['an id that is not there', ['correct', 'e9', '39F', '--why', 'x'], /there is no evidence e9/],
    ['a file or the facts', ['correct', '#0', '39F', '--why', 'x'], /is not a reading/],
    ['a word that is no temperature', ['correct', 'e1', 'cold', '--why', 'x'], /not a temperature/],
  ])('refuses %s and writes nothing', async (_, args, says) => {
    await pulp('39F');
    const before = here.entries(delivery).length;
    const ran = await dossier(...args);
    expect([ran.code, ran.err]).toEqual([2, expect.stringMatching(says)]);
    expect(here.entries(delivery)).toHaveLength(before);
  });
});

describe('strike', () => {
  it('takes an entry out of what counts, and its own strike brings it back', async () => {
    await pulp('39F');
    expect((await dossier('strike', 'e1', '--why', 'of another load')).out).toContain('does not count');
    expect(last()).toMatchObject({ type: 'entry-struck', body: { entry: 1, why: 'of another load' } });
    const again = await dossier('correct', 'e1', '40F', '--why', 'x');
    expect([again.code, again.err]).toEqual([2, expect.stringContaining('was struck')]);
    await dossier('strike', '#2', '--why', 'the strike was a mistake');
    expect((await dossier('correct', 'e1', '40F', '--why', 'x')).code).toBe(0);
  });

  it('names the rows that rest on a table, and strikes them with it when told to', async () => {
    here.put(
      'pulps.csv',
      'time,kind,value,stop,line\n2026-07-14 04:10,pulp,39F,load-1,romaine\n2026-07-14 04:12,pulp,38F,load-1,romaine\n',
    );
    await here.dossier('collect', here.at('pulps.csv'), '-d', 'delivery');
    const table = here
      .entries(delivery)
      .find(({ type, body }) => type === 'evidence-received' && body.kind === 'readings')?.body.evidence;
    const refused = await dossier('strike', String(table), '--why', 'of another load');
    expect([refused.code, refused.err]).toEqual([2, expect.stringContaining('carries others')]);
    const done = await dossier('strike', String(table), '--with-dependents', '--why', 'of another load');
    expect(done.code).toBe(0);
    expect(here.entries(delivery).filter(({ type }) => type === 'entry-struck')).toHaveLength(3);
  });
});

describe('from a notes file', () => {
  const notes = (text: string, ...more: string[]) =>
    dossier('record', '--notes', here.put('notes.txt', text), ...more);

  it('corrects and strikes what its lines say, with file and row in the reason, and only once', async () => {
    await pulp('93F', '--sure');
    await pulp('38F', '--position', 'nose');
    const text = '# put right\ncorrect e1 39F: digits turned round\nstrike e2 why of another load\n';
    const ran = await notes(text);
    expect([ran.code, ran.err]).toEqual([0, '']);
    expect(ran.out).toContain('2 recorded');
    const entered = here.entries(delivery).slice(-3);
    expect(entered.slice(0, 2)).toMatchObject([
      { type: 'entry-corrected', body: { entry: 1, why: 'digits turned round (notes.txt, row 2)' } },
      { type: 'entry-struck', body: { entry: 2, why: 'of another load (notes.txt, row 3)' } },
    ]);
    expect((await notes(text)).out).toContain('0 recorded; 2 recorded before');
    expect(here.entries(delivery).slice(-3)).toEqual(entered);
  });

  it.each([
    ['correct e1 39F', /row 1: it gives no reason/],
    ['correct 39F: x', /row 1: it names no entry/],
    ['correct e1: x', /row 1: it gives no value/],
    ['strike: x', /row 1: it names no entry/],
    ['strike e9: x', /row 1: there is no evidence e9/],
    ['correct e1 39C: x', /row 1, temperature: .*other unit/],
  ])('refuses "%s"', async (line, says) => {
    await pulp('39F');
    const before = here.entries(delivery);
    const ran = await notes(line);
    expect([ran.code, ran.err]).toEqual([2, expect.stringMatching(says)]);
    expect(here.entries(delivery)).toEqual(before);
  });

  it('says in a dry run what it would do', async () => {
    await pulp('39F');
    expect((await notes('strike e1: x', '--dry-run')).out).toContain(
      '1 understood, 0 refused; nothing was written.',
    );
    expect(last()?.type).toBe('reading-recorded');
  });

  it('a mended copy of notes with the right value adds nothing to what was corrected', async () => {
    await notes('2026-07-14 load-1\n04:10 pulp 37F romaine\n');
    await dossier('correct', 'e2', '39F', '--why', 'read again');
    const ran = await notes('2026-07-14 load-1\n04:10 pulp 39F romaine\n');
    expect(ran.out).toContain('0 recorded; 1 recorded before');
  });
});

it('a form that answers a box otherwise than one before corrects it, with a reason', async () => {
  const form = (name: string, text: string, ...more: string[]) =>
    dossier('record', '--checklist', here.put(name, text), ...more);
  await form('first.txt', '2: 2026-07-14\n9: 37\n15: 04:10\n');
  const mended = ['second.txt', '2: 2026-07-14\n9: 39\n15: 04:10\n'] as const;
  const refused = await form(...mended);
  expect([refused.code, refused.err]).toEqual([
    2,
    expect.stringMatching(/box 9: an earlier form.*\(e2\)\n.*--why/),
  ]);
  const done = await form(...mended, '--why', 'read the sheet again');
  expect([done.code, done.err]).toEqual([0, '']);
  expect(last()).toMatchObject({
    type: 'entry-corrected',
    body: { entry: 2, why: 'read the sheet again', becomes: { body: { temperature: { value: 39 } } } },
  });
  expect((await form(...mended)).out).toContain('recorded before');
});

describe('refused with exit code 2 and nothing written', () => {
  it.each<[string, string[][], string[], RegExp]>([
    ['correcting what is not there', [], ['correct', 'e9', '39F'], /there is no evidence e9/],
    ['correcting an entry that is not there', [], ['correct', '#41', '39F'], /there is no entry #41/],
    [
      'correcting what was struck',
      [['strike', 'e1', '--why', 'x']],
      ['correct', 'e1', '40F'],
      /e1 was struck/,
    ],
    ['correcting nothing', [], ['correct', 'e1', '39F'], /e1 says so already/],
    ['striking what is not there', [], ['strike', 'e9'], /there is no evidence e9/],
    ['striking what was struck', [['strike', 'e1', '--why', 'x']], ['strike', 'e1'], /was struck already/],
    ['striking the facts', [], ['strike', '#0'], /change delivery\.yaml/],
    [
      'striking a file that a claim rests on',
      [
        [
          'record',
          'claim',
          'received',
          'Mock Elms',
          '--as',
          'receiver',
          '--on',
          '2026-08-03',
          '--paper',
          'e2',
        ],
      ],
      ['strike', 'e2'],
      /carries others: #3 \(claim-noted\)/,
    ],
    [
      'striking the receipt of a claim of which more was said',
      [
        ['record', 'claim', 'received', 'Mock Elms', '--as', 'receiver', '--on', '2026-08-03'],
        ['record', 'claim', 'offer', '400 USD', '--on', '2026-09-01'],
      ],
      ['strike', '#3'],
      /carries others: #4 \(claim-noted\)/,
    ],
    [
      'describing what was struck',
      [['strike', 'e2', '--why', 'wrong load']],
      ['describe', 'e2', '--caption', 'x'],
      /struck by Test \(entry 3\): wrong load/,
    ],
    [
      'a claim on a paper that was struck',
      [['strike', 'e2', '--why', 'wrong load']],
      ['record', 'claim', 'received', 'Mock Elms', '--as', 'receiver', '--paper', 'e2'],
      /e2 was struck/,
    ],
    ['admitting what counts', [], ['admit', 'e2'], /counts already/],
  ])('%s', async (_, before, args, says) => {
    await pulp('39F');
    await dossier('collect', here.put('letter.txt', 'CLAIM\nWe claim 400 USD.\n'));
    for (const one of before) expect((await dossier(...one)).code).toBe(0);
    const entries = here.entries(delivery);
    const why = args[0] === 'record' ? [] : ['--why', 'y'];
    const ran = await dossier(...args, ...why);
    expect([ran.code, ran.err]).toEqual([2, expect.stringMatching(says)]);
    expect(here.entries(delivery)).toEqual(entries);
  });

  it('as a process too', async () => {
    const entries = here.entries(delivery);
    const ran = await here.process('strike', 'e9', '--why', 'y', '-d', 'delivery');
    expect([ran.code, ran.err]).toEqual([2, expect.stringMatching(/there is no evidence e9/)]);
    expect(here.entries(delivery)).toEqual(entries);
  });

  it('a correction is corrected by its own number or that of its entry, and struck by its own', async () => {
    await pulp('39F');
    await dossier('correct', 'e1', '38F', '--why', 'x');
    const ran = await dossier('correct', '#2', '37F', '--why', 'y');
    expect([ran.code, ran.err]).toEqual([0, '']);
    expect(last()?.body).toMatchObject({ entry: 1, becomes: { body: { temperature: { value: 37 } } } });
    expect((await dossier('strike', '#3', '--why', '38 was right')).code).toBe(0);
    const { pulps } = JSON.parse((await here.dossier('temps', 'delivery', '--json')).out);
    expect(pulps[0].mean).toBeCloseTo((38 - 32) / 1.8, 9);
  });

  it('a claim after one that was struck has a number of its own', async () => {
    const claim = (who: string) =>
      dossier('record', 'claim', 'received', who, '--as', 'receiver', '--on', '2026-08-03');
    await claim('Mock Elms');
    await dossier('strike', '#1', '--why', 'of another load');
    expect((await claim('Fictional Forks')).code).toBe(0);
    expect(last()?.body.claim).toBe('c2');
  });
});

it('the trail tells of both values and the reason', async () => {
  await pulp('39C', '--sure');
  await dossier('correct', 'e1', '39F', '--why', 'typed C for F');
  await dossier('strike', 'e1', '--why', 'of another load');
  const { out } = await here.dossier('trail', 'delivery');
  expect(out).toContain('temperature: 39 °C → 39 °F');
  expect(out).toContain('why: typed C for F');
  expect(out).toContain('entry 1 does not count');
});

describe('a dossier of what was put right', () => {
  const build = async (...more: string[]) => {
    const file = here.at(`${more.at(-1) ?? 'own'}.pdf`);
    const built = await dossier('build', '-o', file, ...more);
    expect([built.code, built.err]).toEqual([0, expect.any(String)]);
    const text = squeezed(await textOf(readFileSync(file)));
    const verified = await here.dossier('verify', file);
    expect(verified.out).toContain('INTACT');
    return text;
  };

  it('is whole, counts the right value alone and lists both; a copy for outsiders is silent on what was struck', async () => {
    await pulp('93F', '--sure', '--by', 'R. Quill');
    await pulp('39F', '--by', 'Someone Elsewhere');
    await dossier('correct', 'e1', '39F', '--why', 'turned the digits round');
    await dossier('strike', 'e2', '--why', 'of another load');
    const own = await build();
    expect(own).toContain(squeezed('1 corrected, 1 struck'));
    expect(own).toContain(squeezed('turned the digits round'));
    expect(own).toContain(squeezed('Someone Elsewhere'));
    const copy = await build('--for', 'receiver');
    expect(copy).not.toContain(squeezed('Someone Elsewhere'));
    expect(copy).toContain(
      squeezed('1 corrected, 1 struck: those that are not in this copy stand in its ledger as hash only'),
    );
  });

  it('a copy without positions shows none of a photo that was struck, and a bag is whole', async () => {
    const photo = new URL('../../fixtures/photos/plain.jpg', import.meta.url);
    await dossier('collect', fileURLToPath(photo));
    await dossier('strike', 'e1', '--why', 'of another load');
    const own = await build('--bag');
    expect(own).toContain(squeezed('gps latitude: 32.69'));
    expect((await here.dossier('verify', here.at('--bag.pdf'), here.at('--bag.bag.zip'))).code).toBe(0);
    const copy = await build('--for', 'receiver');
    for (const place of ['32.69', '114.6']) expect(copy).not.toContain(place);
    const ledger = await here.dossier('verify', 'receiver.pdf', '--json');
    expect(ledger.code).toBe(0);
  });
});

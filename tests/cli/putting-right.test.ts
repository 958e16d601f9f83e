import { readFileSync } from 'node:fs';
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
  });
});

import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Output } from '../../src/cli/output.js';
import { settleDoubts } from '../../src/cli/settle-doubts.js';
import { recordReading } from '../../src/jobs/record-reading.js';
import { FACTS, type Yard, yard } from './a-delivery.js';

const PLANNED = FACTS.replace(
  'zone: America/Phoenix',
  'zone: America/Phoenix, planned: 2026-07-14T04:00',
).replace('zone: America/Chicago', 'zone: America/Chicago, planned: 2026-07-16T06:00');

const silent: Output = {
  line: () => undefined,
  note: () => undefined,
  progress: () => undefined,
  json: () => undefined,
  jsonList: () => ({ item: () => undefined, end: () => undefined }),
  document: () => undefined,
  style: (_, text) => text,
  width: 80,
};

let here: Yard;
let delivery: string;
beforeEach(async () => {
  here = yard();
  delivery = await here.delivery('delivery', PLANNED);
});
afterEach(() => here.end());

const dossier = (...args: string[]) => here.dossier(...args, '-d', 'delivery');
const count = () => here.entries(delivery).filter(({ type }) => type === 'reading-recorded').length;
const ROMAINE = ['--line', 'romaine', '--stop', 'load-1', '--at', '2026-07-14T04:10'];

describe('with nobody to ask, the command refuses, names the ways on, and writes nothing', () => {
  it.each([
    ['39 °C for 39 °F', ['pulp', '39C', ...ROMAINE], /102\.2 °F.*in the other unit.*39\.0 °F\n.*--sure/],
    [
      'a month typed wrong',
      ['pulp', '36F', '--stop', 'load-1', '--at', '2026-06-14T04:10'],
      /29 days before.*\n.*--sure/,
    ],
    [
      'no time, months later',
      ['pulp', '36F', '--stop', 'load-1'],
      /no time is given.*days ago.*\n.*--at TIME.*--at now/,
    ],
  ])('%s', async (_, args, says) => {
    const ran = await dossier('record', ...args);
    expect([ran.code, ran.err]).toEqual([2, expect.stringMatching(says)]);
    expect(count()).toBe(0);
  });

  it('an event that is there already, with the evidence that holds it', async () => {
    const arrived = ['record', 'event', 'arrived', '--stop', 'drop-1', '--at'];
    await dossier(...arrived, '2026-07-16T05:10');
    const ran = await dossier(...arrived, '2026-07-16T05:40');
    expect([ran.code, ran.err]).toEqual([
      2,
      expect.stringMatching(/arrived at drop-1 is recorded already \(e1\)\n.*correct e1.*--sure/),
    ]);
    expect(count()).toBe(1);
    expect((await dossier(...arrived, '2026-07-16T05:40', '--sure')).code).toBe(0);
  });

  it.each([
    ['--sure', ['pulp', '39C', ...ROMAINE, '--sure']],
    ['--at now', ['pulp', '36F', '--stop', 'load-1', '--at', 'now']],
    ['the right time', ['pulp', '36F', '--stop', 'load-1', '--at', '2026-07-14T04:10']],
  ])('takes %s', async (_, args) => {
    expect((await dossier('record', ...args)).code).toBe(0);
    expect(count()).toBe(1);
  });

  it('a correction too, but not for what was doubtful before and stays', async () => {
    await dossier('record', 'pulp', '39F', ...ROMAINE);
    const ran = await dossier('correct', 'e1', '39C', '--why', 'x');
    expect([ran.code, ran.err]).toEqual([2, expect.stringContaining('other unit')]);
    await dossier('correct', 'e1', '39C', '--why', 'x', '--sure');
    expect((await dossier('correct', 'e1', '--by', 'R. Vela', '--why', 'x')).code).toBe(0);
  });
});

describe('rows of files are refused one by one, and the rest goes on', () => {
  const expected =
    (code: number, says: RegExp, readings: number) => (ran: { code: number | null; err: string }) => {
      expect([ran.code, ran.err]).toEqual([code, expect.stringMatching(says)]);
      expect(count()).toBe(readings);
    };

  it('of notes', async () => {
    here.put(
      'notes.txt',
      '2026-07-14 load-1\n04:10 pulp 36F romaine nose\n04:12 pulp 39C romaine middle\n04:30 arrived\n04:31 arrived\n',
    );
    const notes = (...more: string[]) => dossier('record', '--notes', here.at('notes.txt'), ...more);
    expected(
      2,
      /notes\.txt, row 3, temperature: .*other unit[\s\S]*row 5, arrived: .*recorded already\n.*Leave one out/,
      2,
    )(await notes());
    expected(0, /^$/, 4)(await notes('--sure'));
    expected(0, /^$/, 4)(await notes('--sure'));
  });

  it('of a readings table', async () => {
    here.put(
      'pulps.csv',
      'time,kind,value,stop,line\n2026-07-14 04:10,pulp,36F,load-1,romaine\n2026-07-14 04:12,pulp,39C,load-1,romaine\n2026-06-14 04:13,pulp,36F,load-1,romaine\n',
    );
    const collect = (...more: string[]) => dossier('collect', here.at('pulps.csv'), ...more);
    expected(
      2,
      /pulps\.csv, row 3, temperature: [\s\S]*row 4, --at: it is 29 days before/,
      1,
    )(await collect());
    const table = here.entries(delivery).find(({ type }) => type === 'evidence-received')?.body;
    expect(table).toMatchObject({ rows: 1, rowsLeftOut: 2 });
    const again = await collect('--sure');
    expect(again.out).toContain('the same bytes as e1; 2 rows of it added');
    expected(0, /^$/, 3)(again);
    expected(0, /^$/, 3)(await collect('--sure'));
    const rows = here
      .entries(delivery)
      .map(({ body }) => body.source)
      .filter(Boolean);
    expect(rows).toEqual([2, 3, 4].map((row) => ({ is: 'row', evidence: 'e1', row })));
  });

  /** Boxes 9 and 10 are the pulps of romaine in the nose and the middle, box 15 their time. */
  it('of a typed checklist', async () => {
    here.put('filled.txt', '9: 36\n10: 39C\n15: 04:10\n');
    const checklist = (...more: string[]) => dossier('record', '--checklist', here.at('filled.txt'), ...more);
    const ran = await checklist();
    expected(2, /box 10: .*other unit.*\n.*--sure/, 1)(ran);
    expect(ran.out).toContain('1 recorded from e1; 1 to be looked at again, not recorded.');
    expected(0, /^$/, 2)(await checklist('--sure'));
    expected(0, /^$/, 2)(await checklist('--sure'));
    const sources = here
      .entries(delivery)
      .flatMap(({ body }) => (body.source === undefined ? [] : [body.source]));
    expect(sources).toEqual([9, 10].map((row) => ({ is: 'row', evidence: 'e1', row })));
  });

  it('of a checklist that is asked box by box: the same answer a second time is meant', async () => {
    const { recordChecklist } = await import('../../src/cli/commands/record-checklist.js');
    const answers: Readonly<Record<string, string[]>> = {
      9: ['36'],
      10: ['39C', '39C'],
      11: ['38C', '38F'],
      15: ['04:10'],
    };
    const asked: string[] = [];
    await recordChecklist(
      {
        output: silent,
        exit: () => undefined,
        interruption: () => new AbortController().signal,
        now: () => new Date('2026-07-14T13:00:00Z'),
      },
      { folder: delivery, by: 'Test', now: () => new Date('2026-07-14T13:00:00Z') },
      { checklist: true, dryRun: false, sure: false, json: true },
      async (question) => {
        const [box = ''] = question.split(' ');
        asked.push(box);
        return answers[box]?.shift() ?? '';
      },
    );
    const last = asked.slice(-2);
    expect(last).toEqual(['10', '11']);
    expect(
      here
        .entries(delivery)
        .slice(1)
        .map(({ body }) => body.temperature),
    ).toEqual([
      { value: 36, unit: '°F' },
      { value: 39, unit: '°C' },
      { value: 38, unit: '°F' },
    ]);
  });
});

describe('on a terminal the person', () => {
  const now = () => new Date('2026-11-30T12:00:00Z');
  const record = (word: string, fields: Record<string, unknown>, answers: string[]) => {
    const asked: string[] = [];
    const work = settleDoubts(
      silent,
      { word, fields },
      false,
      (typed, sure) =>
        recordReading({ folder: delivery, kind: 'pulp', ...typed, enteredBy: 'Test', now, sure }),
      async (question) => {
        asked.push(question);
        return answers.shift() ?? '';
      },
    );
    return work.then(({ said }) => ({ said, asked }));
  };
  const at = '2026-07-14T04:10';

  it('says that it is right', async () =>
    expect((await record('39C', { line: 'romaine', stop: 'load-1', at }, ['yes'])).said).toContain('39C'));
  it('types the right value, or time', async () => {
    expect((await record('39C', { line: 'romaine', stop: 'load-1', at }, ['39F'])).said).toContain('39F');
    const { said, asked } = await record('36F', { line: 'romaine', stop: 'load-1' }, [at]);
    expect(asked).toEqual(['When was it? (a time, or now)']);
    expect(said).toContain('4:10 AM');
  });
  it('is asked about each thing, one after the other', async () => {
    const { asked } = await record('39C', { line: 'romaine', stop: 'load-1' }, ['y', 'now']);
    expect(asked).toHaveLength(2);
  });
  it('leaves it, and nothing is written', async () => {
    await expect(record('39C', { line: 'romaine', stop: 'load-1', at }, ['no'])).rejects.toThrow(
      'nothing was written',
    );
    expect(count()).toBe(0);
  });
});

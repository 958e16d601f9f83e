import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { toInstant } from '../../src/core/model/time.js';
import { assessDelivery } from '../../src/jobs/assess.js';
import { type ClockStepInput, recordClockStep } from '../../src/jobs/clock-step.js';
import { collect } from '../../src/jobs/collect.js';
import { newDelivery } from '../../src/jobs/new-delivery.js';
import { strike } from '../../src/jobs/strike.js';
import { DELIVERY_YAML } from '../intake/a-delivery.js';

const root = await mkdtemp(join(tmpdir(), 'clock-step-'));
afterAll(() => rm(root, { recursive: true, force: true }));
const now = () => new Date('2026-07-17T12:00:00Z');
const by = 'R. Quill';
const at = toInstant(now().getTime());
const MINUTE = 60_000;

const clock = (minutes: number) =>
  `2026-07-14 ${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
/** From four o'clock in steps of five minutes; put back by two hours after ten: line 76 of the file. */
const minutes = Array.from({ length: 160 }, (_, i) => 240 + i * 5 - (i > 72 ? 120 : 0));
const LOG = [
  'Clock zone,America/Phoenix',
  'Time,Set Point (C),Return Air (C)',
  ...minutes.map((minute, i) => `${clock(minute)},2.2,${(2 + (i % 7) / 10).toFixed(1)}`),
  '',
].join('\n');

let folder = '';
let made = 0;
beforeEach(async () => {
  made += 1;
  folder = join(root, `d${made}`);
  await writeFile(join(root, 'facts.yaml'), DELIVERY_YAML);
  await newDelivery({ folder, file: join(root, 'facts.yaml'), by, now });
  const inbox = join(root, `in${made}`);
  await mkdir(inbox);
  await writeFile(join(inbox, 'unit.csv'), LOG);
  const options = { logZone: undefined, logUnit: undefined, progress: () => undefined };
  const report = await collect({ folder, by, now, paths: [inbox], ...options });
  const told = report.problems.filter(({ message }) => message.includes('clock of the log was put back'));
  expect(told).toHaveLength(1);
});

const say = (change: Partial<ClockStepInput> = {}) =>
  recordClockStep({
    ...{ folder, by, now, row: undefined, log: undefined, wrong: 'after', addSeconds: undefined },
    why: 'the display showed Pacific time',
    ...change,
  });
const logOf = async () => (await assessDelivery({ folder, by, now, at })).logs[0];
const ends = async () => {
  const log = await logOf();
  const [from = 0, to = 0] = [log?.times.at(0), log?.times.at(-1)];
  return { rows: log?.times.length, hours: (to - from) / 60 / MINUTE, first: new Date(from).toISOString() };
};

describe('a clock that was set on the way', () => {
  it('hides rows until a person says which part is wrong', async () => {
    expect(await ends()).toEqual({ rows: 136, hours: 11.25, first: '2026-07-14T11:00:00.000Z' });
    expect((await logOf())?.clockSteps).toMatchObject([{ row: 76, seconds: -7200, hiddenRows: 24 }]);
  });

  it.each([
    ['after', '2026-07-14T11:00:00.000Z'],
    ['before', '2026-07-14T09:00:00.000Z'],
  ] as const)(
    'is put right %s its line, every row counts, and the entry can be struck',
    async (wrong, first) => {
      const recorded = await say({ wrong });
      expect(recorded).toMatchObject({
        log: 'e1',
        step: { row: 76 },
        addSeconds: wrong === 'after' ? 7200 : -7200,
      });
      expect(await ends()).toEqual({ rows: 160, hours: 13.25, first });
      await strike({
        folder,
        targets: [`#${recorded.entry}`],
        why: 'other part',
        withDependents: false,
        enteredBy: by,
        now,
      });
      expect(await ends()).toMatchObject({ rows: 136 });
    },
  );

  it('takes another size where a person knows it', async () => {
    await say({ addSeconds: 7260 });
    expect((await logOf())?.clockShifts).toMatchObject([{ rows: { from: 76 }, addSeconds: 7260 }]);
  });

  it.each<[string, Partial<ClockStepInput>, string]>([
    ['a line at which nothing was set', { row: 75 }, 'line 75 is none'],
    ['a log that is not there', { log: 'e9' }, 'there is no unit log e9'],
    ['nothing to add', { addSeconds: 0 }, 'nothing would be added'],
  ])('refuses %s', async (_, change, message) => {
    await expect(say(change)).rejects.toThrow(message);
  });

  it('refuses to put right what was put right already', async () => {
    await say();
    await expect(say()).rejects.toThrow('or all was put right');
  });
});

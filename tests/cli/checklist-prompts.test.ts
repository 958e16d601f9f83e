import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { recordChecklist } from '../../src/cli/commands/record-checklist.js';
import type { Output } from '../../src/cli/output.js';
import { checklistQuestions } from '../../src/jobs/checklist/enter.js';
import { FACTS, type Yard, yard } from './a-delivery.js';

const PLANNED = FACTS.replace(
  'zone: America/Phoenix',
  'zone: America/Phoenix, planned: 2026-07-14T04:00',
).replace('zone: America/Chicago', 'zone: America/Chicago, planned: 2026-07-16T06:00');
const now = () => new Date('2026-07-17T20:00:00Z');

let here: Yard;
let folder: string;
let count = 0;
/** Numbers of boxes by their words. */
let box: (words: RegExp) => number;
beforeAll(() => {
  here = yard();
});
afterAll(() => here.end());
beforeEach(async () => {
  count += 1;
  folder = await here.delivery(`d${count}`, PLANNED);
  const questions = await checklistQuestions({ folder, by: 'Test', now });
  box = (words) => questions.find((one) => words.test(one.words))?.number ?? Number.NaN;
});

/** Sits down at the form and types what is told for each box, one after the other; Enter for all else. */
async function sit(typed: Record<number, string[]>) {
  const told: string[] = [];
  const asked: number[] = [];
  const say = (text = '') => void told.push(text);
  const output: Output = {
    line: say,
    note: say,
    document: say,
    progress: () => undefined,
    json: () => undefined,
    jsonList: () => ({ item: () => undefined, end: () => undefined }),
    style: (_, text) => text,
    width: 100,
  };
  await recordChecklist(
    { output, exit: () => undefined, now, interruption: () => new AbortController().signal },
    { folder, by: 'Test', now },
    { checklist: true, dryRun: false, sure: false, json: false },
    async (question, fallback) => {
      const number = Number(question.split(' ')[0]);
      asked.push(number);
      if (asked.length > 400) throw new Error('it asks without end');
      return typed[number]?.shift() ?? fallback ?? '';
    },
  );
  return { told: told.join('\n'), asked };
}
const readings = () =>
  here
    .entries(folder)
    .filter(({ type }) => type === 'reading-recorded')
    .map(({ body }) => body);
const saved = () => join(folder, 'checklist-answers.txt');

describe('the dock form typed in box by box', () => {
  it('opens with what it is and how long it takes', async () => {
    const { told } = await sit({ 1: ['q'] });
    expect(told).toMatch(/^The dock form, box by box: \d+ boxes, none filled in yet, about \d+ minutes\./);
    expect(told).toContain('q saves and stops');
    expect(existsSync(saved())).toBe(false);
  });

  it('asks again at once for what a box cannot hold', async () => {
    const [arrived, nose, bracing] = [box(/load-1: Arrived/), box(/load-1, romaine: nose/), box(/Held by/)];
    const { asked, told } = await sit({
      [arrived]: ['four', '04:00'],
      [nose]: ['warm', '36'],
      [bracing]: ['9', '2'],
    });
    for (const number of [arrived, nose, bracing])
      expect(asked.filter((one) => one === number)).toHaveLength(2);
    expect(told).toContain('four" is not a time');
    expect(told).toContain('"9" is none of the choices');
    expect(readings().map(({ kind }) => kind)).toEqual(['event', 'pulp', 'bracing']);
  });

  it('of a bad day asks at the day, and ends', async () => {
    const [day, arrived] = [box(/load-1: Day/), box(/load-1: Arrived/)];
    const { asked, told } = await sit({ [day]: ['tomorrowish', '7/14'], [arrived]: ['04:00'] });
    expect(asked.filter((one) => one === day)).toHaveLength(2);
    expect(told).toContain('"tomorrowish" is not a day of the calendar');
    expect(readings()).toMatchObject([{ kind: 'event', time: { instant: '2026-07-14T11:00:00.000Z' } }]);
  });

  it('goes back, and skips the rest of a part', async () => {
    const [opened, arrived] = [box(/load-1: Doors opened/), box(/load-1: Arrived/)];
    const { asked } = await sit({ [arrived]: ['04:00', '04:05', 's'], [opened]: ['b'] });
    expect(asked.slice(0, 6)).toEqual([1, arrived - 1, arrived, opened, arrived, opened]);
    expect(readings()).toMatchObject([{ time: { instant: '2026-07-14T11:05:00.000Z' } }]);
  });

  it('stops with all saved, goes on from there, and leaves nothing behind when it is entered', async () => {
    const [arrived, opened, nose] = [
      box(/load-1: Arrived/),
      box(/load-1: Doors opened/),
      box(/load-1, romaine: nose/),
    ];
    const { told } = await sit({ 1: ['M. Ortega'], [arrived]: ['04:00'], [opened]: ['q'] });
    expect(told).toContain('The same command goes on from there.');
    expect(readings()).toEqual([]);
    expect(readFileSync(saved(), 'utf8')).toBe(`1: M. Ortega\n${arrived}: 04:00\n`);
    expect((await here.dossier('verify', folder)).code).toBe(0);
    const second = await sit({ [nose]: ['36'] });
    expect(second.told).toContain('2 filled in before');
    expect(second.asked[0]).toBe(opened);
    expect(readings()).toMatchObject([
      { kind: 'event', by: 'M. Ortega' },
      { kind: 'pulp', by: 'M. Ortega' },
    ]);
    expect(existsSync(saved())).toBe(false);
  });
});

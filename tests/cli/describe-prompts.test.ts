import { existsSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { promptForEvidence } from '../../src/cli/describe-prompts.js';
import type { Output } from '../../src/cli/output.js';
import { choiceLines } from '../../src/cli/prompts.js';
import { subjectChoices } from '../../src/cli/subject-words.js';
import { documentSubject, subjectName } from '../../src/core/model/evidence.js';
import { collect } from '../../src/jobs/collect.js';
import { type Yard, yard } from './a-delivery.js';

let here: Yard;
let folder: string;
const now = () => new Date('2026-07-17T20:00:00Z');
beforeAll(async () => {
  here = yard();
  folder = await here.delivery();
  const photo = await sharp({ create: { width: 400, height: 400, channels: 3, background: '#7a4' } })
    .jpeg()
    .withExif({ IFD2: { DateTimeOriginal: '2026:07:14 05:42:10', OffsetTimeOriginal: '-07:00' } })
    .toBuffer();
  const paths = [here.put('seal.jpg', photo), here.put('note.txt', 'BILL OF LADING\nNo. 1\n')];
  await collect({ folder, by: 'Test', now, paths });
});
afterAll(() => here.end());

async function asked(answers: string[], named: string[] = []) {
  const lines: string[] = [];
  const shown: string[] = [];
  const say = (text = '') => void lines.push(text);
  const output: Output = {
    line: say,
    note: say,
    document: say,
    progress: () => undefined,
    json: () => undefined,
    jsonList: () => ({ item: () => undefined, end: () => undefined }),
    style: (_, text) => text,
    width: 60,
  };
  await promptForEvidence(output, { folder, by: 'Test', now }, named, {
    ask: async (_, fallback) => answers.shift() ?? fallback ?? 'q',
    show: async (path) => shown.push(path) > 0,
  });
  return { lines, shown };
}

describe('describe, asking', () => {
  it('shows local time, the file to look at, and what is proposed with its meaning', async () => {
    const { lines } = await asked(['q']);
    const text = lines.join('\n');
    expect(text).toContain('seal.jpg, Tue Jul 14, 2026, 5:42 AM MST');
    const path = lines.find((line) => line.endsWith('.jpg'))?.trim() ?? '';
    expect(path.startsWith(join(folder, 'originals'))).toBe(true);
    expect(existsSync(path)).toBe(true);
    for (const line of lines.filter((one) => !one.includes(folder)))
      expect(line.length).toBeLessThanOrEqual(140);
  });

  it('opens the file when asked to, lists subjects with what they mean, and records the answer', async () => {
    const { lines, shown } = await asked(['o', '?', 'seal', 'load-1', 'q']);
    expect(shown).toHaveLength(1);
    expect(existsSync(shown[0] ?? '')).toBe(true);
    expect(lines.join(' ').replaceAll(/\s+/g, ' ')).toContain('a thermometer in or on the product');
    expect(lines.at(-1)).toMatch(/^1 of \d described\.$/);
  });

  it('says what a proposed document is', async () => {
    const { lines } = await asked(['q'], ['e2']);
    expect(lines.join(' ').replaceAll(/\s+/g, ' ')).toContain('bill-of-lading: the bill of lading');
  });
});

describe('choices on a terminal', () => {
  it.each(['photo', 'document'] as const)('of a %s each have a meaning and keep within the width', (of) => {
    const names = of === 'photo' ? subjectName.options : documentSubject.options;
    const lines = subjectChoices(of, 60);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(60);
    for (const name of names) expect(lines.some((line) => line.includes(` ${name} `))).toBe(true);
  });

  it('are set in columns', () => {
    expect(choiceLines(['one', 'two', 'three', 'four', 'five'], 30)).toEqual([
      '   1 one       4 four',
      '   2 two       5 five',
      '   3 three',
    ]);
    expect(choiceLines(['a-very-long-choice-of-words'], 10)).toEqual(['   1 a-very-long-choice-of-words']);
  });
});

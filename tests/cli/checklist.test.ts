import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Yard, yard } from './a-delivery.js';

let here: Yard;
let delivery: string;
beforeAll(async () => {
  here = yard();
  delivery = await here.delivery();
});
afterAll(() => here.end());

const readings = () => here.entries(delivery).filter(({ type }) => type === 'reading-recorded');

describe('checklist', () => {
  it('writes the form and says where and how many pages', async () => {
    const { code, out } = await here.dossier(
      'checklist',
      'delivery',
      '--language',
      'es',
      '--paper',
      'A4',
      '--json',
    );
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ pages: 2 });
    expect(JSON.parse(out).file).toMatch(/checklist-es\.pdf$/);
  });

  it('refuses a language that there is not, with the choices', async () => {
    const { code, err } = await here.dossier('checklist', 'delivery', '--language', 'nl');
    expect(code).toBe(2);
    expect(err).toContain('en, es');
  });
});

describe('the words of version 0.1', () => {
  it.each([
    [['sheet', 'delivery', '--json'], '"dossier sheet" is now "dossier checklist".'],
    [
      ['record', 'round', '37F', '--stop', 'load-1', '-d', 'delivery'],
      '"dossier record round" is now "dossier record check".',
    ],
    [
      ['record', '-d', 'delivery', '--dry-run', '--sheet', 'empty.txt'],
      '"dossier record --sheet" is now "dossier record --checklist".',
    ],
  ])('%j answers, and says the new word in one line', async (args, line) => {
    const here = yard();
    await here.delivery();
    here.put('empty.txt', '1: M. Ortega\n');
    const { code, err } = await here.dossier(...args);
    expect(code).toBe(0);
    expect(err.split('\n').filter((one) => one.includes('is now'))).toEqual([line]);
    here.end();
  });

  it('are no more than words where they stand elsewhere', async () => {
    const here = yard();
    await here.delivery();
    const { code, err } = await here.dossier('record', 'statement', 'round', '-d', 'delivery', '--json');
    expect(code).toBe(0);
    expect(err).not.toContain('is now');
    here.end();
  });
});

describe('record --checklist', () => {
  const filled = '1: M. Ortega\n2: 2026-07-14\n3: 3:58\n8: 6:10\n';

  it('with --dry-run says how the answers are understood and writes nothing', async () => {
    here.put('filled.txt', filled);
    const { code, out } = await here.dossier(
      'record',
      '--checklist',
      'filled.txt',
      '--dry-run',
      '-d',
      'delivery',
    );
    expect(code).toBe(0);
    expect(out).toContain('2 understood; nothing was written.');
    expect(readings()).toEqual([]);
  });

  it('writes nothing when one answer is not understood, and names its box', async () => {
    here.put('wrong.txt', `${filled}4: half past\n`);
    const { code, out, err } = await here.dossier('record', '--checklist', 'wrong.txt', '-d', 'delivery');
    expect(code).toBe(2);
    expect(`${out}${err}`).toContain('box 4');
    expect(readings()).toEqual([]);
  });

  it('takes the file in as evidence, and its readings with the box as their row', async () => {
    const { code } = await here.dossier('record', '--checklist', 'filled.txt', '-d', 'delivery');
    expect(code).toBe(0);
    expect(readings().map(({ body }) => body)).toMatchObject([
      { kind: 'event', event: 'arrived', by: 'M. Ortega', source: { is: 'row', row: 3 } },
      { kind: 'event', event: 'departed', by: 'M. Ortega', source: { is: 'row', row: 8 } },
    ]);
  });

  it('of the same file again says that it is recorded, and adds nothing', async () => {
    const before = here.entries(delivery).length;
    const { code, out } = await here.dossier('record', '--checklist', 'filled.txt', '-d', 'delivery');
    expect(code).toBe(0);
    expect(out).toMatch(/All 2 were recorded before, from this file as e1; nothing added\./);
    expect(here.entries(delivery)).toHaveLength(before);
    const dry = await here.dossier('record', '--checklist', 'filled.txt', '--dry-run', '-d', 'delivery');
    expect(dry.out).toContain('2 understood, 2 of them recorded before; nothing was written.');
  });

  it('of a longer copy of the file adds only what is new', async () => {
    here.put('longer.txt', `${filled}4: 4:10\n`);
    const { code, out } = await here.dossier(
      'record',
      '--checklist',
      'longer.txt',
      '-d',
      'delivery',
      '--json',
    );
    expect(code).toBe(0);
    expect(JSON.parse(out).readings).toMatchObject([{ held: true, evidence: 'e2' }, {}, { held: true }]);
    expect(JSON.parse(out).readings[1]).not.toHaveProperty('held');
    expect(readings()).toHaveLength(3);
  });

  it('without a file and without a person to ask, says what to do', async () => {
    const { code, err } = await here.dossier('record', '--checklist', '-d', 'delivery');
    expect(code).toBe(2);
    expect(err).toContain('Name a file with the answers');
  });
});

describe('timeline', () => {
  it('shows each time on the clock of its place', async () => {
    const { code, out } = await here.dossier('timeline', 'delivery');
    expect(code).toBe(0);
    expect(out).toMatch(/Jul 14, 2026, 3:58 AM MST/);
    expect(out).toContain('on the dock');
    expect(out).toContain('2 h 12 min');
  });

  it('says what was seen at the unit, and how a statement begins', async () => {
    await here.delivery('told');
    const record = (...words: string[]) =>
      here.dossier('record', ...words, '--stop', 'load-1', '--at', '2026-07-14T06:00', '-d', 'told');
    await record('check', '37.5F', '--set-point', '36F', '--alarm', 'A12', '--caption', 'Fuel stop');
    await record('check', '--fuel', '3/4');
    await record('statement', `I was on the dock. ${'And I saw it. '.repeat(30)}`);
    const { out } = await here.dossier('timeline', 'told', '--json');
    const labels = JSON.parse(out).items.map(({ label }: { label: string }) => label);
    expect(labels).toContain('air 37.5 °F; set point 36 °F; alarms A12; Fuel stop');
    expect(labels).toContain('fuel 75 %');
    expect(labels.at(-1)).toMatch(/^I was on the dock\. And I saw it\..*…$/);
    expect([...labels.at(-1)]).toHaveLength(81);
  });

  it.each([
    ['--json', /"delivery": "2026-0714-A"/],
    ['--csv', /^local,zone,utc,[\s\S]*2026-07-14T03:58:00-07:00,America\/Phoenix,2026-07-14T10:58:00\.000Z/],
    ['--svg', /^<svg [\s\S]*Arrived[\s\S]*<\/svg>/],
  ])('%s', async (option, expected) => {
    const { code, out } = await here.dossier('timeline', 'delivery', option);
    expect(code).toBe(0);
    expect(out).toMatch(expected);
  });

  it('one way of output at a time', async () => {
    expect((await here.dossier('timeline', 'delivery', '--csv', '--svg')).code).toBe(2);
  });
});

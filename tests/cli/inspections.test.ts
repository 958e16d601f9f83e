import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Yard, yard } from './a-delivery.js';

let here: Yard;
let delivery: string;
beforeEach(async () => {
  here = yard();
  delivery = await here.delivery('delivery');
  await record('event', 'arrived', '--stop', 'drop-1', '--at', '2026-07-16T06:00');
});
afterEach(() => here.end());

const record = (...args: string[]) => here.dossier('record', ...args, '-d', 'delivery');
const inspection = (...args: string[]) =>
  record('inspection', 'L-4471', '--line', 'romaine', '--stop', 'drop-1', ...args);
const AT = ['--at', '2026-07-16T10:15'];
const last = () => here.entries(delivery).at(-1);

describe('record inspection', () => {
  it('writes down what a certificate states of one lot', async () => {
    const ran = await inspection(
      ...[...AT, '--by', 'A. Quill, inspector', '--count', '480 cartons', '--samples', '24'],
      ...[
        '--defect',
        'tipburn 8% serious 3%',
        'decay 2%',
        '--total',
        '10% serious 5%',
        '--pulps',
        '41F to 44F',
      ],
      ...['--certificate', 'T-118', '--requested-by', 'receiver', '--requested-at', '2026-07-16T08:20'],
    );
    expect(ran.out).toContain('inspection, L-4471, romaine, drop-1');
    expect(ran.out).toContain('tipburn percent 8 serious 3, decay percent 2');
    expect(ran.out).toContain('requested at Thu Jul 16, 2026, 8:20 AM CDT');
    expect(last()).toMatchObject({
      type: 'reading-recorded',
      body: {
        kind: 'inspection',
        lot: 'L-4471',
        count: { amount: '480', unit: 'cartons' },
        samples: 24,
        defects: [
          { name: 'tipburn', percent: 8, serious: 3 },
          { name: 'decay', percent: 2 },
        ],
        total: { percent: 10, serious: 5 },
        pulps: { low: { value: 41, unit: '°F' }, high: { value: 44, unit: '°F' } },
        requestedAt: { instant: '2026-07-16T13:20:00.000Z' },
      },
    });
  });

  it('holds what a dumping certificate shows', async () => {
    await inspection(
      ...[...AT, '--dumped', '60 cartons', '--worthless', '--certified-by', 'two-disinterested-persons'],
      ...[
        '--marks',
        'Green Mesa',
        '--shipper',
        'Green Mesa Packing, Yuma AZ',
        '--requested-by',
        'Plainwater',
      ],
    );
    expect(last()).toMatchObject({
      body: {
        dumped: { amount: '60', unit: 'cartons' },
        noCommercialValue: true,
        certifiedBy: 'two-disinterested-persons',
        marks: 'Green Mesa',
      },
    });
  });

  it.each([
    [
      'a percentage above 100',
      [...AT, '--defect', 'tipburn 108%'],
      '--defect: tipburn: a percentage is between',
    ],
    ['serious damage above its total', [...AT, '--defect', 'tipburn 8% serious 9%'], 'part of the damage'],
    [
      'serious damage above the total',
      [...AT, '--total', '8% serious 9%'],
      '--total: serious damage is part',
    ],
    ['a defect without a percentage', [...AT, '--defect', 'tipburn'], '"tipburn" is not a defect with'],
    [
      'a request after it',
      [...AT, '--requested-at', '2026-07-16T12:00'],
      '--requested-at: it is asked for after',
    ],
    ['an end before it', [...AT, '--ended', '2026-07-16T09:00'], '--ended: it ends before it begins'],
    ['a certificate that is not on file', [...AT, '--on', 'e31'], 'there is no evidence e31'],
    ['an inspection before arrival', ['--at', '2026-07-16T05:00'], 'before the truck arrived there'],
  ])('refuses %s', async (_, args, message) => {
    const before = here.entries(delivery).length;
    const ran = await inspection(...args);
    expect(ran.code).toBe(2);
    expect(ran.err).toContain(message);
    expect(here.entries(delivery)).toHaveLength(before);
  });

  it('is corrected and struck, and the trail says what was changed', async () => {
    await inspection(...AT, '--defect', 'tipburn 8% serious 3%', 'decay 2%');
    const corrected = await here.dossier(
      ...['correct', 'e2', '--defect', 'tipburn 9% serious 3%', 'decay 2%'],
      ...['--requested-at', '2026-07-16T08:20', '--why', 'read the next line', '-d', 'delivery'],
    );
    expect(corrected.code).toBe(0);
    expect((await here.dossier('trail', 'delivery')).out).toContain('defects tipburn percent: 8 → 9');
    expect((await here.dossier('strike', 'e2', '--why', 'of another load', '-d', 'delivery')).code).toBe(0);
  });
});

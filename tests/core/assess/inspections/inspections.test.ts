import { describe, expect, it } from 'vitest';
import { inspectionsOf } from '../../../../src/core/assess/inspections/inspections.js';
import { readMilestones } from '../../../../src/core/assess/milestones.js';
import type { DeliveryInput } from '../../../../src/core/model/delivery.js';
import type { EventName, InspectedDefect } from '../../../../src/core/model/evidence.js';
import { causeLines, causeSources, defectLines } from '../../../../src/core/reference/data/defects.js';
import { defectNamed } from '../../../../src/core/reference/defects.js';
import { goodsTable } from '../../../../src/core/reference/goods.js';
import { at, DAY_START, HOUR, items, state } from '../made.js';

const ICEBERG: Partial<DeliveryInput> = {
  stops: [
    { id: 'load-1', does: 'load', place: 'Cooler A', zone: 'UTC' },
    { id: 'drop-1', does: 'unload', place: 'Warehouse B', zone: 'UTC', planned: '2026-07-16T09:00' },
  ],
  lines: [{ id: 'iceberg', goods: 'lettuce-iceberg', from: 'load-1', to: 'drop-1' }],
  sale: 'fob',
};

const inspection = (defects: InspectedDefect[], more: object = {}) => ({
  kind: 'inspection' as const,
  lot: 'L-1',
  line: 'iceberg',
  place: { stop: 'drop-1' },
  time: at(50),
  defects,
  documents: [],
  ...more,
});
const event = (event: EventName, hour: number, stop: string) => ({
  kind: 'event' as const,
  event,
  time: at(hour),
  place: { stop },
});
const results = (...list: Parameters<typeof items>) => {
  const made = state(items(...list), ICEBERG);
  return inspectionsOf(made, readMilestones(made, DAY_START + 1000 * HOUR));
};
const one = (defects: InspectedDefect[], more: object = {}) => {
  const [result] = results(inspection(defects, more));
  if (result === undefined) throw new Error('no inspection');
  return result;
};
const remarks = (defects: InspectedDefect[], more: object = {}) =>
  one(defects, more).remarks.map(({ is }) => is);

describe('totals of a lot', () => {
  it.each<[string, InspectedDefect[], object, object]>([
    [
      'condition and permanent defects apart; decay is serious damage',
      [
        { name: 'tipburn', percent: 8, serious: 3 },
        { name: 'Decay', percent: 2 },
        { name: 'Seedstems', percent: 4 },
      ],
      {},
      {
        condition: { low: 10, high: 10 },
        serious: { low: 5, high: 5 },
        decay: { low: 2, high: 2 },
        permanent: { low: 4, high: 4 },
      },
    ],
    [
      'serious damage stated nowhere can be all of it',
      [{ name: 'tipburn', percent: 8 }],
      {},
      { condition: { low: 8, high: 8 }, serious: { low: 0, high: 8 } },
    ],
    [
      'a defect of unknown nature on both sides at most',
      [
        { name: 'tipburn', percent: 8, serious: 0 },
        { name: 'oedema', percent: 3 },
      ],
      {},
      { condition: { low: 8, high: 11 }, permanent: { low: 0, high: 3 }, serious: { low: 0, high: 0 } },
    ],
    [
      'what the certificate says of the nature goes first',
      [{ name: 'scars', percent: 3, nature: 'condition' }],
      {},
      { condition: { low: 3, high: 3 }, permanent: { low: 0, high: 0 } },
    ],
    [
      'a total without defects bounds every part',
      [],
      { total: { percent: 14, serious: 6 } },
      { condition: { low: 0, high: 14 }, serious: { low: 0, high: 6 }, decay: { low: 0, high: 6 } },
    ],
    [
      'tenths add up as they are written',
      [
        { name: 'tipburn', percent: 0.1, serious: 0 },
        { name: 'bruising', percent: 0.2 },
      ],
      {},
      { condition: { low: 0.3, high: 0.3 } },
    ],
  ])('%s', (_, defects, more, expected) => expect(one(defects, more).totals).toMatchObject(expected));

  it('rows of one lot and certificate are one inspection; of another certificate they are two', () => {
    const rows = [
      inspection([{ name: 'tipburn', percent: 8 }], { certificate: 'T-1' }),
      inspection([{ name: 'decay', percent: 2 }], { certificate: 'T-1', time: at(51) }),
      inspection([{ name: 'decay', percent: 3 }], { certificate: 'T-2', appeal: true, time: at(60) }),
    ];
    expect(results(...rows).map(({ certificate, defects }) => [certificate, defects.length])).toEqual([
      ['T-1', 2],
      ['T-2', 1],
    ]);
  });
});

describe('what a reader must know', () => {
  it.each<[string, InspectedDefect[], object, string[]]>([
    ['nothing more', [{ name: 'tipburn', percent: 8, serious: 3 }], {}, []],
    [
      'a total that the defects do not come to',
      [{ name: 'tipburn', percent: 8, serious: 3 }],
      { total: { percent: 9 } },
      ['total-differs'],
    ],
    ['a defect of unknown nature', [{ name: 'oedema', percent: 3, serious: 1 }], {}, ['nature-not-known']],
    ['serious damage stated nowhere', [{ name: 'tipburn', percent: 8 }], {}, ['serious-not-stated']],
    ['decay alone is serious', [{ name: 'decay', percent: 8 }], {}, []],
    [
      'one defect with two percentages',
      [
        { name: 'tipburn', percent: 8, serious: 1 },
        { name: 'Tipburn', percent: 9 },
      ],
      {},
      ['same-defect-differs'],
    ],
  ])('%s', (_, defects, more, expected) => expect(remarks(defects, more)).toEqual(expected));

  it('an inspection before arrival or after disposal, which was recorded all the same', () => {
    const list = [
      event('arrived', 48, 'drop-1'),
      event('disposed', 60, 'drop-1'),
      inspection([], { time: at(47) }),
      inspection([], { time: at(61), lot: 'L-2' }),
    ];
    expect(results(...list).map((result) => result.remarks.map(({ is }) => is))).toEqual([
      ['before-arrival'],
      ['after-disposal'],
    ]);
  });

  it('days in transit, lateness against the plan, and hours from arrival to inspection', () => {
    const [result] = results(
      event('departed', 1, 'load-1'),
      event('arrived', 49, 'drop-1'),
      inspection([], { time: at(52) }),
    );
    expect(result).toMatchObject({
      transitSeconds: 48 * 3600,
      // 2026-07-14T11:00Z and 49 h are 2026-07-16T12:00Z; planned for 09:00Z.
      lateSeconds: 3 * 3600,
      afterArrivalSeconds: 3 * 3600,
    });
  });
});

describe('a certificate tells when an inspection was asked for and made', () => {
  const events = (more: object) => {
    const made = state(items(inspection([{ name: 'tipburn', percent: 8 }], more)), ICEBERG);
    return readMilestones(made, DAY_START + 1000 * HOUR).events.map((one) => [one.event, one.stop, one.at]);
  };
  const hour = (hours: number) => DAY_START + hours * HOUR;
  it.each([
    [
      'at a place of unloading, with its end',
      { requestedAt: at(49), ended: at(51) },
      [
        ['inspection-requested', 'drop-1', hour(49)],
        ['inspected', 'drop-1', hour(51)],
      ],
    ],
    ['of an appeal not', { appeal: true }, []],
    ['of dumping alone not', { defects: [], dumped: { amount: '4', unit: 'cartons' } }, []],
    ['at origin not', { place: { stop: 'load-1' } }, []],
  ])('%s', (_, more, expected) => expect(events(more)).toEqual(expected));
});

describe('a comparison with good delivery', () => {
  it.each<[string, object, object]>([
    ['at destination', {}, { is: 'compared', paragraph: '46.44(a)(2)', answer: 'within' }],
    ['at origin', { place: { stop: 'load-1' } }, { is: 'not-compared', why: 'at-origin' }],
    ['of no line', { line: undefined }, { is: 'not-compared', why: 'no-line' }],
    ['without defects', { defects: [] }, { is: 'not-compared', why: 'no-defects' }],
  ])('%s', (_, more, expected) =>
    expect(one([{ name: 'tipburn', percent: 8, serious: 3 }], more).goodDelivery).toMatchObject(expected),
  );
});

describe('the names of defects', () => {
  it.each([
    ['Gray Mold Rot', 'gray-mold'],
    ['soft rot', 'decay'],
    ['Tip burn, outer leaves', 'tipburn'],
    ['russet spotting', 'russet-spotting'],
    ['seed stems', 'seedstems'],
    ['Pudrición', 'decay'],
    ['parrot marks', undefined],
  ])('%s', (name, id) => expect(defectNamed(name)?.id).toBe(id));
});

describe('what usually causes a defect', () => {
  it('is told by texts that name the goods first, each with its address', () => {
    const [tipburn] = one([{ name: 'tipburn', percent: 8 }]).defects;
    expect(tipburn?.causes.map(({ cause }) => cause)).toEqual(['field', 'warm']);
    expect(tipburn?.causes.every(({ address }) => address.startsWith('http'))).toBe(true);
  });

  it('names defects and goods that there are', () => {
    const ids = new Set(
      defectLines
        .trim()
        .split('\n')
        .map((line) => line.split('|')[0]),
    );
    const goods = new Set(['*', ...goodsTable.map(({ key }) => key)]);
    for (const line of causeLines) {
      expect(line.defects.filter((one) => !ids.has(one))).toEqual([]);
      expect(line.goods.filter((one) => !goods.has(one))).toEqual([]);
      expect(causeSources[line.source].address).toMatch(/^https?:/);
    }
  });
});

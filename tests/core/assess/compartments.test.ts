import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/core/assess/assess.js';
import type { DeliveryInput } from '../../../src/core/model/delivery.js';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import type { UnitLog } from '../../../src/core/model/unit-log.js';
import { at, HASH, instantAt, items, log, rulesOf, state } from './made.js';

/** Frozen peas in front at −10 ± 5 °F, kale in the rear at 34 ± 2 °F; 20 ft of 52 ft in front. */
const trailer: Partial<DeliveryInput> = {
  equipment: {
    trailer: {
      number: 'T-118',
      insideLength: '52 ft',
      insideWidth: '99 in',
      compartments: [{ id: 'front', bulkhead: '20 ft' }, { id: 'rear' }],
    },
  },
  lines: [
    {
      id: 'peas',
      goods: 'peas, frozen',
      from: 'load-1',
      to: 'drop-1',
      compartment: 'front',
      instruction: { setPoint: '-10 °F', tolerance: '5 °F' },
    },
    {
      id: 'kale',
      goods: 'kale',
      from: 'load-1',
      to: 'drop-1',
      compartment: 'rear',
      instruction: { setPoint: '34 °F', tolerance: '2 °F' },
    },
  ],
};
const LOAD = { stop: 'load-1' };
const course = [
  { kind: 'event', event: 'doors-closed', place: LOAD, time: at(2) },
  { kind: 'event', event: 'departed', place: LOAD, time: at(3) },
  { kind: 'event', event: 'doors-opened', place: { stop: 'drop-1' }, time: at(11) },
] as const;
const hours = Array.from({ length: 37 }, (_, i) => 2 + i / 4);
const logOf = (
  compartment: string | undefined,
  air: (hour: number) => number,
  setPoint: number,
): UnitLog => ({
  ...log(hours, { 'return-air': hours.map(air), 'set-point': hours.map(() => setPoint) }),
  ...omitUndefined({ compartment }),
});
const front = logOf('front', () => -9, -10);
const rear = logOf('rear', (hour) => (hour > 8 ? 44 : 34), 34);
const rows = (from: number, to: number, line: string): Item => ({
  kind: 'pattern',
  pattern: 'straight',
  rows: { from, to },
  blocks: [],
  line,
  place: LOAD,
  time: at(1),
});
type Item = Parameters<typeof items>[number];
const assessed = (logs: UnitLog[], ...more: Item[]) =>
  assess({
    state: state(items(...course, ...more), trailer),
    logs,
    ruleSet: { ruleSet: rulesOf({ needs: { event: 'arrived' } }), sha256: HASH },
    at: instantAt(40),
  });
const findings = (logs: UnitLog[], id: string, ...more: Item[]) =>
  assessed(logs, ...more)
    .findings.filter((one) => one.id === id)
    .map(({ compartment }) => compartment);

describe('the air of each compartment', () => {
  it('is held against the instruction of its own lines', () => {
    const { temperatures } = assessed([front, rear]);
    expect(temperatures.map(({ compartment, band }) => [compartment, band?.lines])).toEqual([
      ['front', ['peas']],
      ['rear', ['kale']],
    ]);
    expect(temperatures.map(({ excursions }) => excursions.length)).toEqual([0, 1]);
    expect(temperatures[1]?.excursions[0]?.id).toBe('e900-rear-x1');
  });

  it('is found in range in one and out of range in the other', () => {
    expect(findings([front, rear], 'air-in-band')).toEqual(['front']);
    expect(findings([front, rear], 'air-out-of-band')).toEqual(['rear']);
  });

  it('is said not to be logged where no log has it', () => {
    expect(findings([front], 'compartment-not-logged')).toEqual(['rear']);
    expect(findings([logOf(undefined, () => 34, 34)], 'compartment-not-logged')).toEqual(['front', 'rear']);
    expect(findings([front, rear], 'compartment-not-logged')).toEqual([]);
  });

  it('is the air around its own lines alone: margins and pulps against air', () => {
    const pulp = {
      kind: 'pulp',
      line: 'kale',
      temperature: { value: 35, unit: '°F' },
      from: 'driver',
    } as const;
    const { margins, product } = assessed(
      [front, rear],
      { ...pulp, place: LOAD, time: at(1) },
      { ...pulp, place: { stop: 'drop-1' }, time: at(11.5) },
    );
    expect(margins?.map(({ line, compartment }) => [line, compartment])).toEqual([
      ['peas', 'front'],
      ['kale', 'rear'],
    ]);
    expect(product?.map(({ line, compartment }) => [line, compartment])).toEqual([['kale', 'rear']]);
  });

  it('is not compared with that of another compartment as if both sensors were in one box', () => {
    expect(assessed([front, rear]).sensorDifferences).toEqual([]);
  });
});

describe('the set point of each compartment', () => {
  const display = (compartment: string | undefined, value: number): Item => ({
    kind: 'set-point',
    temperature: { value, unit: '°F' },
    shownBy: 'display',
    place: { ...LOAD, ...omitUndefined({ compartment }) },
    time: at(2.5),
  });

  it('agrees in each, though the two differ by 44 °F', () => {
    const { setPoints } = assessed([front, rear]);
    expect(setPoints.verdict).toBe('agree');
    expect(findings([front, rear], 'set-point-agrees')).toEqual(['front', 'rear']);
  });

  it('differs where a display of one shows another, and agrees in the other still', () => {
    expect(findings([front, rear], 'set-point-differs', display('rear', 38))).toEqual(['rear', 'rear']);
    expect(findings([front, rear], 'set-point-agrees', display('rear', 38))).toEqual(['front']);
  });

  it('is not decided by a display that names no compartment', () => {
    expect(assessed([front, rear], display(undefined, 34)).setPoints.differences).toEqual([]);
  });

  it('counts the last look at the display of each compartment before departure', () => {
    const first = { ...display('front', 0), time: at(2.2) };
    const { words } = assessed([], first, display('front', -10), {
      ...display('rear', 34),
      time: at(2.1),
    }).setPoints;
    expect(words.filter(({ source }) => source === 'display').map(({ compartment }) => compartment)).toEqual([
      'front',
      'rear',
    ]);
  });
});

describe('the floor of each compartment', () => {
  it('begins at its bulkhead: 20 ft is 6.096 m', () => {
    const plan = assessed([], rows(1, 4, 'peas'), rows(5, 8, 'kale')).loading;
    const [first] = plan?.pallets.filter(({ row }) => row === 5) ?? [];
    expect(first?.y).toBeCloseTo(6.096, 9);
    // Four rows of 48 in: 4 × 1.2192 m.
    const used = expect.closeTo(4.8768, 9);
    expect(plan?.compartments?.map(({ compartment, from, used }) => [compartment, from, used])).toEqual([
      ['front', 0, used],
      ['rear', 6.096, expect.closeTo(10.9728, 9)],
    ]);
  });

  it('does not hold rows that reach past the bulkhead', () => {
    const closed = { kind: 'event', event: 'doors-closed', place: LOAD, time: at(2) } as const;
    expect(findings([], 'load-does-not-fit', rows(1, 6, 'peas'), rows(7, 8, 'kale'), closed)).toEqual([
      'front',
    ]);
    expect(findings([], 'load-does-not-fit', rows(1, 5, 'peas'), rows(6, 8, 'kale'), closed)).toEqual([]);
  });

  it('takes the compartment of a row from what was noted where it names no line', () => {
    const plan = assessed([], { ...rows(1, 2, ''), place: { ...LOAD, compartment: 'rear' } }).loading;
    expect(plan?.rows.map(({ line, compartment }) => [line, compartment])).toEqual([
      ['kale', 'rear'],
      ['kale', 'rear'],
    ]);
  });
});

import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/core/assess/assess.js';
import type { DeliveryInput } from '../../../src/core/model/delivery.js';
import type { LegWeights } from '../../../src/core/model/results.js';
import type { UnitLog } from '../../../src/core/model/unit-log.js';
import { at, DAY_START, HASH, HOUR, instantAt, items, log, rulesOf, state } from './made.js';

type Item = Parameters<typeof items>[number];
const event = (
  name: 'arrived' | 'doors-opened' | 'doors-closed' | 'departed',
  stop: string,
  hour: number,
): Item => ({
  kind: 'event',
  event: name,
  place: { stop },
  time: at(hour),
});
const COURSE: Item[] = [
  event('arrived', 'load-1', 0),
  event('doors-closed', 'load-1', 2),
  event('departed', 'load-1', 3),
  event('arrived', 'drop-0', 6),
  event('doors-opened', 'drop-0', 6.25),
  event('doors-closed', 'drop-0', 7),
  event('departed', 'drop-0', 7.25),
  event('arrived', 'drop-1', 10),
  event('doors-opened', 'drop-1', 10.5),
];
const STOPS: Partial<DeliveryInput> = {
  stops: [
    { id: 'load-1', does: 'load', place: 'Cooler A', zone: 'America/Phoenix' },
    { id: 'drop-0', does: 'unload', place: 'Halfway', zone: 'America/Denver' },
    { id: 'drop-1', does: 'unload', place: 'Warehouse B', zone: 'America/Chicago' },
  ],
};
const assessed = (list: Item[], change: Partial<DeliveryInput> = STOPS, logs: UnitLog[] = []) =>
  assess({
    state: state(items(...list), change),
    logs,
    ruleSet: { ruleSet: rulesOf({ needs: { event: 'arrived' } }), sha256: HASH },
    at: instantAt(40),
  });

describe('doors by stop', () => {
  const hours = Array.from({ length: 49 }, (_, i) => i / 4);
  const doors = (open: (hour: number) => boolean) =>
    log(
      hours,
      { 'return-air': hours.map(() => 36) },
      { door: hours.map((h) => (open(h) ? 'open' : 'closed')) },
    );

  it('are as noted: opened and closed at each stop, an end that nobody noted left open', () => {
    const found = assessed(COURSE).doors;
    const hoursOf = (ms: number | undefined) => (ms === undefined ? undefined : (ms - DAY_START) / HOUR);
    expect(
      found?.map(({ stop, noted }) => [stop, noted.map(({ from, to }) => [hoursOf(from), hoursOf(to)])]),
    ).toEqual([
      ['load-1', [[undefined, 2]]],
      ['drop-0', [[6.25, 7]]],
      ['drop-1', [[10.5, undefined]]],
    ]);
  });

  it('are as logged: each opening at the stop where the truck stood, others between stops', () => {
    const open = doors((h) => (h >= 6.25 && h < 7) || h === 8.5 || h === 1);
    const found = assessed(COURSE, STOPS, [open]).doors;
    expect(
      found?.map(({ stop, logged, loggedSeconds }) => [stop, logged.length, loggedSeconds / 60]),
    ).toEqual([
      ['load-1', 1, 15],
      // Three rows of a quarter of an hour.
      ['drop-0', 1, 45],
      ['drop-1', 0, 0],
      [undefined, 1, 15],
    ]);
  });

  it('are counted once where compartments of one download share the column', () => {
    const one = doors((h) => h === 8.5);
    const logs = ['front', 'rear'].map((compartment) => ({ ...one, compartment }));
    expect(assessed(COURSE, STOPS, logs).doors?.find(({ stop }) => stop === undefined)?.logged).toHaveLength(
      1,
    );
  });
});

describe('shocks', () => {
  const jolt = (value: number, unit: 'g' | 'm/s²', hour: number, threshold?: number): Item => ({
    kind: 'shock',
    what: 'shock',
    peak: { value, unit },
    time: at(hour),
    ...(threshold === undefined ? {} : { threshold: { value: threshold, unit: 'g' } }),
  });

  it.each([
    ['at the threshold', jolt(3, 'g', 5, 3), true, 'aboard'],
    ['below it', jolt(2.9, 'g', 5, 3), false, 'aboard'],
    ['above it in another unit: 30 m/s² is 3.06 g', jolt(30, 'm/s²', 5, 3), true, 'aboard'],
    ['below it in another unit: 29 m/s² is 2.96 g', jolt(29, 'm/s²', 5, 3), false, 'aboard'],
    ['against the way that the sensor points', jolt(-3.5, 'g', 5, 3), true, 'aboard'],
    ['without a threshold', jolt(9, 'g', 5), undefined, 'aboard'],
    ['before the doors were closed', jolt(9, 'g', 1), undefined, 'before'],
    ['after they were opened at the last stop', jolt(9, 'g', 11), undefined, 'after'],
  ])('%s', (_, item, over, when) => {
    const [found] = assessed([...COURSE, item]).shocks ?? [];
    expect([found?.over, found?.when]).toEqual([over, when]);
  });
});

describe('weights', () => {
  // 53 ft trailer: kingpin 36 in and axles 40 ft behind the front wall; tractor of 200 in, fifth wheel 20 in ahead.
  const change = (lines: DeliveryInput['lines'], equipment: object = {}): Partial<DeliveryInput> => ({
    ...STOPS,
    lines,
    equipment: {
      tractor: { number: '7', axles: { wheelbase: '200 in', fifthWheel: '20 in' } },
      trailer: { number: 'T-118', insideLength: '630 in', axles: { kingpin: '36 in', group: '480 in' } },
      empty: { steer: '11000 lb', drive: '13000 lb', trailer: '11000 lb' },
      limits: { steer: '12000 lb', drive: '34000 lb', trailer: '34000 lb', gross: '80000 lb' },
      ...equipment,
    },
  });
  const LB = 0.453_592_37;
  const heavy = { id: 'a', goods: 'kale', from: 'load-1', to: 'drop-1', pallets: 8, shipped: { lb: 16_000 } };
  const light = { id: 'b', goods: 'celery', from: 'load-1', to: 'drop-0', pallets: 4 };
  const row = (from: number, to: number, line: string, pounds?: number): Item => ({
    kind: 'pattern',
    pattern: 'straight',
    rows: { from, to },
    blocks: [],
    line,
    place: { stop: 'load-1' },
    time: at(1),
    ...(pounds === undefined ? {} : { palletWeight: { value: pounds, unit: 'lb' } }),
  });
  const pounds = (leg: LegWeights | undefined, group: string) => {
    const found = leg?.groups.find((one) => one.group === group);
    return { ...found, load: (found?.load ?? 0) / LB, estimate: (found?.estimate ?? 0) / LB };
  };

  it('by row are as noted, else the bill’s spread evenly over the line’s pallets', () => {
    const { weights } = assessed([...COURSE, row(1, 4, 'a'), row(5, 6, 'b', 1_000)], change([heavy, light]));
    expect(weights?.rows.map((one) => [one.row, one.from, Math.round(one.kilograms / LB)])).toEqual([
      [1, 'bill', 4_000],
      [2, 'bill', 4_000],
      [3, 'bill', 4_000],
      [4, 'bill', 4_000],
      [5, 'noted', 2_000],
      [6, 'noted', 2_000],
    ]);
    expect(weights?.heaviest?.row).toBe(1);
  });

  it('by axle group, worked by hand: 16,000 lb with its middle 96 in behind the front wall', () => {
    // (96 − 36) ⁄ (480 − 36) of 16,000 lb is 2,162.2 lb on the trailer; of 13,837.8 lb on the kingpin a tenth on the steer.
    const { weights } = assessed([...COURSE, row(1, 4, 'a')], change([heavy]));
    const [leg] = weights?.legs ?? [];
    expect((leg?.centre ?? 0) / 0.0254).toBeCloseTo(96, 6);
    expect(pounds(leg, 'trailer').load).toBeCloseTo(2_162.2, 1);
    expect(pounds(leg, 'steer')).toMatchObject({ estimate: expect.closeTo(12_383.8, 1) });
    expect(pounds(leg, 'drive').load).toBeCloseTo(12_454.1, 1);
    expect(pounds(leg, 'gross').estimate).toBeCloseTo(51_000, 6);
  });

  it('by leg are of the goods aboard', () => {
    const { weights } = assessed([...COURSE, row(1, 4, 'a'), row(5, 6, 'b', 1_000)], change([heavy, light]));
    expect(weights?.legs.map(({ from, load }) => [from, Math.round(load / LB)])).toEqual([
      ['load-1', 20_000],
      ['drop-0', 16_000],
    ]);
  });

  it('are not estimated while a line aboard has no weight, and the line is named', () => {
    const { weights } = assessed([...COURSE, row(1, 4, 'a'), row(5, 6, 'b')], change([heavy, light]));
    expect(weights?.unknown).toEqual(['b']);
    expect(weights?.legs.map(({ from }) => from)).toEqual(['drop-0']);
  });

  it('of a scale count in place of the estimate, for the leg that they were weighed on', () => {
    const scale: Item = {
      kind: 'scale',
      steer: { value: 12_500, unit: 'lb' },
      time: at(2.5),
      place: { stop: 'load-1' },
    };
    const { weights, findings } = assessed([...COURSE, row(1, 4, 'a'), scale], change([heavy]));
    expect(weights?.legs.map(({ weighed }) => weighed)).toEqual(['e11', undefined]);
    const over = findings.filter(({ id }) => id === 'axle-over-limit');
    expect(over.map(({ weighs, facts }) => [weighs, facts.scale])).toEqual([
      ['hurts', true],
      ['open', false],
    ]);
  });

  it('are not made up where the geometry is not stated', () => {
    const { weights } = assessed(
      [...COURSE, row(1, 4, 'a')],
      change([heavy], { trailer: { number: 'T-118' } }),
    );
    expect(weights?.legs[0]?.groups).toEqual([]);
    expect(weights?.rows).toHaveLength(4);
  });
});

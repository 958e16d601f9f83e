import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandsOf } from '../../../src/core/assess/bands.js';
import { readMilestones } from '../../../src/core/assess/milestones.js';
import { cyclingOf } from '../../../src/core/assess/temperature/cycling.js';
import { differenceOf } from '../../../src/core/assess/temperature/difference.js';
import { withoutJumps } from '../../../src/core/assess/temperature/jumps.js';
import { meanKineticTemperature } from '../../../src/core/assess/temperature/kinetic.js';
import { temperatureResult } from '../../../src/core/assess/temperature/result.js';
import { summarise } from '../../../src/core/assess/temperature/summary.js';
import type { TimeRange } from '../../../src/core/model/results.js';
import type { UnitLog } from '../../../src/core/model/unit-log.js';
import { cases } from '../../properties.js';
import { at, DAY_START, HOUR, items, log, rulesOf, state } from './made.js';

const RULES = rulesOf({ needs: { event: 'arrived' } });
const span = (from: number, to: number): TimeRange => ({
  from: DAY_START + from * HOUR,
  to: DAY_START + to * HOUR,
});
const quarters = (from: number, to: number) =>
  Array.from({ length: (to - from) * 4 + 1 }, (_, i) => from + i / 4);
const line = (id: string, from: string, to: string, setPoint = '36 °F') => ({
  id,
  goods: 'lettuce-romaine',
  from,
  to,
  instruction: { setPoint, tolerance: '2 °F' },
});

const LOAD = { stop: 'load-1' };
const DROP = { stop: 'drop-1' };

function analyse(of: UnitLog, to: number, events: Parameters<typeof items> = []) {
  const made = state(
    items(
      { kind: 'event', event: 'doors-closed', place: LOAD, time: at(0) },
      { kind: 'event', event: 'doors-opened', place: DROP, time: at(to) },
      ...events,
    ),
    { lines: [line('romaine', 'load-1', 'drop-1')] },
  );
  const { lines } = made.delivery;
  const result = temperatureResult(of, readMilestones(made, DAY_START + 1000 * HOUR), bandsOf(lines, RULES), {
    lines,
  });
  if (result === undefined) throw new Error('no result');
  return result;
}

describe('mean kinetic temperature', () => {
  it('of a steady temperature is that temperature', () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 50, noNaN: true }), (celsius) => {
        expect(meanKineticTemperature([{ celsius, time: 5 }])).toBeCloseTo(celsius, 9);
        const of = log([0, 1], { probe: [celsius, celsius] }, {}, '°C');
        const sums = summarise(
          'probe',
          of.times,
          of.channels.probe ?? new Float64Array(),
          span(0, 1),
          9000,
          undefined,
          true,
        );
        expect(sums.meanKinetic).toBeCloseTo(celsius, 9);
      }),
    );
  });

  it('lies between the mean and the highest, and on the straight lines is the fine sum’s', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -5, max: 45, noNaN: true }), { minLength: 2, maxLength: 8 }),
        (values) => {
          const of = log(
            values.map((_, i) => i),
            { probe: values },
            {},
            '°C',
          );
          const column = of.channels.probe ?? new Float64Array();
          const sums = summarise(
            'probe',
            of.times,
            column,
            span(0, values.length - 1),
            9000,
            undefined,
            true,
          );
          const fine = values.slice(1).flatMap((v1, i) =>
            Array.from({ length: 2000 }, (_, k) => ({
              celsius: (values[i] ?? 0) + ((v1 - (values[i] ?? 0)) * (k + 0.5)) / 2000,
              time: 1,
            })),
          );
          expect(sums.meanKinetic).toBeCloseTo(meanKineticTemperature(fine), 4);
          expect(sums.meanKinetic ?? 0).toBeGreaterThanOrEqual((sums.mean ?? 0) - 1e-9);
          expect(sums.meanKinetic ?? 0).toBeLessThanOrEqual(Math.max(...values) + 1e-9);
        },
      ),
      { numRuns: cases(30) },
    );
  });

  it('clears no cold excursion: two hours at freezing stay an excursion', () => {
    const hours = quarters(0, 10);
    const result = analyse(
      log(hours, { 'return-air': hours.map((h) => (h >= 4 && h <= 6 ? 30 : 36.5)) }),
      10,
    );
    expect(result.channels[0]?.meanKinetic).toBeGreaterThan(1.1);
    expect(result.excursions).toMatchObject([{ side: 'below', cause: { is: 'unexplained' } }]);
  });
});

describe('impossible jumps', () => {
  const hours = quarters(0, 6);
  const air = (change: Record<number, number>) => hours.map((h) => change[h] ?? 36);

  it('are left out of every sum, and listed with their row', () => {
    const result = analyse(log(hours, { 'return-air': air({ 3: 120 }) }), 6);
    expect(result.channels[0]?.max?.value).toBeCloseTo(((36 - 32) * 5) / 9, 9);
    expect(result.channels[0]?.coverage).toBe(1);
    expect(result.excursions).toEqual([]);
    expect(result.jumpCount).toBe(1);
    expect(result.jumps).toMatchObject([{ channel: 'return-air', row: 14, at: DAY_START + 3 * HOUR }]);
  });

  it.each([
    { what: 'two samples in a row', change: { 3: 120, 3.25: 120 }, states: {} },
    { what: 'less than 15 K', change: { 3: 60 }, states: {} },
    { what: 'neighbours that do not agree', change: { 3: 120, 3.25: 50 }, states: {} },
    {
      what: 'a logged defrost',
      change: { 3: 120 },
      states: { defrost: hours.map((h) => (h === 3 ? 'on' : 'off')) },
    },
  ])('$what: stays', ({ change, states }) => {
    const of = log(hours, { 'return-air': air(change) }, states);
    expect(withoutJumps(of)).toEqual({ log: of, jumps: [] });
  });

  it('over long steps stay: much can happen in an hour', () => {
    const of = log([0, 1, 2], { 'return-air': [36, 120, 36] });
    expect(withoutJumps(of).jumps).toEqual([]);
  });
});

describe('cycling around the set point', () => {
  const minutes = Array.from({ length: 10 * 60 + 1 }, (_, i) => i / 60);
  const wave = (amplitude: number, period: number) =>
    minutes.map((h) => 2 + amplitude * Math.sin((2 * Math.PI * h * 60) / period));
  const runs = (of: UnitLog) =>
    cyclingOf(
      'return-air',
      of.times,
      of.channels['return-air'] ?? new Float64Array(),
      [{ ...span(0, 10), celsius: 2 }],
      1800,
      1.2,
      'log',
    );

  it('a sine of 3 K swing and 40 min is found as such', () => {
    const one = runs(log(minutes, { 'return-air': wave(1.5, 40) }, {}, '°C'));
    expect(one?.cycles).toBe(13);
    expect(one?.periodSeconds).toBeCloseTo(2400, 0);
    expect(one?.swingKelvin).toBeCloseTo(3, 2);
    expect(one?.meanOffset).toBeCloseTo(0, 6);
    // A sine lies within 1.2 of its 1.5 for (2/π) asin(0.8) of the time.
    expect((one?.withinSeconds ?? 0) / (one?.knownSeconds ?? 1)).toBeCloseTo(
      (2 / Math.PI) * Math.asin(0.8),
      2,
    );
  });

  it('a flicker of less than a quarter of a kelvin is no cycle', () => {
    expect(runs(log(minutes, { 'return-air': wave(0.2, 40) }, {}, '°C'))).toMatchObject({ cycles: 0 });
  });

  it('a gap ends the swing that was open', () => {
    const values = wave(1.5, 40).map((v, i) => (i > 200 && i < 400 ? Number.NaN : v));
    const one = runs(log(minutes, { 'return-air': values }, {}, '°C'));
    expect(one?.cycles).toBeLessThan(13);
    expect(one?.periodSeconds).toBeCloseTo(2400, 0);
  });
});

describe('one sensor against another', () => {
  it('in one log: return minus supply, time-weighted (worked by hand)', () => {
    const of = log([0, 1, 2], { 'return-air': [4, 6, 6], 'supply-air': [2, 2, 6] }, {}, '°C');
    const one = differenceOf(
      { log: of, channel: 'return-air' },
      { log: of, channel: 'supply-air' },
      span(0, 2),
      3,
    );
    // 2 to 4 in the first hour, 4 to 0 in the second; above 3 for the last half and the first quarter of them.
    expect(one?.mean).toBeCloseTo(2.5, 9);
    expect(one).toMatchObject({ min: { kelvin: 0 }, max: { kelvin: 4, at: DAY_START + HOUR } });
    expect(one?.apartSeconds).toBeCloseTo(0.75 * 3600, 3);
  });

  it('in two logs of other steps: read off both lines at every sample of either', () => {
    const a = log([0, 2], { probe: [0, 4] }, {}, '°C');
    const b = log([0.5, 1, 1.5], { probe: [1, 3, 1] }, {}, '°C');
    const one = differenceOf({ log: a, channel: 'probe' }, { log: b, channel: 'probe' }, span(0, 2), 5);
    // a is 1, 2, 3 at the samples of b: the differences are 0, −1, 2, and nothing is known beside them.
    expect(one).toMatchObject({ knownSeconds: 3600, min: { kelvin: -1 }, max: { kelvin: 2 } });
    expect(one?.mean).toBeCloseTo(0, 9);
  });

  it('is undefined when they are never known together', () => {
    const of = log([0, 1], { 'return-air': [1, Number.NaN], probe: [Number.NaN, 1] });
    expect(
      differenceOf({ log: of, channel: 'probe' }, { log: of, channel: 'return-air' }, span(0, 1), 2),
    ).toBeUndefined();
  });
});

describe('causes', () => {
  const hours = quarters(0, 8);
  it('after the doors closed it is pull-down, though the log’s door stood open and the unit off just before', () => {
    const result = analyse(
      log(
        quarters(-1, 8),
        { 'return-air': quarters(-1, 8).map((h) => (h < 0.5 ? 50 : 36)) },
        {
          door: quarters(-1, 8).map((h) => (h < 0 ? 'open' : 'closed')),
          power: quarters(-1, 8).map((h) => (h < 0 ? 'off' : 'on')),
        },
      ),
      8,
    );
    expect(result.excursions[0]).toMatchObject({ cause: { is: 'pull-down', how: 'inferred' } });
  });

  it('a door that people recorded as open counts as logged, and its evidence is named', () => {
    const air = hours.map((h) => (h >= 4.25 && h <= 4.5 ? 44 : 36));
    const result = analyse(log(hours, { 'return-air': air }), 8, [
      { kind: 'event', event: 'doors-opened', place: LOAD, time: at(4) },
      { kind: 'event', event: 'doors-closed', place: LOAD, time: at(4.5) },
    ]);
    // The last closing at the first stop begins custody; both recorded events lie before what follows.
    expect(result.custody.from.at).toBe(DAY_START + 4.5 * HOUR);
    const departed = analyse(log(hours, { 'return-air': air }), 8, [
      { kind: 'event', event: 'departed', place: LOAD, time: at(0.5) },
      { kind: 'event', event: 'doors-opened', place: LOAD, time: at(4) },
      { kind: 'event', event: 'doors-closed', place: LOAD, time: at(4.5) },
    ]);
    expect(departed.excursions[0]?.cause).toEqual({
      is: 'door-open',
      how: 'logged',
      evidence: ['e4', 'e5'],
    });
  });

  it('the same set point after a gap explains nothing', () => {
    const air = hours.map((h) => (h >= 5 && h <= 5.5 ? 44 : 36));
    const set = hours.map((h) => (h > 3 && h < 4.75 ? Number.NaN : 36));
    expect(analyse(log(hours, { 'return-air': air, 'set-point': set }), 8).excursions[0]?.cause).toEqual({
      is: 'unexplained',
    });
  });
});

describe('legs', () => {
  const stops = [
    { id: 'load-1', does: 'load' as const, place: 'A', zone: 'America/Phoenix' },
    { id: 'load-2', does: 'load' as const, place: 'B', zone: 'America/Phoenix' },
    { id: 'drop-1', does: 'unload' as const, place: 'C', zone: 'America/Chicago' },
  ];
  const made = state(
    items(
      { kind: 'event', event: 'doors-closed', place: LOAD, time: at(0) },
      { kind: 'event', event: 'doors-opened', place: { stop: 'load-2' }, time: at(4) },
      { kind: 'event', event: 'doors-closed', place: { stop: 'load-2' }, time: at(5) },
      { kind: 'event', event: 'doors-opened', place: DROP, time: at(10) },
    ),
    { stops, lines: [line('romaine', 'load-1', 'drop-1'), line('celery', 'load-2', 'drop-1', '34 °F')] },
  );
  const hours = quarters(0, 10);
  const result = temperatureResult(
    log(hours, { 'return-air': hours.map((h) => (h < 4.5 ? 37.5 : 35)) }),
    readMilestones(made, DAY_START + 100 * HOUR),
    bandsOf(made.delivery.lines, RULES),
    { lines: made.delivery.lines },
  );

  it('run from doors closed to doors opened, with what is aboard', () => {
    expect(result?.legs).toMatchObject([
      { leg: 1, from: { stop: 'load-1' }, to: { stop: 'load-2' }, lines: ['romaine'] },
      { leg: 2, from: { stop: 'load-2' }, to: { stop: 'drop-1' }, lines: ['romaine', 'celery'] },
    ]);
    expect(result?.legs?.map((leg) => (leg.to.bound.at - leg.from.bound.at) / HOUR)).toEqual([4, 5]);
  });

  it('each are held against the band of what is aboard', () => {
    // 34 to 38 °F alone; 34 to 36 °F together with the second line.
    const highs = result?.legs?.map((leg) => ((leg.band?.high ?? 0) * 9) / 5 + 32);
    expect(highs?.[0]).toBeCloseTo(38, 9);
    expect(highs?.[1]).toBeCloseTo(36, 9);
    expect(result?.legs?.[0]?.excursions).toEqual([]);
  });

  it('there are none of a delivery with two stops', () => {
    expect(analyse(log(hours, { 'return-air': hours.map(() => 36) }), 8).legs).toBeUndefined();
  });
});

describe('silence and windows', () => {
  it('the longest silence counts from the window’s edge, within the gap limit too', () => {
    const of = log([0.5, 0.75, 1, 1.4, 1.65], { 'return-air': [36, 36, 36, 36, 36] });
    expect(analyse(of, 2).channels[0]?.longestSilenceSeconds).toBeCloseTo(1800, 6);
    expect(analyse(of, 1.7).channels[0]?.longestSilenceSeconds).toBeCloseTo(1800, 6);
  });

  it('a window that was asked for says so', () => {
    const made = state([]);
    const of = log([0, 1, 2, 3], { 'return-air': [36, 36, 40, 40] });
    const result = temperatureResult(of, readMilestones(made, DAY_START), [], {
      requestedWindow: span(1, 2),
    });
    expect(result?.custody).toMatchObject({ from: { basis: 'asked' }, to: { basis: 'asked' } });
    expect(result?.channels[0]?.mean).toBeCloseTo(((38 - 32) * 5) / 9, 9);
  });
});

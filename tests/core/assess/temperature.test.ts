import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandsOf, commonBand } from '../../../src/core/assess/bands.js';
import { readMilestones } from '../../../src/core/assess/milestones.js';
import { temperatureResult } from '../../../src/core/assess/temperature/result.js';
import { gapLimit } from '../../../src/core/assess/temperature/sampling-interval.js';
import { summarise } from '../../../src/core/assess/temperature/summary.js';
import type { Channel } from '../../../src/core/model/evidence.js';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import type { TimeRange } from '../../../src/core/model/results.js';
import { toCelsius } from '../../../src/core/model/temperature.js';
import type { UnitLog } from '../../../src/core/model/unit-log.js';
import { cases } from '../../properties.js';
import { at, DAY_START, facts, HOUR, items, log, rulesOf, state } from './made.js';

const RULES = rulesOf({ needs: { event: 'arrived' } });
const hours = (from: number, to: number): TimeRange => ({
  from: DAY_START + from * HOUR,
  to: DAY_START + to * HOUR,
});
const F = (value: number) => toCelsius(value, '°F');
const fahrenheitHours = (kelvinHours: number) => (kelvinHours * 9) / 5;

function sum(of: UnitLog, window: TimeRange, low: number, high: number, channel: Channel = 'return-air') {
  const values = of.channels[channel] ?? new Float64Array();
  return summarise(channel, of.times, values, window, 4 * 3600, { low, high });
}

/** Analysis over a delivery whose doors closed at hour 0 and opened at hour `to`. */
function analyse(of: UnitLog, to: number, setPoint = '36 °F') {
  const made = state(
    items(
      { kind: 'event', event: 'doors-closed', place: { stop: 'load-1' }, time: at(0) },
      { kind: 'event', event: 'doors-opened', place: { stop: 'drop-1' }, time: at(to) },
    ),
    { lines: [{ ...LINE, instruction: { setPoint, tolerance: '2 °F' } }] },
  );
  const result = temperatureResult(
    of,
    readMilestones(made, DAY_START + 1000 * HOUR),
    bandsOf(made.delivery.lines, RULES),
  );
  if (result === undefined) throw new Error('no result');
  return result;
}
const LINE = { id: 'romaine', goods: 'lettuce-romaine', from: 'load-1', to: 'drop-1' };

const sixHours = log([0, 1, 2, 3, 4, 5], { 'return-air': [34, 34, 40, 46, 40, 34] });

describe('degree-hours', () => {
  it('are the exact integral of the straight lines: 16.6667 °F·h above 36 °F (worked by hand; a clipped trapezium would say 18)', () => {
    const { degreeHoursAbove, aboveSeconds } = sum(sixHours, hours(0, 5), F(-40), F(36));
    expect(fahrenheitHours(degreeHoursAbove)).toBeCloseTo(50 / 3, 6);
    // From 1:20 to 4:40, worked by hand.
    expect(aboveSeconds).toBeCloseTo((10 / 3) * 3600, 3);
  });

  it('are counted on both sides (worked by hand)', () => {
    const v = log([0, 1, 2], { 'return-air': [40, 32, 40] });
    const both = sum(v, hours(0, 2), F(34), F(38));
    // Above 38: two triangles of 2 °F × 0.25 h. Below 34: one of 2 °F × 0.5 h.
    expect(fahrenheitHours(both.degreeHoursAbove)).toBeCloseTo(0.5, 6);
    expect(fahrenheitHours(both.degreeHoursBelow)).toBeCloseTo(0.5, 6);
    expect(both.inBandSeconds).toBeCloseTo(3600, 3);
  });
});

const samples = fc
  .array(
    fc.record({
      step: fc.integer({ min: 1, max: 200 }),
      value: fc.double({ min: 20, max: 60, noNaN: true }),
    }),
    { minLength: 2, maxLength: 30 },
  )
  .map((list) => {
    let minute = 0;
    return list.map(({ step, value }) => {
      minute += step;
      return { hour: minute / 60, value };
    });
  });
const logOf = (list: { hour: number; value: number }[]) =>
  log(
    list.map((one) => one.hour),
    { 'return-air': list.map((one) => one.value) },
  );
const LOW = F(34);
const HIGH = F(38);

describe('laws of the integration', () => {
  it('degree-hours, time in band and known time add over a split anywhere', () => {
    fc.assert(
      fc.property(samples, fc.double({ min: 0, max: 1, noNaN: true }), (list, part) => {
        const of = logOf(list);
        const end = 100;
        const split = end * part;
        const whole = sum(of, hours(0, end), LOW, HIGH);
        const first = sum(of, hours(0, split), LOW, HIGH);
        const second = sum(of, hours(split, end), LOW, HIGH);
        for (const key of ['degreeHoursAbove', 'degreeHoursBelow', 'inBandSeconds', 'knownSeconds'] as const)
          expect(first[key] + second[key]).toBeCloseTo(whole[key], 4);
      }),
    );
  });

  it('a sample added on the line changes nothing', () => {
    fc.assert(
      fc.property(samples, fc.nat(), fc.double({ min: 0.05, max: 0.95, noNaN: true }), (list, pick, part) => {
        const index = pick % (list.length - 1);
        const a = list[index];
        const b = list[index + 1];
        if (a === undefined || b === undefined) return;
        const between = {
          hour: a.hour + (b.hour - a.hour) * part,
          value: a.value + (b.value - a.value) * part,
        };
        const more = [...list.slice(0, index + 1), between, ...list.slice(index + 1)];
        const before = sum(logOf(list), hours(0, 100), LOW, HIGH);
        const after = sum(logOf(more), hours(0, 100), LOW, HIGH);
        expect(after.degreeHoursAbove).toBeCloseTo(before.degreeHoursAbove, 5);
        expect(after.degreeHoursBelow).toBeCloseTo(before.degreeHoursBelow, 5);
        expect(after.mean ?? 0).toBeCloseTo(before.mean ?? 0, 5);
        expect(after.samples).toBe(before.samples + 1);
      }),
    );
  });

  it('moving everything in time changes nothing', () => {
    fc.assert(
      fc.property(samples, fc.integer({ min: -100_000, max: 100_000 }), (list, minutes) => {
        const of = logOf(list);
        const moved = { ...of, times: Float64Array.from(of.times, (t) => t + minutes * 60_000) };
        const window = hours(0, 100);
        const shifted = { from: window.from + minutes * 60_000, to: window.to + minutes * 60_000 };
        const before = sum(of, window, LOW, HIGH);
        const after = sum(moved, shifted, LOW, HIGH);
        expect(after.degreeHoursAbove).toBe(before.degreeHoursAbove);
        expect(after.inBandSeconds).toBe(before.inBandSeconds);
        expect(after.mean).toBe(before.mean);
      }),
    );
  });

  it('writing the same log in °C changes nothing', () => {
    fc.assert(
      fc.property(samples, (list) => {
        const inC = log(
          list.map((one) => one.hour),
          { 'return-air': list.map((one) => ((one.value - 32) * 5) / 9) },
          {},
          '°C',
        );
        const a = sum(logOf(list), hours(0, 100), LOW, HIGH);
        const b = sum(inC, hours(0, 100), LOW, HIGH);
        expect(b.degreeHoursAbove).toBeCloseTo(a.degreeHoursAbove, 9);
        expect(b.aboveSeconds).toBeCloseTo(a.aboveSeconds, 6);
      }),
    );
  });

  it('agrees with a naive sum over ten thousand slices', () => {
    fc.assert(
      fc.property(samples, (list) => {
        const exact = sum(logOf(list), hours(0, 40), LOW, HIGH);
        const slices = 10_000;
        let above = 0;
        let known = 0;
        for (let i = 0; i < slices; i++) {
          const hour = ((i + 0.5) / slices) * 40;
          const next = list.findIndex((one) => one.hour >= hour);
          const a = list[next - 1];
          const b = list[next];
          if (a === undefined || b === undefined || b.hour - a.hour > 4) continue;
          const value = F(a.value + ((b.value - a.value) * (hour - a.hour)) / (b.hour - a.hour));
          known += 40 / slices;
          above += Math.max(0, value - HIGH) * (40 / slices);
        }
        // Slices are 14 s long: their error is at most a slice at each end and kink.
        expect(Math.abs(exact.knownSeconds / 3600 - known)).toBeLessThan(0.01);
        expect(Math.abs(exact.degreeHoursAbove - above)).toBeLessThan(0.15);
      }),
      { numRuns: cases(30) },
    );
  });
});

describe('gaps', () => {
  it.each([
    { what: 'every 5 minutes', steps: [0, 5, 10, 15], limit: 30 * 60 },
    { what: 'hourly', steps: [0, 60, 120, 180], limit: 3 * 3600 },
    { what: 'median of an even number of steps', steps: [0, 10, 40], limit: 3600 },
    { what: 'one row', steps: [0], limit: 30 * 60 },
  ])('the limit is three median steps and at least 30 min: $what', ({ steps, limit }) => {
    expect(gapLimit(Float64Array.from(steps, (m) => m * 60_000)).gapLimitSeconds).toBe(limit);
  });

  it('are unknown, and count neither in nor out of the band', () => {
    const of = log([0, 0.25, 0.5, 0.75, 4, 4.25, 4.5], { 'return-air': [36, 36, 36, 36, 50, 50, 50] });
    const result = analyse(of, 5);
    const [air] = result.channels;
    expect(result.gaps.map((gap) => gap.seconds / 3600)).toEqual([3.25]);
    expect(air?.knownSeconds).toBe(1.25 * 3600);
    expect(air?.coverage).toBe(0.25);
    expect(air?.aboveSeconds).toBe(0.5 * 3600);
    expect(result.excursions.map((one) => one.cutBy)).toEqual([['gap-before', 'gap-after']]);
  });

  it('a value that is no number is no sample', () => {
    const of = log([0, 0.25, 0.5], { 'return-air': [36, Number.NaN, 38] });
    expect(sum(of, hours(0, 0.5), LOW, F(60)).mean).toBeCloseTo(F(37), 9);
  });
});

describe('the transit window', () => {
  it('cuts the lines at its ends and says what they rest on', () => {
    const of = log([-1, 1, 3], { 'return-air': [30, 40, 40] });
    const result = analyse(of, 2, '37 °F');
    expect(result.custody).toMatchObject({ from: { basis: 'doors-closed' }, to: { basis: 'doors-opened' } });
    expect(result.channels[0]?.min?.value).toBeCloseTo(F(35), 9);
  });

  it('is unknown without events and planned times: rows of a log bound nothing', () => {
    expect(temperatureResult(sixHours, readMilestones(state([]), DAY_START), [])).toBeUndefined();
  });

  it('is unknown for an empty log without events', () => {
    expect(temperatureResult(log([], {}), readMilestones(state([]), DAY_START), [])).toBeUndefined();
  });
});

describe('excursions', () => {
  it('start and end where the line crosses the limit (worked by hand)', () => {
    const result = analyse(sixHours, 5, '34 °F');
    const [one, ...rest] = result.excursions;
    expect(rest).toEqual([]);
    expect(one).toMatchObject({ side: 'above', cause: { is: 'unexplained' }, cutBy: [] });
    expect(((one?.from ?? 0) - DAY_START) / HOUR).toBeCloseTo(4 / 3, 6);
    expect(((one?.to ?? 0) - DAY_START) / HOUR).toBeCloseTo(14 / 3, 6);
    expect(one?.peak).toBeCloseTo(F(46), 9);
    expect(fahrenheitHours(one?.degreeHours ?? 0)).toBeCloseTo(50 / 3, 6);
  });

  it('a reading on the limit is inside, whatever °F and °C round to', () => {
    const of = log([0, 1, 2], { 'return-air': [38, 38, 34] });
    expect(analyse(of, 2).excursions).toEqual([]);
  });

  it('stay two when there is any time in band between them, and are one where the line only touches the limit', () => {
    const apart = log([0, 1, 2, 3, 4], { 'return-air': [40, 37.9, 40, 40, 36] });
    expect(analyse(apart, 4).excursions).toHaveLength(2);
    const touching = log([0, 1, 2, 3, 4], { 'return-air': [40, 38, 40, 40, 36] });
    expect(analyse(touching, 4).excursions).toHaveLength(1);
  });

  const quarter = [5, 5.25, 5.5, 5.75, 6, 6.25, 6.5, 6.75];
  const bump = [36, 36, 42, 42, 36, 36, 36, 36];
  const none = Array.from(quarter, () => '');
  it.each([
    { cause: 'defrost', states: { defrost: none.map((_, i) => (i === 2 ? 'ON' : 'OFF')) } },
    { cause: 'defrost', states: { mode: none.map((_, i) => (i === 2 ? 'Defrost' : 'Cool')) } },
    { cause: 'door-open', states: { door: none.map((_, i) => (i === 2 ? 'open' : 'closed')) } },
    { cause: 'unit-off', states: { power: none.map((_, i) => (i === 2 || i === 3 ? 'off' : 'on')) } },
    // One row that says off is the step of the log, and no time off.
    { cause: 'unexplained', states: { power: none.map((_, i) => (i === 2 ? 'off' : 'on')) } },
    { cause: 'unexplained', states: { defrost: none.map((_, i) => (i === 7 ? 'ON' : 'OFF')) } },
  ])('cause: $cause', ({ cause, states }) => {
    const result = analyse(log(quarter, { 'return-air': bump }, states), 7);
    const [one] = result.excursions;
    expect(one?.cause.is).toBe(cause);
    if (one?.cause.is !== 'unexplained') expect(one?.cause).toHaveProperty('how', 'logged');
  });

  it('a defrost does not explain an excursion that goes on for hours', () => {
    const long = Array.from({ length: 20 }, (_, i) => 5 + i / 4);
    const air = long.map((_, i) => (i < 2 ? 36 : 45));
    const defrost = long.map((_, i) => (i === 2 ? 'on' : 'off'));
    expect(analyse(log(long, { 'return-air': air }, { defrost }), 10).excursions[0]?.cause).toEqual({
      is: 'unexplained',
    });
  });

  it('a set point changed out of the band explains air that follows it', () => {
    const result = analyse(
      log(quarter, { 'return-air': bump, 'set-point': [36, 36, 44, 44, 36, 36, 36, 36] }),
      7,
    );
    expect(result.excursions[0]?.cause).toEqual({ is: 'set-point-change', how: 'logged' });
  });

  it('warm air right after the doors closed is taken for pull-down, and says that this is inferred', () => {
    const of = log([0, 0.5, 1, 1.5, 2], { 'return-air': [50, 44, 39, 36, 36] });
    expect(analyse(of, 2).excursions[0]).toMatchObject({
      cutBy: ['window-start'],
      cause: { is: 'pull-down', how: 'inferred' },
    });
  });
});

describe('bands', () => {
  const line = (id: string, setPoint: string, tolerance?: string) => ({
    ...LINE,
    id,
    instruction: { setPoint, ...omitUndefined({ tolerance }) },
  });
  it.each([
    { what: 'one instruction', lines: [line('a', '36 °F', '2 °F')], low: 34, high: 38, from: 'bill' },
    { what: 'no tolerance on the bill', lines: [line('a', '36 °F')], low: 34, high: 38, from: 'rule-set' },
    {
      what: 'the overlap of two',
      lines: [line('a', '34 °F', '2 °F'), line('b', '36 °F', '2 °F')],
      low: 34,
      high: 36,
      from: 'bill',
    },
  ])('$what', ({ lines, low, high, from }) => {
    const band = commonBand(bandsOf(facts({ lines }).lines, RULES));
    expect(band?.low).toBeCloseTo(F(low), 9);
    expect(band?.high).toBeCloseTo(F(high), 9);
    expect(band?.toleranceFrom).toBe(from);
  });

  it('there is none when the lines do not go together', () => {
    const bands = bandsOf(
      facts({ lines: [line('a', '34 °F', '2 °F'), line('b', '55 °F', '2 °F')] }).lines,
      RULES,
    );
    expect(bands).toHaveLength(2);
    expect(commonBand(bands)).toBeUndefined();
  });
});

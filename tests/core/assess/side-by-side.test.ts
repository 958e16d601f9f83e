import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/core/assess/assess.js';
import { guessEntryError } from '../../../src/core/assess/entry-errors.js';
import { eventName } from '../../../src/core/model/evidence.js';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import { toCelsius } from '../../../src/core/model/temperature.js';
import { toInstant } from '../../../src/core/model/time.js';
import { at, HASH, HOUR, instantAt, items, log, rulesOf, state } from './made.js';

const RULES = rulesOf({ needs: { event: 'arrived' } });
const look = (evidence: ReturnType<typeof items>, logs: ReturnType<typeof log>[] = []) =>
  assess({ state: state(evidence), logs, ruleSet: { ruleSet: RULES, sha256: HASH }, at: instantAt(100) });
const F = (value: number) => ({ value, unit: '°F' as const });
const LOAD = { stop: 'load-1' };
const DROP = { stop: 'drop-1' };

describe('slips of the hand', () => {
  const f = (value: number) => toCelsius(value, '°F');
  it.each([
    { what: '48 for 38', a: f(38), b: f(48), slip: 'one-digit' },
    { what: '36 and 63', a: f(36), b: f(63), slip: 'swapped-digits' },
    { what: '36 °C for 36 °F', a: f(36), b: 36, slip: 'unit-mixed-up' },
    { what: '36 °F for 36 °C', a: 36, b: f(36), slip: 'unit-mixed-up' },
    { what: '12 and 21 °C', a: 12, b: 21, slip: 'swapped-digits' },
    { what: '34 for 36 is as likely meant', a: f(36), b: f(34), slip: undefined },
    { what: '55 for 36', a: f(36), b: f(55), slip: undefined },
  ])('$what', ({ a, b, slip }) => {
    expect(guessEntryError(a, b)).toBe(slip);
  });
});

describe('set points side by side', () => {
  const display = (value: number, hour: number) =>
    ({ kind: 'set-point', temperature: F(value), shownBy: 'display', time: at(hour) }) as const;

  it('agree although one is written in whole °C', () => {
    const result = look(items({ ...display(36, 1), temperature: { value: 2, unit: '°C' } }));
    expect(result.setPoints.verdict).toBe('agree');
  });

  it('of the display before leaving only the last look counts', () => {
    const left = { kind: 'event', event: 'departed', place: LOAD, time: at(3) } as const;
    expect(look(items(display(-10, 1), display(36, 2), left)).setPoints.verdict).toBe('agree');
    expect(look(items(display(36, 1), left, display(50, 9))).setPoints.verdict).toBe('differ');
  });

  it('the log speaks with the set point that held longest', () => {
    const hours = [0, 1, 2, 3, 4];
    const doors = (event: 'doors-closed' | 'doors-opened', place: { stop: string }, hour: number) =>
      ({ kind: 'event', event, place, time: at(hour) }) as const;
    const window = items(doors('doors-closed', LOAD, 0), doors('doors-opened', DROP, 4));
    const result = look(window, [
      log(hours, { 'return-air': [36, 36, 36, 36, 36], 'set-point': [55, 48, 48, 48, 48] }),
    ]);
    expect(result.setPoints.differences).toMatchObject([
      { between: [{ source: 'bill' }, { source: 'log', celsius: toCelsius(48, '°F') }] },
    ]);
  });

  it('one source is nothing to compare', () => {
    expect(look(items()).setPoints.verdict).toBe('not-comparable');
  });
});

describe('pulps', () => {
  const pulp = (value: number, place: { stop?: string }) =>
    ({ kind: 'pulp', temperature: F(value), from: 'driver', place, line: 'romaine', time: at(1) }) as const;

  it('are grouped by line and stop and held against the band', () => {
    const { pulps } = look(items(pulp(38, LOAD), pulp(40, LOAD), pulp(33, DROP)));
    expect(pulps).toMatchObject([
      {
        does: 'load',
        count: 2,
        inBand: 1,
        readings: [{ verdict: 'in-band', beyond: 0 }, { verdict: 'above' }],
      },
      { does: 'unload', count: 1, readings: [{ verdict: 'below' }] },
    ]);
  });

  it('of an unknown stop are in no group', () => {
    expect(look(items(pulp(38, {}))).pulps).toEqual([]);
  });
});

describe('timeline', () => {
  const event = (event: (typeof eventName.options)[number], place: { stop: string }, hour: number) =>
    ({ kind: 'event', event, place, time: at(hour) }) as const;

  it('is in order of time, and what has no known time stands apart', () => {
    const { timeline } = look(
      items(event('arrived', DROP, 9), event('arrived', LOAD, 0), {
        kind: 'statement',
        text: 'I was on the dock.',
        time: { is: 'local', local: '2026-07-14T05:00' as never, why: 'zone not stated' },
      }),
    );
    expect(timeline.items.map((item) => item.stop)).toEqual(['load-1', 'drop-1']);
    expect(timeline.untimed).toEqual(['e3']);
  });

  it('gives the intervals between events (worked by hand)', () => {
    const { timeline } = look(
      items(
        event('arrived', LOAD, 0),
        event('doors-opened', LOAD, 1),
        event('doors-closed', LOAD, 2.5),
        event('departed', LOAD, 3),
        event('arrived', DROP, 20),
        event('doors-opened', DROP, 21),
        event('refused', DROP, 21.5),
      ),
    );
    expect(timeline.intervals.map((one) => [one.id, one.stop, one.seconds / 3600])).toEqual([
      ['on-the-dock', 'load-1', 3],
      ['doors-open', 'load-1', 1.5],
      ['in-transit', undefined, 17],
      ['arrival-to-doors', 'drop-1', 1],
      ['arrival-to-refusal', 'drop-1', 1.5],
      ['doors-open', 'drop-1', 0.5],
    ]);
  });
});

describe('any record at all', () => {
  const anyEvent = fc.record({
    event: fc.constantFrom(...eventName.options),
    stop: fc.constantFrom('load-1', 'drop-1', 'nowhere', undefined),
    hour: fc.option(fc.integer({ min: -50, max: 150 }), { nil: undefined }),
  });
  const anyLog = fc
    .array(fc.record({ step: fc.integer({ min: 1, max: 5000 }), value: fc.double() }), { maxLength: 12 })
    .map((rows) => {
      let minute = 0;
      const hours = rows.map(({ step }) => {
        minute += step;
        return minute / 60;
      });
      const values = rows.map(({ value }) => value);
      return log(hours, { 'return-air': values, 'set-point': values }, { defrost: rows.map(() => 'on') });
    });

  it('is judged without throwing, and the same input gives the same result', () => {
    fc.assert(
      fc.property(
        fc.array(anyEvent, { maxLength: 12 }),
        fc.array(anyLog, { maxLength: 2 }),
        (events, logs) => {
          const evidence = items(
            ...events.map(({ event, stop, hour }) => ({
              kind: 'event' as const,
              event,
              place: omitUndefined({ stop }),
              time: hour === undefined ? ({ is: 'none', why: 'not stated' } as const) : at(hour),
            })),
          );
          const first = look(evidence, logs);
          expect(look(evidence, logs)).toEqual(first);
          expect(first.gaps).toHaveLength(RULES.rules.length);
        },
      ),
    );
  });

  it('moved in time as a whole gives the same findings', () => {
    const shift = 5000 * HOUR;
    const evidence = items(
      { kind: 'event', event: 'doors-closed', place: LOAD, time: at(0) },
      { kind: 'event', event: 'doors-opened', place: DROP, time: at(5) },
    );
    const air = log([0, 1, 2, 3, 4, 5], { 'return-air': [34, 34, 40, 46, 40, 34] });
    const later = evidence.map((item) =>
      item.time.is === 'known'
        ? { ...item, time: { ...item.time, instant: toInstant(Date.parse(item.time.instant) + shift) } }
        : item,
    );
    const before = look(evidence, [air]);
    const moved = assess({
      state: state(later),
      logs: [{ ...air, times: Float64Array.from(air.times, (t) => t + shift) }],
      ruleSet: { ruleSet: RULES, sha256: HASH },
      at: toInstant(Date.parse(instantAt(100)) + shift),
    });
    expect(moved.findings.map((one) => one.id)).toEqual(before.findings.map((one) => one.id));
    expect(moved.temperatures[0]?.excursions[0]?.degreeHours).toBe(
      before.temperatures[0]?.excursions[0]?.degreeHours,
    );
  });
});

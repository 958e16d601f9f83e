import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/core/assess/assess.js';
import { guessEntryError } from '../../../src/core/assess/entry-errors.js';
import type { DeliveryInput } from '../../../src/core/model/delivery.js';
import { toCelsius } from '../../../src/core/model/temperature.js';
import { at, DAY_START, HASH, HOUR, instantAt, items, log, rulesOf, state } from './made.js';

const LOAD = { stop: 'load-1' };
const twoDrops: Partial<DeliveryInput> = {
  stops: [
    { id: 'load-1', does: 'load', place: 'Cooler A', zone: 'America/Phoenix' },
    { id: 'drop-1', does: 'unload', place: 'Warehouse B', zone: 'America/Denver' },
    { id: 'drop-2', does: 'unload', place: 'Warehouse C', zone: 'America/Chicago' },
  ],
  lines: [
    { id: 'a', goods: 'lettuce-romaine', from: 'load-1', to: 'drop-1', instruction: { setPoint: '36 °F' } },
    { id: 'b', goods: 'celery', from: 'load-1', to: 'drop-2', instruction: { setPoint: '36 °F' } },
  ],
};
const event = (name: 'departed' | 'arrived' | 'doors-closed' | 'doors-opened', stop: string, hour: number) =>
  ({ kind: 'event', event: name, place: { stop }, time: at(hour) }) as const;
const course = [
  event('doors-closed', 'load-1', 2),
  event('departed', 'load-1', 3),
  event('arrived', 'drop-1', 8),
  event('departed', 'drop-1', 9),
  event('arrived', 'drop-2', 14),
  event('doors-opened', 'drop-2', 14.5),
];
const display = (fahrenheit: number, hour: number) =>
  ({
    kind: 'set-point',
    temperature: { value: fahrenheit, unit: '°F' },
    shownBy: 'display',
    place: LOAD,
    time: at(hour),
  }) as const;
const told = (who: 'dispatcher' | 'inspector', hour: number) =>
  ({ kind: 'contact', with: who, how: 'call', about: 'set point', time: at(hour) }) as const;
const hours = Array.from({ length: 53 }, (_, i) => 2 + i / 4);
const unit = (setPoint: (hour: number) => number) =>
  log(hours, { 'return-air': hours.map(() => 36), 'set-point': hours.map(setPoint) });

function agreement(evidence: ReturnType<typeof items>, logs: ReturnType<typeof unit>[] = []) {
  return assess({
    state: state(evidence, twoDrops),
    logs,
    ruleSet: { ruleSet: rulesOf({ needs: { event: 'arrived' } }), sha256: HASH },
    at: instantAt(40),
  }).setPoints;
}

describe('set points side by side', () => {
  const said = (by: 'display' | 'dispatcher', fahrenheit: number, hour: number) => ({
    ...display(fahrenheit, hour),
    shownBy: by,
  });

  it.each([
    ['first', [said('dispatcher', 38, 4), said('display', 34, 5), said('dispatcher', 38, 6)]],
    ['last', [said('display', 34, 4), said('dispatcher', 38, 5), said('display', 34, 6)]],
  ])('differ once where a source says the same value again: the %s one', (_, words) => {
    const { differences } = agreement(items(...course, ...words));
    const pairs = differences.map(({ between: [a, b] }) => [a.source, b.source].sort().join(' '));
    expect(pairs.sort()).toEqual(['bill dispatcher', 'bill display', 'dispatcher display']);
  });
});

describe('set points on each leg', () => {
  it('names the ways between stops with the lines on board and their published ranges', () => {
    const legs = agreement(items(...course)).legs ?? [];
    expect(legs.map(({ from, to, lines }) => ({ from, to, lines }))).toEqual([
      { from: 'load-1', to: 'drop-1', lines: ['a', 'b'] },
      { from: 'drop-1', to: 'drop-2', lines: ['b'] },
    ]);
    expect(new Set(legs[1]?.published.map(({ line }) => line))).toEqual(new Set(['b']));
  });

  it('finds a wrong set point on the leg where the log shows it, since when and for how long', () => {
    const wrong = unit((hour) => (hour >= 10 ? 46 : 36));
    const [first, second] = agreement(items(...course, display(36, 2.5)), [wrong]).legs ?? [];
    expect(first?.differences).toEqual([]);
    expect(second?.differences).toHaveLength(1);
    const [one] = second?.differences ?? [];
    expect(one).toMatchObject({ slip: 'one-digit', since: DAY_START + 10 * HOUR });
    expect(one?.kelvin).toBeCloseTo(10 / 1.8, 6);
    expect(one?.seconds).toBeCloseTo(4 * 3600, 6);
  });

  it('names who could answer for it and was told after it stood, not before and not an inspector', () => {
    const calls = [told('dispatcher', 1), told('inspector', 4), told('dispatcher', 5)];
    const [one] = agreement(items(...course, display(46, 2.5), ...calls)).differences;
    expect(one?.told?.map((call) => (call.at - DAY_START) / HOUR)).toEqual([5]);
  });

  it('says that nobody was told when the record shows nobody', () => {
    expect(agreement(items(...course, display(46, 2.5))).differences[0]?.told).toEqual([]);
  });
});

describe('slips of the hand', () => {
  const f = (value: number) => toCelsius(value, '°F');
  it.each([
    { a: f(38), b: f(48), slip: 'one-digit' },
    { a: f(36), b: f(63), slip: 'swapped-digits' },
    { a: f(36), b: 36, slip: 'unit-mixed-up' },
    { a: f(34), b: f(36), slip: undefined },
    { a: f(33), b: f(33), slip: undefined },
  ])('$a °C and $b °C: $slip', ({ a, b, slip }) => {
    expect(guessEntryError(a, b)).toBe(slip);
    expect(guessEntryError(b, a)).toBe(slip);
  });
});

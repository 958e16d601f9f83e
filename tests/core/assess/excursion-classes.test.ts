import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/core/assess/assess.js';
import { bandsOf } from '../../../src/core/assess/bands.js';
import { readMilestones } from '../../../src/core/assess/milestones.js';
import { temperatureResult } from '../../../src/core/assess/temperature/result.js';
import { eventsOf } from '../../../src/core/assess/temperature/states.js';
import type { Channel, StateColumn } from '../../../src/core/model/evidence.js';
import type { TemperatureResult } from '../../../src/core/model/results.js';
import { at, DAY_START, facts, HASH, HOUR, instantAt, items, log, rulesOf, state } from './made.js';

/** Ten hours from five o'clock, doors closed at five and opened at fifteen; 36 ± 2 °F, continuous. */
const step = 5 / 60;
const hours = Array.from({ length: 121 }, (_, i) => 5 + i * step);
const between = (from: number, to: number) => (hour: number) => hour >= from - 1e-9 && hour <= to + 1e-9;
type Of<V> = (hour: number) => V;

function analyse(
  channels: Partial<Record<Channel, Of<number>>>,
  states: Partial<Record<StateColumn, Of<string>>> = {},
  run: 'continuous' | 'start-stop' = 'continuous',
): TemperatureResult {
  const each = <V>(all: Partial<Record<string, Of<V>>>) =>
    Object.fromEntries(
      Object.entries(all).map(([name, of]) => [name, of === undefined ? [] : hours.map(of)]),
    );
  const change = {
    lines: [
      {
        id: 'romaine',
        goods: 'lettuce-romaine',
        from: 'load-1',
        to: 'drop-1',
        instruction: { setPoint: '36 °F', tolerance: '2 °F', run },
      },
    ],
  };
  const record = state(
    items(
      { kind: 'event', event: 'doors-closed', place: { stop: 'load-1' }, time: at(5) },
      { kind: 'event', event: 'doors-opened', place: { stop: 'drop-1' }, time: at(15) },
    ),
    change,
  );
  const { lines } = facts(change);
  const result = temperatureResult(
    log(hours, each(channels), each(states)),
    readMilestones(record, DAY_START + 40 * HOUR),
    bandsOf(lines, rulesOf({ needs: { event: 'arrived' } })),
    { lines },
  );
  if (result === undefined) throw new Error('no result');
  return result;
}

const warm = between(9, 9.5);
const air: Of<number> = (hour) => (warm(hour) ? 44 : 36);
/** Eleven degrees Fahrenheit between return and supply air make a mean of about eight within the limits. */
const supply =
  (during: number): Of<number> =>
  (hour) =>
    warm(hour) ? air(hour) - during : air(hour) - 3;
const on =
  (is: Of<boolean>, yes: string, no: string): Of<string> =>
  (hour) =>
    is(hour) ? yes : no;

describe('each excursion has a class', () => {
  const door = on(warm, 'open', 'closed');
  it.each<[string, () => TemperatureResult, string, string]>([
    [
      'a defrost',
      () => analyse({ 'return-air': air }, { defrost: on(warm, 'on', 'off') }),
      'normal-operation',
      'defrost',
    ],
    [
      'a defrost in a column of operation',
      () => analyse({ 'return-air': air }, { operation: on(warm, 'Defrost', 'Cool') }),
      'normal-operation',
      'defrost',
    ],
    [
      'a defrost that goes on for more than an hour',
      () =>
        analyse(
          { 'return-air': (h) => (between(9, 12)(h) ? 44 : 36) },
          { defrost: on(between(9, 12), 'on', 'off') },
        ),
      'not-explained',
      'unexplained',
    ],
    [
      'warm air after loading',
      () => analyse({ 'return-air': (h) => (h < 6 ? 44 : 36) }),
      'normal-operation',
      'pull-down',
    ],
    [
      'the swing of a unit that starts and stops as instructed',
      () => analyse({ 'return-air': (h) => (warm(h) ? 41 : 36) }, { mode: () => 'Start-Stop' }, 'start-stop'),
      'normal-operation',
      'cycling',
    ],
    [
      'the same swing where continuous running was instructed',
      () => analyse({ 'return-air': (h) => (warm(h) ? 41 : 36) }, { mode: () => 'Start-Stop' }),
      'instruction',
      'mode-change',
    ],
    [
      'a swing farther than start-stop units let the air go',
      () => analyse({ 'return-air': (h) => (warm(h) ? 48 : 36) }, { mode: () => 'Start-Stop' }, 'start-stop'),
      'not-explained',
      'unexplained',
    ],
    ['an open door', () => analyse({ 'return-air': air }, { door }), 'handling', 'door-open'],
    [
      'a unit that was off',
      () => analyse({ 'return-air': air }, { power: on(warm, 'off', 'on') }),
      'equipment',
      'unit-off',
    ],
    ['an alarm', () => analyse({ 'return-air': air }, { alarm: on(warm, 'A-17', '') }), 'equipment', 'alarm'],
    [
      'a unit that cooled less',
      () => analyse({ 'return-air': air, 'supply-air': supply(-2) }),
      'equipment',
      'capacity-loss',
    ],
    [
      'more heat than usual, from nobody knows where',
      () => analyse({ 'return-air': air, 'supply-air': supply(9) }),
      'not-explained',
      'unexplained',
    ],
    [
      'a set point moved out of range, with a defrost meanwhile',
      () =>
        analyse(
          { 'return-air': air, 'set-point': (h) => (between(8.5, 9.5)(h) ? 44 : 36) },
          { defrost: on(warm, 'on', 'off') },
        ),
      'instruction',
      'set-point-change',
    ],
  ])('%s', (_, of, className, cause) => {
    const { excursions, excursionTotals } = of();
    expect(excursions.map((one) => [one.class, one.cause.is])).toEqual([[className, cause]]);
    expect(excursionTotals.classes).toMatchObject([
      {
        class: className,
        count: 1,
        degreeHours: excursions[0]?.degreeHours,
        causes: [{ is: cause, count: 1 }],
      },
    ]);
  });

  it('one row of a defrost explains, and says that it is one row', () => {
    const one = analyse({ 'return-air': air }, { defrost: on(between(9, 9.01), 'on', 'off') }).excursions[0];
    expect(one?.cause).toEqual({ is: 'defrost', how: 'logged', oneRow: true });
  });
});

describe('return minus supply air of an excursion', () => {
  const shows = (during: number) => analyse({ 'return-air': air, 'supply-air': supply(during) });
  it.each([
    [9, 'heat-came-in'],
    [3, 'as-usual'],
    [-2, 'capacity-fell'],
  ])('of %d °F against 3 °F as usual: %s', (during, expected) => {
    const result = shows(during);
    expect(result.usualReturnMinusSupply?.median).toBeCloseTo((3 * 5) / 9, 9);
    expect(result.excursions[0]?.heat?.shows).toBe(expected);
  });

  it('is not told where the set point moved meanwhile', () => {
    const moved = analyse({
      'return-air': air,
      'supply-air': supply(9),
      'set-point': (h) => (between(9, 9.2)(h) ? 34 : 36),
    });
    expect(moved.excursions[0]).not.toHaveProperty('heat');
  });
});

describe('time in range outside normal operation', () => {
  it('takes the time of defrosts from what is known, and that of others not', () => {
    const defrosts = analyse(
      { 'return-air': (h) => (warm(h) || between(12, 12.5)(h) ? 44 : 36) },
      { defrost: on(warm, 'on', 'off'), door: on(between(12, 12.5), 'open', 'closed') },
    );
    const [air] = defrosts.channels;
    const normal = defrosts.excursions[0]?.seconds ?? 0;
    expect(defrosts.excursionTotals.inRangeOutsideNormal).toBeCloseTo(
      (air?.inBandSeconds ?? 0) / ((air?.knownSeconds ?? 0) - normal),
      12,
    );
  });
});

describe('a state of the log is an event of the window', () => {
  const off = (is: Of<boolean>) =>
    eventsOf(analyse({ 'return-air': air }, { power: on(is, 'off', 'on') }).logged);
  it.each<[string, Of<boolean>, number]>([
    ['when it began in the window and several rows show it', between(8, 8.2), 1],
    ['not when one row shows it: that is the step of the log', between(8, 8.01), 0],
    ['not when it is over as the window begins', between(4, 5), 0],
    ['not when it was left off for the loading for a quarter of an hour more', between(4, 5.2), 0],
    ['when it was left off for longer', between(4, 6), 1],
  ])('%s', (_, is, count) => {
    expect(off(is)).toHaveLength(count);
  });
});

describe('the run mode against the instruction', () => {
  it('is told by its time, and passing words of a defrost do not end it', () => {
    const mode: Of<string> = (h) =>
      between(7, 7.3)(h) ? 'Defrost' : between(10, 13)(h) ? 'Start-Stop' : 'Continuous';
    const { run } = analyse({ 'return-air': () => 36 }, { mode });
    expect(run).toMatchObject({ asked: 'continuous', logged: 'continuous' });
    expect(run?.runs?.map(({ mode: is }) => is)).toEqual(['continuous', 'start-stop', 'continuous']);
    expect((run?.otherSeconds ?? 0) / 3600).toBeCloseTo(3 + step, 6);
  });
});

describe('unit checks against the rule on watching the unit', () => {
  const rule = {
    id: 'unit-watched',
    stage: 'in-transit',
    needs: {
      any: [
        { reading: 'round', everyHours: 4, after: 'departed', before: 'arrived' },
        {
          all: [
            { log: 'unit-log', coverage: 0.95, from: 'departed', to: 'arrived' },
            { reading: 'round', everyHours: 12, after: 'departed', before: 'arrived' },
          ],
        },
      ],
    },
  };
  const found = (logs: Parameters<typeof assess>[0]['logs']) =>
    assess({
      state: state(
        items(
          { kind: 'event', event: 'departed', place: { stop: 'load-1' }, time: at(5) },
          { kind: 'round', alarms: [], time: at(10) },
          { kind: 'event', event: 'arrived', place: { stop: 'drop-1' }, time: at(15) },
        ),
      ),
      logs,
      ruleSet: { ruleSet: rulesOf(rule), sha256: HASH },
      at: instantAt(40),
    }).findings.find(({ id }) => id.startsWith('rounds-'));

  it('five hours apart is kept beside a log without gaps, which the rule allows', () => {
    const whole = log(hours, { 'return-air': hours.map(() => 36) });
    expect(found([whole])).toMatchObject({ id: 'rounds-kept', weighs: 'helps', facts: { beside: true } });
  });
  it('five hours apart without a log is too far', () => {
    expect(found([])).toMatchObject({ id: 'rounds-far-apart', weighs: 'hurts' });
  });
});

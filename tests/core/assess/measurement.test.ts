import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { namedInstrument } from '../../../src/core/assess/measurement/instruments.js';
import { errorAt } from '../../../src/core/assess/measurement/thermometer-error.js';
import { pulpMeasures } from '../../../src/core/assess/measurement/thermometers.js';
import {
  combined,
  judgeAgainst,
  judgeChange,
  rectangular,
  uncertaintyOf,
} from '../../../src/core/assess/measurement/uncertainty.js';
import type { DeliveryInput } from '../../../src/core/model/delivery.js';
import { instrument } from '../../../src/core/model/measurement.js';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import type { UncertaintyPart } from '../../../src/core/model/results.js';
import { kelvin } from '../../../src/core/model/temperature.js';
import { at, DAY_START, HOUR, items, state } from './made.js';

const part = (halfWidthKelvin: number): UncertaintyPart => ({
  is: 'accuracy',
  halfWidthKelvin,
  from: 'stated',
});

describe('uncertainty of a value', () => {
  it('combines the budget of the end gauge to 32 nm (JCGM 100:2008, H.1.4, as copied at second hand)', () => {
    // Length of the standard, difference, coefficients and temperatures times their sensitivities, in nm.
    expect(combined([25, 9.7, 2.9, 16.6])).toBeCloseTo(31.7, 1);
  });

  it('of anything within ± a is a/√3 (JCGM 100:2008, 4.3.7; 4.3.9 note: variance a²/3)', () => {
    expect(rectangular(3) ** 2).toBeCloseTo(3, 12);
  });

  it('of one part: a guard band of 0.95 of the half-width, where the exact 95 % needs 0.90', () => {
    expect(uncertaintyOf([part(1)]).guardKelvin).toBeCloseTo(0.9497, 4);
  });

  it('never gets smaller by a further part', () => {
    const half = fc.double({ min: 0, max: 5, noNaN: true });
    fc.assert(
      fc.property(fc.array(half), half, (some, one) => {
        const [less, more] = [some, [...some, one]].map((all) => uncertaintyOf(all.map(part)).guardKelvin);
        expect(more).toBeGreaterThanOrEqual((less ?? 0) - 1e-12);
      }),
    );
  });
});

describe('a value against a range of 34 to 38', () => {
  const range = { low: 34, high: 38 };
  it.each([
    [36, 1.9, 'within'],
    [36.2, 1.9, 'not-decidable'],
    [38.1, 1.9, 'not-decidable'],
    [34.3, 1.9, 'not-decidable'],
    [40, 1.9, 'above'],
    [32, 1.9, 'below'],
    [38, 0, 'within'],
    [37.5, 0.5, 'within'],
    [38.5, 0.5, 'not-decidable'],
    [39, 0.5, 'above'],
  ] as const)('%d ± %d: %s', (value, guard, answer) => {
    expect(judgeAgainst(value, guard, range)).toBe(answer);
  });

  it('is decided one way or not at all, and a wider guard band never decides more', () => {
    const any = fc.double({ min: 20, max: 50, noNaN: true });
    const guard = fc.double({ min: 0, max: 5, noNaN: true });
    fc.assert(
      fc.property(any, guard, guard, (value, some, more) => {
        const [narrow, wide] = [some, some + more].map((one) => judgeAgainst(value, one, range));
        expect([narrow, 'not-decidable']).toContain(wide);
      }),
    );
  });

  it.each([
    [3, 1, 'rose'],
    [-3, 1, 'fell'],
    [0.9, 1, 'not-decidable'],
    [1, 1, 'not-decidable'],
  ] as const)('a change of %d ± %d: %s', (change, guard, answer) => {
    expect(judgeChange(change, guard)).toBe(answer);
  });
});

describe('the thermometer that a reading names', () => {
  const known = ['P-7', 'P-71', 'receiver P-7'].map((name) => instrument.parse({ name }));
  it.each([
    ['P-7', 'P-7'],
    ['probe P-7, ice check 32.1 °F', 'P-7'],
    ['p 7', 'P-7'],
    ['P-71', 'P-71'],
    ['Receiver P-7', 'receiver P-7'],
    ['P-8', undefined],
    [undefined, undefined],
  ])('%s: %s', (text, name) => {
    expect(namedInstrument(known, text)?.name).toBe(name);
  });
});

describe('the error of a thermometer', () => {
  const of = (...checks: { at?: number; errorKelvin: number }[]) => ({ checks });
  it.each([
    { what: 'none without a check', record: of(), time: 5, error: undefined },
    {
      what: 'that of the one check',
      record: of({ at: 1, errorKelvin: 0.2 }),
      time: 5,
      error: { errorKelvin: 0.2 },
    },
    {
      what: 'between two along the line, with half of what it changed by',
      record: of({ at: 0, errorKelvin: 0.2 }, { at: 10, errorKelvin: 0.6 }),
      time: 5,
      error: { errorKelvin: 0.4, driftKelvin: 0.2 },
    },
    {
      what: 'after all checks that of the last, which no later one confirms',
      record: of({ at: 0, errorKelvin: 0.2 }, { at: 4, errorKelvin: 0.6 }),
      time: 5,
      error: { errorKelvin: 0.6 },
    },
  ])('$what', ({ record, time, error }) => {
    const found = errorAt(record, time);
    if (error === undefined) expect(found).toBeUndefined();
    else
      for (const [name, value] of Object.entries(error))
        expect(found).toHaveProperty(name, expect.closeTo(value, 9));
  });
});

describe('a pulp as measured', () => {
  const measured = (
    value: number,
    change: Partial<DeliveryInput> = {},
    name?: string,
    unit: '°F' | '°C' = '°F',
  ) => {
    const made = state(
      items({
        kind: 'pulp',
        temperature: { value, unit },
        from: 'driver',
        time: at(1),
        ...omitUndefined({ instrument: name }),
      }),
      change,
    );
    const [item] = made.evidence;
    if (item?.kind !== 'pulp') throw new Error('a pulp was made');
    return pulpMeasures(made)(item);
  };
  const halves = (of: ReturnType<typeof measured>) =>
    Object.fromEntries(of.uncertainty.parts.map((one) => [one.is, one.halfWidthKelvin]));

  it('without a name is good to the legal accuracy of food thermometers, and to half of its last digit', () => {
    expect(halves(measured(36))).toEqual({
      accuracy: kelvin({ difference: 2, unit: '°F' }),
      resolution: kelvin({ difference: 0.5, unit: '°F' }),
    });
    expect(halves(measured(2.2, {}, undefined, '°C'))).toEqual({ accuracy: 1, resolution: 0.05 });
  });

  it('with another accuracy assumed in delivery.yaml: that one', () => {
    expect(halves(measured(36.5, { uncertainty: { thermometers: '1 °C' } })).accuracy).toBe(1);
  });

  const P7 = (checks: { reads: string; at?: string }[]) => ({
    instruments: [{ name: 'P-7', accuracy: '1 °F', resolution: '0.1 °F', checks }],
  });

  it('is corrected by the check in ice before it, which leaves half of the accuracy', () => {
    const one = measured(38.1, P7([{ reads: '32.4 °F' }]), 'probe P-7');
    expect(one.asRead - one.celsius).toBeCloseTo(kelvin({ difference: 0.4, unit: '°F' }), 9);
    expect(halves(one).residual).toBeCloseTo(kelvin({ difference: 0.5, unit: '°F' }), 9);
    expect(one.thermometer).toBe('P-7');
  });

  it('is corrected by checks that were recorded before and after use, as one in delivery.yaml is', () => {
    const made = state(
      items(
        {
          kind: 'pulp',
          temperature: { value: 38.1, unit: '°F' },
          from: 'driver',
          time: at(1),
          instrument: 'Q-2',
        },
        {
          kind: 'instrument',
          name: 'q 2',
          type: 'thermometer',
          accuracy: '±0.5 °F',
          iceBefore: { value: 32, unit: '°F' },
          iceAfter: { value: 33, unit: '°F' },
          documents: [],
        },
      ),
    );
    const [item] = made.evidence;
    if (item?.kind !== 'pulp') throw new Error('a pulp was made');
    const one = pulpMeasures(made)(item);
    expect(one.asRead - one.celsius).toBeCloseTo(kelvin({ difference: 0.5, unit: '°F' }), 9);
    expect(halves(one).drift).toBeCloseTo(kelvin({ difference: 0.5, unit: '°F' }), 9);
    expect(one.instrument).toMatchObject({ checks: [{ use: 'before' }, { use: 'after' }] });
    expect(one.instrument?.driftKelvin).toBeCloseTo(5 / 9, 9);
  });

  it('between two checks keeps half of the drift, of which it has taken the rest off', () => {
    // The day starts at 4:00 in Arizona; the pulp is of 5:00, halfway between the checks.
    const one = measured(
      38.1,
      P7([
        { reads: '32.0 °F', at: '2026-07-14T04:00' },
        { reads: '33.0 °F', at: '2026-07-14T06:00' },
      ]),
      'P-7',
    );
    expect(DAY_START + HOUR).toBe(Date.parse('2026-07-14T12:00:00Z'));
    expect(one.asRead - one.celsius).toBeCloseTo(kelvin({ difference: 0.5, unit: '°F' }), 9);
    expect(halves(one).drift).toBeCloseTo(kelvin({ difference: 0.5, unit: '°F' }), 9);
    expect(halves(one)).not.toHaveProperty('accuracy');
  });
});

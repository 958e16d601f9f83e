import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMilestones } from '../../../src/core/assess/milestones.js';
import { airInCells, cellsOf } from '../../../src/core/assess/product/air-cells.js';
import { productAfter, sevenEighthsTime, timeConstant } from '../../../src/core/assess/product/cooling.js';
import { productCourse } from '../../../src/core/assess/product/course.js';
import { DRAWS, drawCases } from '../../../src/core/assess/product/draws.js';
import { heatAt, heatingOf } from '../../../src/core/assess/product/heating.js';
import { productResults } from '../../../src/core/assess/product/product.js';
import { quantile, shareOf, standardErrorOf } from '../../../src/core/assess/product/quantiles.js';
import { uniformNumbers, xorshift } from '../../../src/core/assess/product/seeded.js';
import { simulate } from '../../../src/core/assess/product/simulate.js';
import { pulpGroups } from '../../../src/core/assess/pulps.js';
import type { DeliveryInput } from '../../../src/core/model/delivery.js';
import type { Position } from '../../../src/core/model/evidence.js';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import type { TimeRange } from '../../../src/core/model/results.js';
import { fromCelsius, toCelsius } from '../../../src/core/model/temperature.js';
import {
  rateAt,
  respirationOf,
  specificHeat,
  wattsPerKilogram,
} from '../../../src/core/reference/respiration.js';
import { cases } from '../../properties.js';
import { at, DAY_START, HOUR, items, log, rulesOf, state } from './made.js';

const RULES = rulesOf({ needs: { event: 'arrived' } });
const span = (from: number, to: number): TimeRange => ({
  from: DAY_START + from * HOUR,
  to: DAY_START + to * HOUR,
});
const hours = Array.from({ length: 4 * 40 + 1 }, (_, i) => i / 4);

describe('product in air', () => {
  it('80 °F in air of 32 °F with a half-cooling time of 1 h reads 56, 44, 38 °F at 1, 2, 3 h (textbook)', () => {
    for (const [hour, fahrenheit] of [
      [1, 56],
      [2, 44],
      [3, 38],
    ] as const)
      expect(productAfter(80, 32, 32, hour * 3600, timeConstant(3600), 0)).toBeCloseTo(fahrenheit, 9);
  });

  it('seven-eighths cooling is three half-coolings (USDA Agriculture Handbook 66)', () => {
    expect(sevenEighthsTime(7)).toBeCloseTo(21, 9);
  });

  it('in rising air lags behind by rate times τ in the end', () => {
    // Standard result of a first-order system after a ramp: the lag tends to s·τ.
    expect(productAfter(0, 0, 1000, 1000 * 3600, 3600, 0)).toBeCloseTo(999, 9);
  });

  it('heats itself to hτ above steady air in the end', () => {
    expect(productAfter(5, 5, 5, 1e9, 3600, 1e-4)).toBeCloseTo(5.36, 9);
  });

  const piece = {
    start: fc.double({ min: -5, max: 40, noNaN: true }),
    air0: fc.double({ min: -5, max: 40, noNaN: true }),
    air1: fc.double({ min: -5, max: 40, noNaN: true }),
    seconds: fc.double({ min: 1, max: 1e6, noNaN: true }),
    tau: fc.double({ min: 600, max: 1e6, noNaN: true }),
    heating: fc.double({ min: 0, max: 1e-4, noNaN: true }),
  };

  it('cutting a piece of air anywhere changes nothing', () => {
    fc.assert(
      fc.property(fc.record(piece), fc.double({ min: 0.01, max: 0.99, noNaN: true }), (p, part) => {
        const whole = productAfter(p.start, p.air0, p.air1, p.seconds, p.tau, p.heating);
        const middle = p.air0 + (p.air1 - p.air0) * part;
        const first = productAfter(p.start, p.air0, middle, p.seconds * part, p.tau, p.heating);
        const both = productAfter(first, middle, p.air1, p.seconds * (1 - part), p.tau, p.heating);
        expect(both).toBeCloseTo(whole, 6);
      }),
    );
  });

  it('agrees with many small steps of the law itself', () => {
    fc.assert(
      fc.property(
        fc.record({ ...piece, seconds: fc.double({ min: 600, max: 20_000, noNaN: true }) }),
        (p) => {
          const steps = 20_000;
          const dt = p.seconds / steps;
          let t = p.start;
          for (let i = 0; i < steps; i++) {
            const air = p.air0 + ((p.air1 - p.air0) * (i + 0.5)) / steps;
            // Midpoint rule.
            const half = t + (dt / 2) * (p.heating - (t - air) / p.tau);
            t += dt * (p.heating - (half - air) / p.tau);
          }
          expect(productAfter(p.start, p.air0, p.air1, p.seconds, p.tau, p.heating)).toBeCloseTo(t, 3);
        },
      ),
      { numRuns: cases(15) },
    );
  });

  it('never leaves the range of start and air without heat of its own', () => {
    fc.assert(
      fc.property(fc.record(piece), (p) => {
        const end = productAfter(p.start, p.air0, p.air1, p.seconds, p.tau, 0);
        expect(end).toBeGreaterThanOrEqual(Math.min(p.start, p.air0, p.air1) - 1e-6);
        expect(end).toBeLessThanOrEqual(Math.max(p.start, p.air0, p.air1) + 1e-6);
      }),
    );
  });
});

describe('a product in the air of a log', () => {
  const quarters = Array.from({ length: 4 * 120 + 1 }, (_, i) => i / 4);
  const wave = (h: number) => 45 + 12 * Math.sin(h / 9) + 6 * Math.sin(h * 2);
  const one = (tau: number, respiration = 0) => ({
    tau: Float64Array.of(tau),
    mix: Float64Array.of(1),
    offset: Float64Array.of(0),
    respiration: Float64Array.of(respiration),
  });

  it('meets the mean air of each cell: the area under the straight lines is kept, also across unknown time', () => {
    const of = log([0, 1, 2, 3, 20, 40], { 'return-air': [10, 20, 0, 10, 10, 30] }, {}, '°C');
    const cells = cellsOf(span(0, 40));
    const means = airInCells(of, 'return-air', cells, 3 * 3600);
    const area = means.reduce((sum, value) => sum + value * (cells.seconds / 3600), 0);
    // 15 + 10 + 5 °C·h, then 17 h at 10 °C, then 20 h at 20 °C.
    expect(area).toBeCloseTo(30 + 170 + 400, 9);
    expect(means[0]).toBeCloseTo(10 + (10 * cells.seconds) / 3600 / 2, 9);
  });

  it('the mean of a cell lies within the air, wherever the window and the gaps lie', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 3_600_000 }),
        fc.integer({ min: 20 * HOUR, max: 60 * HOUR }),
        (late, length) => {
          const of = log([0, 1, 2, 20, 21, 38, 39, 70], { 'return-air': [2, 3, 2, 5, 2, 4, 3, 2] }, {}, '°C');
          const from = DAY_START + late;
          const means = airInCells(of, 'return-air', cellsOf({ from, to: from + length }), 3 * HOUR);
          expect(Math.min(...means)).toBeGreaterThan(2 - 1e-9);
          expect(Math.max(...means)).toBeLessThan(5 + 1e-9);
        },
      ),
    );
  });

  it.each([6000, 20_000, 400_000])('ends within 0.01 K of the exact law, τ %d s', (tau) => {
    const of = log(quarters, { 'return-air': quarters.map(wave) });
    const air = [...(of.channels['return-air'] ?? [])];
    const exact = air
      .slice(1)
      .reduce((product, value, i) => productAfter(product, air[i] ?? 0, value, 900, tau, 0), 8);
    const cells = cellsOf(span(0, 120));
    const first = airInCells(of, 'return-air', cells, 9000);
    const [ends] = simulate({ seconds: cells.seconds, first }, one(tau), undefined, [Float64Array.of(8)]);
    expect(Math.abs((ends?.[0] ?? Number.NaN) - exact)).toBeLessThan(0.01);
  });

  it('with heat of its own ends where small steps of the law bring it', () => {
    const broccoli = respirationOf('broccoli');
    if (broccoli === undefined) throw new Error('its respiration is published');
    const { joules } = specificHeat('broccoli');
    const heating = heatingOf(broccoli, joules);
    const tau = 200_000;
    const heat = (celsius: number) =>
      wattsPerKilogram(rateAt(broccoli, celsius, 'high'), broccoli.unit) / joules;
    let product = 4;
    for (let second = 0; second < 60 * 3600; second += 60)
      product += 60 * (heat(product) - (product - 5) / tau);
    const first = new Float64Array(240).fill(5);
    const [ends] = simulate({ seconds: 900, first }, one(tau, 1), heating, [Float64Array.of(4)]);
    expect(Math.abs((ends?.[0] ?? 0) - product)).toBeLessThan(0.03);
    if (heating !== undefined) expect(heatAt(heating, 4.1)).toBeCloseTo(heat(4.1), 7);
  });
});

describe('cases that are drawn', () => {
  it('come from the numbers that Marsaglia prints first (2003)', () => {
    const next = xorshift();
    expect([next(), next(), next(), next()]).toEqual([3701687786, 458299110, 2500872618, 3633119408]);
  });

  it('of four uniform inputs of unit spread add up to ± 3.88 for 95 % (JCGM 101:2008, 9.2.3, at second hand)', () => {
    const next = uniformNumbers();
    const drawn = Float64Array.from({ length: 400_000 }, () =>
      [1, 2, 3, 4].reduce((sum) => sum + (2 * next() - 1) * Math.sqrt(3), 0),
    );
    expect(quantile(drawn, 0.975)).toBeCloseTo(3.88, 1);
    expect(quantile(drawn, 0.025)).toBeCloseTo(-3.88, 1);
  });

  it('are the same each time, and spread as stated', () => {
    const priors = { halfCoolingSeconds: { low: 3600, high: 36_000 }, sensorKelvin: 1, airAtPlaceKelvin: 2 };
    const draws = drawCases(priors);
    expect(drawCases(priors)).toEqual(draws);
    // Half of a log-uniform spread lies below the geometric mean.
    const middle = timeConstant(3600 * Math.sqrt(10));
    const below = shareOf(draws.tau, (tau) => tau < middle);
    expect(Math.abs(below - 0.5)).toBeLessThan(3 * standardErrorOf(0.5, DRAWS));
    expect(quantile(draws.offset, 0)).toBeGreaterThanOrEqual(-3);
    expect(quantile(draws.offset, 1)).toBeLessThanOrEqual(3);
  });
});

const LOAD = 'load-1';
const DROP = 'drop-1';
const LINE: DeliveryInput['lines'][number] = {
  id: 'romaine',
  goods: 'lettuce-romaine',
  from: 'load-1',
  to: 'drop-1',
  pallets: 12,
  instruction: { setPoint: '36 °F', tolerance: '2 °F' },
};

type Read = number | readonly [value: number, position: Position];

function asked(
  loading: readonly Read[],
  arrival: readonly Read[],
  {
    air = () => 36,
    line = {},
    instrument = 'P-7',
  }: {
    air?: (hour: number) => number;
    line?: Partial<DeliveryInput['lines'][number]>;
    instrument?: string | undefined;
  } = {},
) {
  const pulp = (read: Read, stop: string, hour: number) => {
    const [value, position] = typeof read === 'number' ? [read] : read;
    return {
      kind: 'pulp',
      temperature: { value, unit: '°F' },
      from: 'driver',
      place: { stop, ...omitUndefined({ position }) },
      time: at(hour),
      ...omitUndefined({ instrument: instrument === '' ? undefined : instrument }),
    } as const;
  };
  const made = state(
    items(
      { kind: 'event', event: 'doors-closed', place: { stop: LOAD }, time: at(0) },
      { kind: 'event', event: 'doors-opened', place: { stop: DROP }, time: at(40) },
      ...loading.map((read) => pulp(read, LOAD, -0.5)),
      ...arrival.map((read) => pulp(read, DROP, 41)),
    ),
    { lines: [{ ...LINE, ...line }] },
  );
  const pulps = pulpGroups(made, RULES);
  const air1 = log(hours, { 'return-air': hours.map(air) });
  const [result] = productResults({
    delivery: made.delivery,
    ruleSet: RULES,
    pulps,
    logs: [air1],
    milestones: readMilestones(made, DAY_START + 100 * HOUR),
  });
  if (result === undefined) throw new Error('no result');
  return { result, delivery: made.delivery, pulps, log: air1 };
}
const verdict = (...given: Parameters<typeof asked>) => asked(...given).result.verdict;

describe('what the goods that arrived are consistent with', () => {
  it.each<[what: string, verdict: string, ...Parameters<typeof asked>]>([
    ['loaded at 52, at 47 in air of 36', 'origin', [52, 52.5, 51.8], [47, 47.4, 46.5]],
    ['loaded right, warmed by air of 58', 'transit', [36, 36.2, 35.8], [49, 50], { air: () => 58 }],
    ['36.0, 36.2, 38.1 at loading, 55 in air of 36', 'neither', [36, 36.2, 38.1], [55, 55, 55]],
    ['a little warm at both ends, as goods loaded right could have come too', 'both', [40.5, 41], [39.8]],
    ['warm at loading and in warm air', 'both', [46, 46], [52], { air: () => 58 }],
    ['in range at delivery', 'in-range', [45, 46], [36.5, 36.4]],
    ['by a thermometer good to 2 °F too near the limit', 'in-range', [45], [39.5], { instrument: '' }],
    ['loaded at 24, at 27 in air of 36', 'origin', [24, 24], [27]],
    [
      'cooled by air of 20',
      'transit',
      [36, 36],
      [24],
      { air: () => 20, line: { halfCoolingHours: { shortest: 8, longest: 48 } } },
    ],
  ])('%s: %s', (_, expected, ...given) => {
    expect(verdict(...given)).toBe(expected);
  });

  it('is told place by place: a tail that was loaded right is no proof of warm loading', () => {
    const { result } = asked(
      [
        [52, 'nose'],
        [37, 'tail'],
      ],
      [
        [47, 'nose'],
        [43.1, 'tail'],
      ],
    );
    expect(result.places.map(({ place, verdict: of }) => [place.position, of])).toEqual([
      ['nose', 'origin'],
      ['tail', 'neither'],
    ]);
    expect(result.verdict).toBe('both');
  });

  it('asks places that were not read at loading with all pulps of that end, which must all be out of range', () => {
    const [one] = asked(
      [
        [52, 'nose'],
        [36, 'tail'],
      ],
      [[47, 'middle']],
    ).result.places;
    expect(one).toMatchObject({ loadingFrom: 'whole-line', place: { position: 'middle' } });
    expect(one?.verdict).not.toBe('origin');
  });

  it('gives each world as 95 % of the cases, the goods as measured above those as instructed', () => {
    const [one] = asked([52], [47]).result.places;
    expect(one?.asMeasured.low).toBeLessThan(toCelsius(47, '°F'));
    expect(one?.asMeasured.high).toBeGreaterThan(toCelsius(47, '°F'));
    expect(one?.asInstructed.high).toBeLessThan(toCelsius(47, '°F'));
    expect(one?.asInstructed.tail).toBeLessThan(0.025);
  });

  it('a wider spread of what is not known never makes a verdict of one that does not discriminate', () => {
    const given = [[52], [47], { line: { halfCoolingHours: { shortest: 1, longest: 2000 } } }] as const;
    expect(['both', 'neither', 'origin']).toContain(verdict(...given));
    expect(verdict([39.5], [39.3])).toBe('both');
  });

  it.each<[what: string, why: string, ...Parameters<typeof asked>]>([
    ['no loading pulps', 'no-loading-pulps', [], [45]],
    ['no arrival pulps', 'no-arrival-pulps', [45], []],
    ['iced goods', 'iced', [45], [45], { line: { iced: true } }],
    ['half of the air unknown', 'air-not-known', [45], [45], { air: (h) => (h > 20 ? Number.NaN : 36) }],
    [
      'an instruction that freezes the goods',
      'instruction-freezes',
      [36],
      [31.5],
      { line: { goods: 'celery', instruction: { setPoint: '29 °F' } } },
    ],
  ])('%s: not asked, and why', (_, why, ...given) => {
    expect(asked(...given).result).toMatchObject({ verdict: 'not-decidable', why, places: [] });
  });

  it('without an instruction nothing is asked', () => {
    const { instruction: _, ...bare } = LINE;
    const { result } = asked([45], [45], { line: { ...bare, instruction: undefined } });
    expect(result.why).toBe('no-instruction');
  });

  it('names where the half-cooling times come from, of what is published and what is not', () => {
    const { halfCoolingSeconds: pallets } = asked([44], [40]).result.assumptions;
    expect(pallets.from).toMatch(/longest .*Faubion and Kader.* shortest common practice, no source/);
    const measured = asked([44], [40], { line: { halfCoolingHours: { shortest: 5, longest: 9 } } });
    expect(measured.result.assumptions).toMatchObject({
      load: 'measured',
      halfCoolingSeconds: { low: 5 * 3600, high: 9 * 3600 },
    });
  });

  it('the course begins at the loading pulps and ends at the result', () => {
    const { result, delivery, pulps, log: air1 } = asked([52], [47]);
    const [line] = delivery.lines;
    const loading = pulps.find(({ does }) => does === 'load');
    if (line === undefined || loading === undefined) throw new Error('they were made');
    const course = productCourse(result, line, air1, { delivery, loading });
    const [first, last] = [course?.[0], course?.at(-1)];
    expect(fromCelsius(first?.asMeasured.low ?? 0, '°F')).toBeGreaterThan(49);
    expect(last?.at).toBe(DAY_START + 40 * HOUR);
    expect(last?.asMeasured.high).toBeCloseTo(result.asMeasured?.high ?? 0, 9);
    expect(last?.asInstructed.low).toBeCloseTo(result.asInstructed?.low ?? 0, 9);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMilestones } from '../../../src/core/assess/milestones.js';
import { productAfter, sevenEighthsTime, timeConstant } from '../../../src/core/assess/product/cooling.js';
import { NO_HEATING } from '../../../src/core/assess/product/heated.js';
import { productResults } from '../../../src/core/assess/product/product.js';
import { groupsAtEnd, productsAtEnd } from '../../../src/core/assess/product/response.js';
import { pulpGroups } from '../../../src/core/assess/pulps.js';
import type { DeliveryInput } from '../../../src/core/model/delivery.js';
import type { TimeRange } from '../../../src/core/model/results.js';
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

  it('products that follow one air at once end as each would alone', () => {
    const of = log(hours, { 'return-air': hours.map((h) => 40 + 5 * Math.sin(h)) });
    const starts = [
      { celsius: 8, tau: 7200 },
      { celsius: 2, tau: 90_000 },
    ];
    const heating = [
      { from: Number.NEGATIVE_INFINITY, to: 4, rate: 1e-6, slope: 0 },
      { from: 4, to: Number.POSITIVE_INFINITY, rate: 1e-6, slope: 0.1 },
    ];
    const [together, ...alone] = [starts, ...starts.map((one) => [one])].map((some) => [
      ...productsAtEnd(of, 'return-air', span(0, 40), 9000, some, heating),
    ]);
    expect(together).toEqual(alone.flat());
  });

  it('in one walk end where the law brings them piece by piece, with and without heat', () => {
    const quarters = Array.from({ length: 4 * 600 + 1 }, (_, i) => i / 4);
    const air = quarters.map((h) => 45 + 25 * Math.sin(h / 9) + 8 * Math.sin(h * 5));
    const of = log(quarters, { 'return-air': air });
    // Four times the heat at every 10 K more between 0 and 20 °C, the same outside.
    const slope = Math.log(4) / 10;
    const heating = [
      { from: Number.NEGATIVE_INFINITY, to: 0, rate: 2e-6, slope: 0 },
      { from: 0, to: 10, rate: 2e-6, slope },
      { from: 10, to: 20, rate: 8e-6, slope },
      { from: 20, to: Number.POSITIVE_INFINITY, rate: 32e-6, slope: 0 },
    ];
    const heatAt = (celsius: number) => 2e-6 * 4 ** (Math.min(20, Math.max(0, celsius)) / 10);
    const starts = [1800, 20_000, 400_000].flatMap((tau) => [-1, 3, 21].map((celsius) => ({ celsius, tau })));
    const byPieces = (heat: (celsius: number) => number) =>
      starts.map(({ celsius, tau }) =>
        [...(of.channels['return-air'] ?? [])].reduce(
          ({ product, before }, value) => ({
            product:
              before === undefined ? product : productAfter(product, before, value, 900, tau, heat(product)),
            before: value,
          }),
          { product: celsius, before: undefined as number | undefined },
        ),
      );
    const groups = [
      { starts, heating },
      { starts, heating: NO_HEATING },
    ];
    const ends = groupsAtEnd(of, 'return-air', span(0, 600), 9000, groups);
    [heatAt, () => 0].forEach((heat, group) => {
      byPieces(heat).forEach(({ product }, i) => {
        expect(ends[group]?.[i]).toBeCloseTo(product, 9);
      });
    });
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

  it('over a whole log a sample on the line changes nothing, and neither does the time of day', () => {
    const of = log([0, 1, 2], { 'return-air': [10, 0, 5] }, {}, '°C');
    const more = log([0, 0.5, 1, 2], { 'return-air': [10, 5, 0, 5] }, {}, '°C');
    const end = productsAtEnd(of, 'return-air', span(0, 2), 9000, [{ celsius: 8, tau: 7200 }])[0];
    expect(productsAtEnd(more, 'return-air', span(0, 2), 9000, [{ celsius: 8, tau: 7200 }])[0]).toBeCloseTo(
      end ?? Number.NaN,
      9,
    );
    const later = { ...of, times: Float64Array.from(of.times, (t) => t + 12345) };
    const window = { from: span(0, 2).from + 12345, to: span(0, 2).to + 12345 };
    expect(productsAtEnd(later, 'return-air', window, 9000, [{ celsius: 8, tau: 7200 }])[0]).toBeCloseTo(
      end ?? Number.NaN,
      9,
    );
  });
});

const LOAD = { stop: 'load-1' };
const DROP = { stop: 'drop-1' };
const LINE: DeliveryInput['lines'][number] = {
  id: 'romaine',
  goods: 'lettuce-romaine',
  from: 'load-1',
  to: 'drop-1',
  pallets: 12,
};

function plausible(
  loading: readonly number[],
  arrival: readonly number[],
  {
    air = () => 36,
    base = LINE,
    line = {},
  }: {
    air?: (hour: number) => number;
    base?: DeliveryInput['lines'][number];
    line?: Partial<DeliveryInput['lines'][number]>;
  } = {},
) {
  const pulp = (value: number, place: { stop: string }, hour: number) =>
    ({ kind: 'pulp', temperature: { value, unit: '°F' }, from: 'driver', place, time: at(hour) }) as const;
  const made = state(
    items(
      { kind: 'event', event: 'doors-closed', place: LOAD, time: at(0) },
      { kind: 'event', event: 'doors-opened', place: DROP, time: at(40) },
      ...loading.map((value) => pulp(value, LOAD, -0.5)),
      ...arrival.map((value) => pulp(value, DROP, 41)),
    ),
    { lines: [{ ...base, ...line }] },
  );
  const [result] = productResults(
    made.delivery.lines,
    pulpGroups(made, RULES),
    [log(hours, { 'return-air': hours.map(air) })],
    readMilestones(made, DAY_START + 100 * HOUR),
  );
  if (result === undefined) throw new Error('no result');
  return result;
}

describe('the verdict on arrival pulps', () => {
  it.each([
    { what: 'cooled on the way', loading: [44, 46], arrival: [38, 40], verdict: 'inside' },
    { what: 'warm in cold air', loading: [36, 37], arrival: [52, 53], verdict: 'above' },
    { what: 'colder than the air', loading: [45, 46], arrival: [32, 33], verdict: 'below' },
  ])('$what: $verdict', ({ loading, arrival, verdict }) => {
    const result = plausible(loading, arrival);
    expect(result.verdict).toBe(verdict);
    expect(result.beyondKelvin ?? 0).toBeGreaterThanOrEqual(0);
    expect(result.matters?.kelvin).toBeGreaterThan(0);
    expect(result.assumptions).toMatchObject({
      load: 'pallets',
      halfCoolingSeconds: { low: 4 * 3600, high: 15.7 * 86_400 },
      afterSeconds: 3600,
    });
  });

  it('names where the half-cooling times come from, of what is published and what is not', () => {
    const { halfCoolingSeconds: pallets } = plausible([44], [40]).assumptions;
    expect(pallets.from).toMatch(/longest .*Faubion and Kader.* shortest common practice, no source/);
    const { pallets: _, ...loose } = LINE;
    const cartons = plausible([44], [40], { base: { ...loose, cartons: 400 } }).assumptions;
    expect(cartons.halfCoolingSeconds.from).toBe('common practice, no source');
  });

  it('warm air explains warm pulps', () => {
    expect(plausible([36, 37], [50, 52], { air: () => 55 }).verdict).toBe('inside');
  });

  it.each([
    { what: 'no loading pulps', loading: [], arrival: [40], more: {}, why: 'no-loading-pulps' },
    { what: 'no arrival pulps', loading: [40], arrival: [], more: {}, why: 'no-arrival-pulps' },
    { what: 'iced goods', loading: [40], arrival: [40], more: { line: { iced: true } }, why: 'iced' },
    {
      what: 'half of the air unknown',
      loading: [40],
      arrival: [40],
      more: { air: (h: number) => (h > 20 ? Number.NaN : 36) },
      why: 'air-not-known',
    },
    { what: 'both sides', loading: [40], arrival: [20, 80], more: {}, why: 'pulps-on-both-sides' },
  ])('$what: not decidable, and why', ({ loading, arrival, more, why }) => {
    expect(plausible(loading, arrival, more)).toMatchObject({ verdict: 'not-decidable', why });
  });

  it('names the assumption that matters most: a wide range of loading pulps in short transit', () => {
    const spread = plausible([34, 60], [50], { air: () => 36 });
    const narrow = plausible([60, 60], [50], { air: () => 36 });
    expect(narrow.matters?.is).toBe('half-cooling-time');
    expect(spread.envelope?.low).toBeLessThan(narrow.envelope?.low ?? 0);
  });

  it('a load that stands as loose cartons follows faster', () => {
    const { pallets: _, ...loose } = LINE;
    const made = plausible([60, 60], [50], { base: { ...loose, cartons: 400 } });
    expect(made.assumptions.load).toBe('loose-cartons');
    expect(made.envelope?.high).toBeLessThan(plausible([60, 60], [50]).envelope?.high ?? 0);
  });
});

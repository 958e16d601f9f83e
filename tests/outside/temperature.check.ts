import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { airInCells, cellsOf } from '../../src/core/assess/product/air-cells.js';
import { productAfter, sevenEighthsTime, timeConstant } from '../../src/core/assess/product/cooling.js';
import { simulate } from '../../src/core/assess/product/simulate.js';
import { meanKineticTemperature } from '../../src/core/assess/temperature/kinetic.js';
import { gapLimit } from '../../src/core/assess/temperature/sampling-interval.js';
import { summarise } from '../../src/core/assess/temperature/summary.js';
import type { EvidenceId } from '../../src/core/model/evidence.js';
import type { TimeRange } from '../../src/core/model/results.js';
import { fromCelsius, fromKelvin, kelvin, toCelsius } from '../../src/core/model/temperature.js';
import type { Zone } from '../../src/core/model/time.js';
import type { UnitLog } from '../../src/core/model/unit-log.js';
import {
  BTU_PER_TON_DAY,
  KCAL_PER_TONNE_DAY,
  respirationOf,
  wattsPerKilogram,
} from '../../src/core/reference/respiration.js';
import { readUnitLog } from '../../src/intake/unit-log/read.js';
import { recogniseUnitLog } from '../../src/intake/unit-log/recognise.js';
import { checkWith, python, scratch } from './programs.js';

const HOUR = 3_600_000;

describe('units', () => {
  // NIST Special Publication 811, appendix B.8: t/°C = (t/°F − 32)/1.8; an interval of 1 °F is 1/1.8 K.
  it.each([
    [32, 0],
    [212, 100],
    [98.6, 37],
    [-40, -40],
  ])('%d °F is %d °C', (f, c) => {
    expect(toCelsius(f, '°F')).toBeCloseTo(c, 12);
    expect(fromCelsius(c, '°F')).toBeCloseTo(f, 12);
  });
  it('an interval of 9 °F is one of 5 K', () => {
    expect(kelvin({ difference: 9, unit: '°F' })).toBeCloseTo(5, 12);
    expect(fromKelvin(5, '°F')).toBeCloseTo(9, 12);
  });
});

describe('mean kinetic temperature', () => {
  // No worked example was found in print. These follow from the published formula with ΔH/R = 10,000 K (83.14472 kJ/mol
  // over 8.314472 J/(mol·K)), computed apart; the constants used here differ by 1e-5 of it.
  it.each([
    { held: [20, 30], expected: 26.259887 },
    { held: [...Array(11).fill(25), 40], expected: 27.571377 },
    { held: [5, 5, 5, 15], expected: 8.785926 },
    { held: [2, 8], expected: 5.536425 },
    { held: [...Array(23).fill(20), 40], expected: 22.44793 },
  ])('of $held', ({ held, expected }) => {
    const of = meanKineticTemperature(held.map((celsius: number) => ({ celsius, time: 1 })));
    expect(Math.abs(of - expected)).toBeLessThan(3e-5);
  });

  it('with the constants used here, of 20 and 30 °C: 26.259878', () => {
    expect(
      meanKineticTemperature([
        { celsius: 20, time: 1 },
        { celsius: 30, time: 1 },
      ]),
    ).toBeCloseTo(26.259878, 6);
  });
});

describe('degree-hours against calculus', () => {
  const held = (
    celsius: (hour: number) => number,
    hours: number,
    perHour: number,
    low: number,
    high: number,
  ) => {
    const count = hours * perHour + 1;
    const times = Float64Array.from({ length: count }, (_, i) => (i / perHour) * HOUR);
    const values = Float64Array.from({ length: count }, (_, i) => celsius(i / perHour));
    return summarise('return-air', times, values, { from: 0, to: hours * HOUR }, 4000, { low, high });
  };

  it('of a ramp from 0 to 10 °C over 10 h above 4 °C: 6²/2 = 18 K·h, exactly', () => {
    const sums = held((h) => h, 10, 1, -99, 4);
    expect(sums.degreeHoursAbove).toBeCloseTo(18, 6);
    expect(sums.aboveSeconds).toBeCloseTo(6 * 3600, 3);
  });

  it('of a sine of amplitude A around the limit: A·P/π per period', () => {
    const [amplitude, period, periods] = [3, 2, 5];
    const sums = held(
      (h) => 5 + amplitude * Math.sin((2 * Math.PI * h) / period),
      period * periods,
      3600,
      5,
      5,
    );
    const expected = (amplitude * period * periods) / Math.PI;
    expect(Math.abs(sums.degreeHoursAbove / expected - 1)).toBeLessThan(1e-6);
    expect(Math.abs(sums.degreeHoursBelow / expected - 1)).toBeLessThan(1e-6);
    expect(sums.mean).toBeCloseTo(5, 9);
  });
});

describe('cooling', () => {
  it('80 °F in 32 °F with a half-cooling time of 1 h: 56, 44, 38 °F (textbook example)', () => {
    const at = (hour: number) => productAfter(80, 32, 32, hour * 3600, timeConstant(3600), 0);
    expect([1, 2, 3].map(at).map((t) => Number(t.toFixed(9)))).toEqual([56, 44, 38]);
  });

  it('seven-eighths cooling is three half-coolings (USDA Agriculture Handbook 66)', () => {
    expect(sevenEighthsTime(1)).toBeCloseTo(3, 12);
    expect(productAfter(80, 32, 32, 3 * 3600, timeConstant(3600), 0) - 32).toBeCloseTo((80 - 32) / 8, 9);
  });

  it('a lumped bead of 1 s from 25 to 199 °C in 200 °C takes 5.165 s (Incropera, example 5.1, from memory)', () => {
    expect(productAfter(25, 200, 200, 5.165, 1, 0)).toBeCloseTo(199, 1);
  });
});

describe('heat of respiration', () => {
  // UC Davis fact sheets: mL CO2/kg·h × 440 = Btu/ton·day, × 122 = kcal/tonne·day. Handbook 66 (from memory): 220 and 61 for mg.
  it('of broccoli, 21 mg at 0 °C: 4,620 Btu/ton·day and 1,281 kcal/tonne·day', () => {
    expect(21 * BTU_PER_TON_DAY.mg).toBe(4620);
    expect(21 * KCAL_PER_TONNE_DAY.mg).toBe(1281);
  });

  it('both units of power say the same: Btu per short ton and kcal per tonne', () => {
    // 1 Btu = 1055.06 J, 1 short ton = 907.185 kg (NIST SP 811).
    for (const unit of ['mL', 'mg'] as const) {
      const fromBtu = (BTU_PER_TON_DAY[unit] * 1055.06) / 907.185 / 86_400;
      expect(Math.abs(wattsPerKilogram(1, unit) / fromBtu - 1)).toBeLessThan(0.004);
    }
  });

  it('follows from 673 kcal per mole of sugar, six of carbon dioxide (264 g): 2.96 W per tonne and mg/kg·h', () => {
    const derived = ((673 * 4184) / 264 / 3600) * 1e-3;
    expect(Math.abs(wattsPerKilogram(1, 'mg') / derived - 1)).toBeLessThan(0.004);
    expect(derived * 1000).toBeCloseTo(2.963, 3);
  });

  it('the heat of strawberries at 0 °C lies by NC State’s 0.069 Btu/lb·h (from Handbook 66)', () => {
    // NC State gives 0.069 Btu/(lb·h): 0.0446 W/kg; the UC Davis range of 6 to 10 mL gives 0.035 to 0.059.
    const [cold] = respirationOf('strawberries')?.points ?? [];
    const published = (0.069 * 1055.06) / 0.45359237 / 3600;
    expect(wattsPerKilogram(cold?.low ?? 0, 'mL')).toBeLessThan(published);
    expect(wattsPerKilogram(cold?.high ?? 0, 'mL')).toBeGreaterThan(published);
  });
});

describe('another hand, from the CSV alone', () => {
  const disk = scratch();
  afterAll(disk.end);

  /** A generated log: waves, a step, missing cells, a gap, uneven minutes; the same every time. */
  function generated(seed: number, rows: number, step: number): string {
    let state = seed;
    const random = () => {
      state = (state * 1103515245 + 12345) % 2147483648;
      return state / 2147483648;
    };
    const lines = ['Time,Set point (°F),Return air (°F),Supply air (°F)'];
    let minute = 0;
    for (let i = 0; i < rows; i++) {
      minute += i === Math.floor(rows / 3) ? step * 11 : step + (random() < 0.1 ? 1 : 0);
      const air = 36 + 3 * Math.sin(i / 7) + (i > rows * 0.8 ? 6 : 0) + random();
      const shown = random() < 0.02 ? '' : air.toFixed(1);
      const time = new Date(Date.UTC(2026, 6, 14, 12) + minute * 60_000).toISOString();
      lines.push(
        `${time.slice(0, 10)} ${time.slice(11, 19)},36.0,${shown},${(air - 2 - random()).toFixed(2)}`,
      );
    }
    return `${lines.join('\n')}\n`;
  }

  const logs = [
    {
      what: 'the demonstration’s log',
      path: join(import.meta.dirname, '../../fixtures/demo/evidence/unit/unit-download.csv'),
      zone: 'America/Phoenix',
      offset: -7,
      window: [Date.parse('2026-07-14T12:31:00Z'), Date.parse('2026-07-16T10:52:00Z')],
    },
    {
      what: 'a log of 4,000 rows at five minutes',
      path: disk.put('a.csv', generated(7, 4000, 5)),
      zone: 'UTC',
      offset: 0,
      window: [Date.UTC(2026, 6, 14, 13, 2, 30), Date.UTC(2026, 6, 27)],
    },
    {
      what: 'a log of 900 rows at fifteen minutes',
      path: disk.put('b.csv', generated(11, 900, 15)),
      zone: 'UTC',
      offset: 0,
      window: [Date.UTC(2026, 6, 14), Date.UTC(2026, 6, 23, 7, 7, 7)],
    },
  ] as const;

  for (const { what, path, zone, offset, window } of logs)
    describe(what, () => {
      let log: UnitLog;
      const [from, to] = window;
      const span: TimeRange = { from, to };
      const [low, high] = [toCelsius(34, '°F'), toCelsius(38, '°F')];
      beforeAll(async () => {
        const read = await recogniseUnitLog(path, { fileName: path, logZone: zone as Zone });
        if (read.is !== 'log') throw new Error(read.problem.message);
        log = await readUnitLog(path, read.mapping, { evidence: 'e1' as EvidenceId, addedSeconds: 0 });
      });

      checkWith(
        python,
        'the same means, hours, degree-hours and product to 1e-9, and the product of the law to 0.0001 K',
        () => {
          const cells = cellsOf(span);
          const done = spawnSync(
            python.command?.[0] ?? '',
            [
              join(import.meta.dirname, 'recompute.py'),
              path,
              ...[offset, from, to, low, high, cells.count].map(String),
            ],
            { encoding: 'utf8' },
          );
          if (done.status !== 0) throw new Error(done.stderr);
          const theirs = JSON.parse(done.stdout);
          expect(theirs.rows).toBe(log.times.length);
          const { gapLimitSeconds } = gapLimit(log.times);
          for (const channel of ['return-air', 'supply-air'] as const) {
            const values = log.channels[channel] ?? new Float64Array();
            const own = summarise(channel, log.times, values, span, gapLimitSeconds, { low, high }, true);
            const figures = {
              mean: own.mean,
              min: own.min?.value,
              max: own.max?.value,
              knownSeconds: own.knownSeconds,
              aboveSeconds: own.aboveSeconds,
              belowSeconds: own.belowSeconds,
              degreeHoursAbove: own.degreeHoursAbove,
              degreeHoursBelow: own.degreeHoursBelow,
              meanKinetic: own.meanKinetic,
            };
            for (const [name, value] of Object.entries(figures))
              expect(apart(value, theirs[channel][name]), `${channel} ${name}`).toBeLessThan(1e-9);
          }
          const tau = timeConstant(20 * 3600);
          const first = airInCells(log, 'return-air', cells, gapLimitSeconds);
          const one = (value: number) => Float64Array.of(value);
          const drawn = { tau: one(tau), mix: one(1), offset: one(0), respiration: one(0) };
          const [product] = simulate({ seconds: cells.seconds, first }, drawn, undefined, [one(10)]);
          expect(apart(product?.[0], theirs.productInCells)).toBeLessThan(1e-9);
          // Ours has the mean air of each quarter of an hour, theirs the straight lines themselves.
          expect(Math.abs((product?.[0] ?? Number.NaN) - theirs.product)).toBeLessThan(1e-4);
        },
      );
    });
});

/** Relative difference; of figures below one thousandth the absolute one in thousandths. */
function apart(own: number | undefined, theirs: number): number {
  return own === undefined ? Number.NaN : Math.abs(own - theirs) / Math.max(Math.abs(theirs), 1e-3);
}

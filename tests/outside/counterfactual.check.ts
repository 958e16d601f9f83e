import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect } from 'vitest';
import { readMilestones } from '../../src/core/assess/milestones.js';
import { DRAWS } from '../../src/core/assess/product/draws.js';
import { productResults } from '../../src/core/assess/product/product.js';
import { standardErrorOf } from '../../src/core/assess/product/quantiles.js';
import { pulpGroups } from '../../src/core/assess/pulps.js';
import { furtherReadings, shareBounds } from '../../src/core/assess/sampling/share-bounds.js';
import { kelvin, toCelsius } from '../../src/core/model/temperature.js';
import { respirationOf, specificHeat, wattsPerKilogram } from '../../src/core/reference/respiration.js';
import { at, DAY_START, HOUR, items, log, rulesOf, state } from '../core/assess/made.js';
import { ask, checkWith, scipy } from './programs.js';

const RULES = rulesOf({ needs: { event: 'arrived' } });
const WINDOW = 40;
const hours = Array.from({ length: WINDOW + 1 }, (_, hour) => hour);
const F = (value: number) => toCelsius(value, '°F');

interface Case {
  what: string;
  goods: string;
  loading: number[];
  arrival: number;
  /** Return and supply air by the hour, °F. */
  air: (hour: number) => [number, number];
  halfCoolingHours: { shortest: number; longest: number };
  instrument?: string;
}

const CASES: Case[] = [
  {
    what: 'warm lettuce in cold air',
    goods: 'lettuce-romaine',
    loading: [50, 51.5, 48.8],
    arrival: 47,
    air: (h) => [36 + Math.sin(h / 3), 33 + Math.sin(h / 2)],
    halfCoolingHours: { shortest: 4, longest: 376 },
    instrument: 'P-7',
  },
  {
    what: 'broccoli, which respires much, by an unnamed thermometer',
    goods: 'broccoli',
    loading: [40, 44],
    arrival: 52,
    air: (h) => [40 + h / 4, 36 + h / 5],
    halfCoolingHours: { shortest: 6, longest: 60 },
  },
  {
    what: 'celery in air that broke down',
    goods: 'celery',
    loading: [36.1, 36.4],
    arrival: 55,
    air: (h) => [h < 8 ? 36 : 64, h < 8 ? 34 : 60],
    halfCoolingHours: { shortest: 5, longest: 30 },
    instrument: 'P-7',
  },
];

function oursAndTheirs(one: Case) {
  const pulp = (value: number, stop: string, hour: number) =>
    ({
      kind: 'pulp',
      temperature: { value, unit: '°F' },
      from: 'driver',
      place: { stop, position: 'nose' },
      time: at(hour),
      ...(one.instrument === undefined ? {} : { instrument: one.instrument }),
    }) as const;
  const made = state(
    items(
      { kind: 'event', event: 'doors-closed', place: { stop: 'load-1' }, time: at(0) },
      { kind: 'event', event: 'doors-opened', place: { stop: 'drop-1' }, time: at(WINDOW) },
      ...one.loading.map((value) => pulp(value, 'load-1', -0.5)),
      pulp(one.arrival, 'drop-1', WINDOW + 1),
    ),
    {
      lines: [
        {
          id: 'a',
          goods: one.goods,
          from: 'load-1',
          to: 'drop-1',
          instruction: { setPoint: '36 °F', tolerance: '2 °F' },
          halfCoolingHours: one.halfCoolingHours,
        },
      ],
    },
  );
  const pulps = pulpGroups(made, RULES);
  const air = hours.map(one.air);
  const [result] = productResults({
    delivery: made.delivery,
    ruleSet: RULES,
    pulps,
    logs: [
      log(hours, {
        'return-air': air.map(([first]) => first),
        'supply-air': air.map(([, second]) => second),
      }),
    ],
    milestones: readMilestones(made, DAY_START + 100 * HOUR),
  });
  const [place] = result?.places ?? [];
  const respiration = respirationOf(one.goods);
  if (result === undefined || place === undefined || respiration === undefined)
    throw new Error('the case arrives out of range, and its respiration is published');
  const standard = (does: 'load' | 'unload') =>
    (pulps.find((group) => group.does === does)?.readings[0]?.uncertainty.standardKelvin ?? 0) * Math.sqrt(3);
  const { assumptions } = result;
  const asked = {
    halfCooling: [assumptions.halfCoolingSeconds.low, assumptions.halfCoolingSeconds.high],
    airAtPlace: assumptions.airAtPlaceKelvin,
    sensor: assumptions.sensorKelvin,
    cartons: assumptions.cartonsKelvin,
    seconds: hours.map((hour) => hour * 3600),
    first: air.map(([first]) => F(first)),
    second: air.map(([, second]) => F(second)),
    respiration: respiration.points.map(({ celsius, high }) => [celsius, high]),
    kelvinPerSecondAndRate: wattsPerKilogram(1, respiration.unit) / specificHeat(one.goods).joules,
    low: F(34),
    high: F(38),
    loading: one.loading.map(F),
    arrival: F(one.arrival),
    loadingError: standard('load'),
    arrivalError: standard('unload'),
    sameThermometer: one.instrument !== undefined,
    ours: { asInstructed: place.asInstructed, asMeasured: place.asMeasured },
  };
  const done = spawnSync(scipy.command?.[0] ?? '', [join(import.meta.dirname, 'counterfactual.py')], {
    encoding: 'utf8',
    input: JSON.stringify(asked),
  });
  if (done.status !== 0) throw new Error(done.stderr);
  const theirs: Record<string, Record<string, number>> = JSON.parse(done.stdout);
  return { place, theirs };
}

describe('what would have arrived, by a second computation in small steps with its own random numbers', () => {
  for (const one of CASES)
    checkWith(scipy, `${one.what}: within four standard errors of 2,000 cases`, () => {
      const { place, theirs } = oursAndTheirs(one);
      for (const world of ['asInstructed', 'asMeasured'] as const) {
        const ours = place[world];
        const near = (share: number, other: number | undefined, what: string) => {
          const room = 4 * Math.max(standardErrorOf(other ?? 0, DRAWS), 1 / DRAWS);
          expect(
            Math.abs(share - (other ?? Number.NaN)),
            `${world} ${what}: ${share}, ${other}`,
          ).toBeLessThan(room);
        };
        near(ours.tail, theirs[world]?.tail, 'tail');
        near(ours.beyondRange, theirs[world]?.beyondRange, 'beyond the range');
        near(0.025, theirs[world]?.belowOurLow, 'below the low end');
        near(0.975, theirs[world]?.belowOurHigh, 'below the high end');
      }
    });
});

describe('readings that a sample still needs', () => {
  const PROGRAM = `
import json, sys
from scipy.stats import hypergeom
def needed(of, most):
    for n in range(1, of + 1):
        # The fewest bad cartons above the share: none of them among n read with no more than 5 %.
        bad = int(most * of + 1e-9) + 1
        if bad > of or hypergeom.pmf(0, of, bad, n) < 0.05 - 1e-12:
            return n
print(json.dumps([needed(*case) for case in json.loads(sys.argv[1])]))
`;
  const ASKED = [60, 96, 480, 864, 1500].flatMap((of) =>
    [0.25, 0.1, 0.05].map((most): [number, number] => [of, most]),
  );
  checkWith(scipy, `agree in ${ASKED.length} lots`, () => {
    const { status, out } = ask(scipy, '-c', PROGRAM, JSON.stringify(ASKED));
    expect(status, out).toBe(0);
    const ours = ASKED.map(([of, most]) => furtherReadings({ taken: 0, beyond: 0, of }, most));
    expect(ours).toEqual(JSON.parse(out));
    expect(shareBounds({ taken: ours[0] ?? 0, beyond: 0, of: 60 }).most).toBeLessThanOrEqual(0.25);
  });
});

describe('guard bands', () => {
  // The exact distribution of the error of one rectangular part and of several, by SciPy.
  const PROGRAM = `
import json, sys
import numpy
rng = numpy.random.default_rng(7)
def beyond(parts, guard):
    error = sum(rng.uniform(-a, a, 2_000_000) for a in parts)
    return float(numpy.mean(error > guard))
print(json.dumps([beyond(*case) for case in json.loads(sys.argv[1])]))
`;
  checkWith(scipy, 'leave at most 5 % beyond the limit, for one part and for several', async () => {
    const { uncertaintyOf } = await import('../../src/core/assess/measurement/uncertainty.js');
    const budgets = [[1], [1, 0.5], [1.1, 0.28], [0.28, 0.06, 0.03], [1, 1, 1, 1]];
    const asked = budgets.map((parts) => [
      parts,
      uncertaintyOf(parts.map((halfWidthKelvin) => ({ is: 'accuracy', halfWidthKelvin, from: 'stated' })))
        .guardKelvin,
    ]);
    const { status, out } = ask(scipy, '-c', PROGRAM, JSON.stringify(asked));
    expect(status, out).toBe(0);
    const left: number[] = JSON.parse(out);
    for (const share of left) expect(share).toBeLessThan(0.052);
    expect(kelvin({ difference: 1.8, unit: '°F' })).toBeCloseTo(1, 12);
  });
});

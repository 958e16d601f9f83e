import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect } from 'vitest';
import { readMilestones } from '../../src/core/assess/milestones.js';
import { temperatureResult } from '../../src/core/assess/temperature/result.js';
import type { Band } from '../../src/core/model/results.js';
import { at, DAY_START, HOUR, items, log, state } from '../core/assess/made.js';
import { checkWith, pandas, scratch } from './programs.js';

/** Chance from a seed (Park and Miller, 1988), so that a failure can be made again. */
function chance(seed: number): () => number {
  let state = (seed % 2_147_483_646) + 1;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

const BAND: Band = {
  ...{ low: 1, high: 4, setPoint: 2.5, tolerance: 1.5, lines: ['a'] },
  toleranceFrom: 'bill',
};
const STEP = 5 / 60;

/** Two days of air with bumps, some with a door, a defrost or a unit that is off near them. */
function made(seed: number) {
  const next = chance(seed);
  const hours = Array.from({ length: 48 * 12 + 1 }, (_, i) => i * STEP);
  const bumps = Array.from({ length: 12 }, () => ({
    ...{ at: next() * 48, size: (next() < 0.8 ? 1 : -1) * (1 + 5 * next()), width: 0.2 + next() },
    ...{ near: Math.floor(next() * 5), lasts: 0.1 + next() * 1.4, cooling: next() * 6 - 3 },
  }));
  const at = (hour: number, of: (one: (typeof bumps)[number]) => number) =>
    bumps.reduce((sum, one) => sum + of(one) * Math.exp(-(((hour - one.at) / one.width) ** 2)), 0);
  const air = hours.map((hour) => 2.4 + at(hour, ({ size }) => size) + (next() - 0.5) * 0.4);
  const supply = hours.map(
    (hour, i) => (air[i] ?? 0) - 1.6 - at(hour, ({ cooling }) => cooling) + next() * 0.2,
  );
  const says = (near: number, yes: string, no: string) =>
    hours.map((hour) =>
      bumps.some((one) => one.near === near && hour >= one.at - 0.5 && hour <= one.at - 0.5 + one.lasts)
        ? yes
        : no,
    );
  return {
    hours,
    ...{
      air,
      supply,
      defrost: says(0, 'on', '--'),
      door: says(1, 'open', 'closed'),
      power: says(2, 'off', 'on'),
    },
  };
}

describe('excursions by class, recomputed with pandas from docs/method.md', () => {
  checkWith(pandas, 'counts, times, degree-hours, shares and heat of 15 made logs', () => {
    const { folder, end } = scratch();
    const file = join(folder, 'log.csv');
    for (let seed = 1; seed <= 15; seed++) {
      const { hours, air, supply, defrost, door, power } = made(seed);
      const unit = log(hours, { 'return-air': air, 'supply-air': supply }, { defrost, door, power }, '°C');
      const course = items(
        { kind: 'event', event: 'doors-closed', place: { stop: 'load-1' }, time: at(0) },
        { kind: 'event', event: 'doors-opened', place: { stop: 'drop-1' }, time: at(48) },
      );
      const result = temperatureResult(unit, readMilestones(state(course), DAY_START + 60 * HOUR), [BAND]);
      const lines = hours.map((_, i) =>
        [unit.times[i], air[i], supply[i], defrost[i], door[i], power[i]].join(),
      );
      writeFileSync(file, ['ms,return,supply,defrost,door,power', ...lines, ''].join('\n'));
      const done = spawnSync(
        pandas.command?.[0] ?? '',
        [join(import.meta.dirname, 'excursion_classes.py'), file, '1', '4'],
        { encoding: 'utf8' },
      );
      if (done.status !== 0) throw new Error(done.stderr);
      const theirs = JSON.parse(done.stdout);
      const own = result?.excursionTotals;
      expect(own?.classes.map((one) => [one.class, one.count]).toSorted(), `seed ${seed}`).toEqual(
        theirs.classes.map((one: { class: string; count: number }) => [one.class, one.count]).toSorted(),
      );
      for (const one of theirs.classes) {
        const same = own?.classes.find((sums) => sums.class === one.class);
        expect(same?.seconds, `seed ${seed}`).toBeCloseTo(one.seconds, 3);
        expect(same?.degreeHours, `seed ${seed}`).toBeCloseTo(one.degreeHours, 8);
      }
      expect(own?.inRangeOutsideNormal, `seed ${seed}`).toBeCloseTo(theirs.inRangeOutsideNormal, 9);
      expect(result?.usualReturnMinusSupply?.median, `seed ${seed}`).toBeCloseTo(theirs.median, 9);
      expect(result?.usualReturnMinusSupply?.spread, `seed ${seed}`).toBeCloseTo(theirs.spread, 9);
      result?.excursions.forEach((one, i) => {
        if (one.to > one.from)
          expect(one.heat?.kelvin, `seed ${seed}, ${one.id}`).toBeCloseTo(theirs.heat[i], 6);
      });
    }
    end();
  });
});

import { describe, expect, it } from 'vitest';
import { alignCurves, type Curve } from '../../../../src/core/assess/logs/align.js';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const WINDOW = { from: 0, to: 48 * HOUR };

/** Chance from a seed (Park and Miller, 1988), so that a failure can be made again. */
function chance(seed: number): () => number {
  let state = (seed % 2_147_483_646) + 1;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** The true air of a trip: drift, and bumps of defrosts and doors at times of chance. */
function trueAir(next: () => number): (at: number) => number {
  const bumps = Array.from({ length: 10 }, () => ({
    at: WINDOW.from + next() * (WINDOW.to - WINDOW.from),
    size: 2 + 5 * next(),
    width: (10 + 20 * next()) * MINUTE,
  }));
  return (at) =>
    2 +
    Math.sin(at / (9 * HOUR)) +
    bumps.reduce(
      (sum, { at: middle, size, width }) => sum + size * Math.exp(-(((at - middle) / width) ** 2)),
      0,
    );
}

/** A recorder whose clock is slow by some seconds, with noise, its own step and its own zero. */
function recorded(
  air: (at: number) => number,
  next: () => number,
  { step, slow, noise }: { step: number; slow: number; noise: number },
): Curve {
  const zero = (next() - 0.5) * 2;
  const from = -4 * HOUR + next() * step;
  const rows = Math.floor((56 * HOUR) / step);
  const trueTimes = Array.from({ length: rows }, (_, i) => from + i * step);
  return {
    times: Float64Array.from(trueTimes, (at) => at - slow * 1000),
    values: Float64Array.from(
      trueTimes,
      (at) => Math.round((air(at) + zero + (next() - 0.5) * noise) * 10) / 10,
    ),
  };
}

describe('two recorders in one air', () => {
  it('are aligned within the uncertainty that is told, in 200 made logs', () => {
    let told = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const next = chance(seed);
      const air = trueAir(next);
      const steps = [1, 5, 10, 15];
      const stepOf = () => (steps[Math.floor(next() * steps.length)] ?? 5) * MINUTE;
      const slow = (next() - 0.5) * 2 * 2.5 * 3600;
      const first = recorded(air, next, { step: stepOf(), slow: 0, noise: 0.6 });
      const second = recorded(air, next, { step: stepOf(), slow, noise: 0.6 });
      const found = alignCurves(first, second, WINDOW);
      if (found === undefined) continue;
      told += 1;
      expect(Math.abs(found.seconds - slow), `seed ${seed}`).toBeLessThanOrEqual(found.uncertaintySeconds);
    }
    expect(told).toBeGreaterThanOrEqual(196);
  });

  it('in different air are not aligned, in 200 made logs', () => {
    const wrong: number[] = [];
    for (let seed = 1; seed <= 200; seed++) {
      const next = chance(seed + 5000);
      const settings = { step: 5 * MINUTE, slow: 0, noise: 0.6 };
      const first = recorded(trueAir(next), next, settings);
      const second = recorded(trueAir(next), next, settings);
      if (alignCurves(first, second, WINDOW) !== undefined) wrong.push(seed);
    }
    expect(wrong.length).toBeLessThanOrEqual(4);
  });

  it.each<[string, (at: number) => number]>([
    ['that never changes', () => 2],
    ['that swings evenly, as alike at every turn', (at) => 2 + Math.sin(at / (10 * MINUTE))],
  ])('in air %s are not aligned', (_, air) => {
    const next = chance(1);
    const of = (slow: number) => recorded(air, next, { step: 5 * MINUTE, slow, noise: 0.2 });
    expect(alignCurves(of(0), of(1200), WINDOW)).toBeUndefined();
  });
});

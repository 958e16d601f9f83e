import { describe, expect, it } from 'vitest';
import { readUnitLog } from '../../../src/intake/unit-log/read.js';
import { clockSteps } from '../../../src/intake/unit-log/rows/clock-steps.js';
import { evidence, mappingOf, read, source } from './reading.js';

const MINUTE = 60_000;

/** Chance from a seed (Park and Miller, 1988), so that a failure can be made again. */
function chance(seed: number): () => number {
  let state = (seed % 2_147_483_646) + 1;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** A log with one step of its clock at a known row, of known size. */
function made(seed: number) {
  const next = chance(seed);
  const step = [1, 5, 10, 15, 30][Math.floor(next() * 5)] ?? 5;
  const rows = 60 + Math.floor(next() * 400);
  const at = 10 + Math.floor(next() * (rows - 13));
  const backBy = step + 1.5 + next() * Math.min(600, (at - 6) * step);
  const isBackwards = next() < 0.3;
  const start = Date.parse('2026-07-14T06:00:00Z');
  const times = Array.from({ length: rows }, (_, i) => start + (i * step - (i >= at ? backBy : 0)) * MINUTE);
  let air = 2;
  const values = times.map(() => {
    air += (next() - 0.5) * 0.6;
    return air;
  });
  if (!isBackwards) return { times, values, step, at, backBy };
  return { times: times.reverse(), values: values.reverse(), step, at: rows - 1 - at, backBy };
}

describe('a clock that was set on the way', () => {
  it('is found at its row, with its size, in 200 made logs', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const { times, values, step, at, backBy } = made(seed);
      const found = clockSteps(times, (i, j) => values[i] === values[j]);
      expect(
        found.map(({ index }) => index),
        `seed ${seed}`,
      ).toEqual([at]);
      const [one] = found;
      expect(Math.abs((one?.seconds ?? 0) / 60 + backBy), `seed ${seed}`).toBeLessThan(1e-6);
      expect(one?.uncertaintySeconds).toBeCloseTo(step * 60, 9);
    }
  });

  it('is not found in 200 made logs without one: gaps, stray rows, a stretch held twice', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const next = chance(seed + 1000);
      const step = 5 * MINUTE;
      const rows = Array.from({ length: 200 }, (_, i) => ({ at: i * step, value: next() }));
      // A gap of up to ten hours.
      const gap = Math.floor(next() * 120) * step;
      for (const row of rows.slice(100)) row.at += gap;
      // A row out of its place.
      const [stray] = rows.splice(50, 1);
      if (stray !== undefined) rows.splice(150, 0, stray);
      // A stretch once more.
      const from = 110 + Math.floor(next() * 20);
      rows.splice(140, 0, ...rows.slice(from, 140).map((row) => ({ ...row })));
      const found = clockSteps(
        rows.map(({ at }) => at),
        (i, j) => rows[i]?.value === rows[j]?.value,
      );
      expect(found, `seed ${seed}`).toEqual([]);
    }
  });

  it.each([
    ['times that turn back at every noon, of a clock of twelve hours', 12 * 60],
    ['the rows of two instruments, now of one and now of the other', 100],
  ])('is none where there are many: %s', (_, period) => {
    const times = Array.from({ length: 1500 }, (__, i) => (i % (period / 2)) * 2 * MINUTE);
    expect(clockSteps(times, () => false)).toEqual([]);
  });

  it('is none where the times begin anew: another instrument', () => {
    const times = Array.from({ length: 400 }, (_, i) => (i % 200) * 5 * MINUTE);
    expect(clockSteps(times, () => false)).toEqual([]);
  });

  const clock = (minutes: number) =>
    `2026-07-14 ${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
  /** From six o'clock, every five minutes; put back by two hours after twelve. */
  const minutes = Array.from({ length: 100 }, (_, i) => 360 + i * 5 - (i > 72 ? 120 : 0));
  const text = [
    'Time,Return (C)',
    ...minutes.map((at, i) => `${clock(at)},${(2 + (i % 7) / 10).toFixed(1)}`),
    '',
  ].join('\n');

  it('is told as one thing, with its size and place, and not as a problem of each row', async () => {
    const log = await read(text);
    expect(log.counts).toEqual({ 'clock-step': 1 });
    expect(log.clockSteps).toMatchObject([
      { row: 75, seconds: -7200, uncertaintySeconds: 300, hiddenRows: 24 },
    ]);
    expect(log.problems[0]?.detail).toMatch(/put back by 2 h, give or take 5 min/);
  });

  it.each([
    ['after', { from: 75 }, 7200],
    ['before', { before: 75 }, -7200],
  ] as const)(
    'is put right when a person says that the times %s it are wrong',
    async (_, rows, addSeconds) => {
      const log = await readUnitLog(source(text), await mappingOf(text), {
        ...{ evidence, addedSeconds: 0 },
        shifts: [{ rows, addSeconds, seq: 7 }],
      });
      expect(log.counts).toEqual({});
      expect(log.clockSteps).toBeUndefined();
      expect(log.rowsLeftOut).toBe(0);
      const steps = log.times.slice(1).map((at, i) => (at - (log.times[i] ?? 0)) / MINUTE);
      expect(new Set(steps)).toEqual(new Set([5]));
    },
  );
});

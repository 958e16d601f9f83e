import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type SegmentSink, walkSegments } from '../../../src/core/assess/temperature/segments.js';
import { summarise } from '../../../src/core/assess/temperature/summary.js';
import type { TimeRange } from '../../../src/core/model/results.js';
import { cases } from '../../properties.js';

/** The definition, sample by sample: what is told of a channel over a window. */
function told(
  times: readonly number[],
  values: readonly number[],
  window: TimeRange,
  limit: number,
): unknown[] {
  const samples = times.flatMap((t, i) =>
    Number.isFinite(values[i]) ? [{ t, v: values[i] as number }] : [],
  );
  const at = (a: { t: number; v: number }, b: { t: number; v: number }, t: number) =>
    t === a.t ? a.v : t === b.t ? b.v : a.v + ((b.v - a.v) / (b.t - a.t)) * (t - a.t);
  const pieces = samples.slice(1).flatMap((b, i) => {
    const a = samples[i] as (typeof samples)[number];
    const [from, to] = [Math.max(a.t, window.from), Math.min(b.t, window.to)];
    return b.t - a.t > limit || from >= to
      ? []
      : [['piece', from, at(a, b, from), to, at(a, b, to)] as const];
  });
  const unknown: (readonly ['unknown', number, number])[] = [];
  let known = window.from;
  for (const [, from, , to] of [...pieces, ['', window.to, 0, window.to] as const]) {
    // A sample that stands alone parts a time without values.
    const alone = samples.filter(({ t }) => t > known && t < from).map(({ t }) => t);
    for (const end of [...alone, from]) {
      if (end > known) unknown.push(['unknown', known, end]);
      known = end;
    }
    known = to;
  }
  const alone = samples
    .filter(({ t }, i) => {
      const [before, after] = [samples[i - 1], samples[i + 1]];
      const joined = [before, after].some((other) => other !== undefined && Math.abs(other.t - t) <= limit);
      return !joined && t >= window.from && t <= window.to;
    })
    .map(({ t, v }) => ['alone', t, v] as const);
  return [...pieces, ...unknown, ...alone].sort((a, b) => a[1] - b[1] || a[0].localeCompare(b[0]));
}

function walked(times: readonly number[], values: readonly number[], window: TimeRange, limit: number) {
  const found: (readonly [string, ...number[]])[] = [];
  const sink: SegmentSink = {
    segment: (t0, v0, t1, v1) => found.push(['piece', t0, v0, t1, v1]),
    unknown: (from, to) => found.push(['unknown', from, to]),
    isolatedSample: (t, v) => found.push(['alone', t, v]),
  };
  walkSegments(Float64Array.from(times), Float64Array.from(values), window, limit, sink);
  return found.sort((a, b) => (a[1] ?? 0) - (b[1] ?? 0) || a[0].localeCompare(b[0]));
}

describe('a channel over a window', () => {
  const step = fc.oneof(
    { weight: 8, arbitrary: fc.constant(60) },
    { weight: 1, arbitrary: fc.integer({ min: 1, max: 4000 }) },
  );
  const value = fc.oneof(
    { weight: 5, arbitrary: fc.integer({ min: -5, max: 20 }) },
    { weight: 1, arbitrary: fc.constant(Number.NaN) },
  );
  const rows = fc.array(fc.tuple(step, value), { minLength: 1, maxLength: 60 });

  it('is told as it is defined', () => {
    fc.assert(
      fc.property(rows, fc.nat({ max: 4000 }), fc.integer({ min: 1, max: 6000 }), (list, from, length) => {
        let at = 0;
        const times = list.map(([by]) => {
          at += by;
          return at;
        });
        const values = list.map(([, one]) => one);
        const window = { from, to: from + length };
        expect(walked(times, values, window, 1800)).toEqual(told(times, values, window, 1800));
      }),
      { numRuns: cases(400) },
    );
  });

  it('has no sample alone on its end that a line joins to one beyond it', () => {
    const alone = (times: number[], values: number[]) =>
      walked(times, values, { from: 54, to: 60 }, 30).filter(([kind]) => kind === 'alone');
    expect(alone([60, 80], [0, 0])).toEqual([]);
    expect(alone([40, 54], [0, 0])).toEqual([]);
    expect(alone([60, 70, 80], [0, Number.NaN, 0])).toEqual([]);
    expect(alone([60, 91], [0, 0])).toEqual([['alone', 60, 0]]);
    expect(alone([23, 54], [0, 0])).toEqual([['alone', 54, 0]]);
    expect(alone([60], [0])).toEqual([['alone', 60, 0]]);
  });

  it('counts the samples that lie in it, those on its ends too', () => {
    const times = Array.from({ length: 300 }, (_, i) => i * 60_000);
    const values = times.map((_, i) => (i % 10 === 3 ? Number.NaN : 2));
    const samples = (from: number, to: number) =>
      summarise(
        'probe',
        Float64Array.from(times),
        Float64Array.from(values),
        { from: from * 60_000, to: to * 60_000 },
        1800,
        undefined,
      ).samples;
    expect(samples(0, 9)).toBe(9);
    expect(samples(3.5, 12.9)).toBe(9);
    expect(samples(-5, 1e6)).toBe(values.filter((one) => !Number.isNaN(one)).length);
    expect(samples(1e6, 2e6)).toBe(0);
  });
});

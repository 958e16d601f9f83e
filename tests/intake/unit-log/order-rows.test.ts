import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sortedOnce } from '../../../src/intake/unit-log/rows/order-rows.js';

function orderOf(times: readonly number[]) {
  const repeats: [index: number, kept: number][] = [];
  const places = sortedOnce(times, (index, kept) => repeats.push([index, kept]));
  return { places, repeats };
}

/** By the plain rule: ascending time, of one time the row that comes first in the file. */
function byTheRule(times: readonly number[]) {
  const sorted = [...times.keys()].sort((a, b) => (times[a] ?? 0) - (times[b] ?? 0) || a - b);
  const first = (index: number) => times.indexOf(times[index] ?? 0);
  return {
    places: sorted.filter((index) => first(index) === index),
    repeats: sorted.filter((index) => first(index) !== index).map((index) => [index, first(index)]),
  };
}

const up = fc.array(fc.nat({ max: 2 }), { maxLength: 20 }).map((steps) => {
  let at = 0;
  return steps.map((step) => {
    at += step;
    return at;
  });
});

describe('rows in order of time', () => {
  it.each([
    ['that run up, some times twice', up],
    ['that run down, some times twice', up.map((times) => times.toReversed())],
    ['that go back and forth', fc.array(fc.nat({ max: 9 }), { maxLength: 20 })],
  ])('of logs %s stand once, the first in the file of each time', (_, logs) => {
    fc.assert(
      fc.property(logs, (times) => {
        expect(orderOf(times)).toEqual(byTheRule(times));
      }),
    );
  });
});

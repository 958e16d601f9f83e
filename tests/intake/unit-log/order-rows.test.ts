import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NumberWriter } from '../../../src/core/model/columns/packed-numbers.js';
import { sortedOnce } from '../../../src/intake/unit-log/rows/order-rows.js';

function writtenOf(times: readonly number[]): NumberWriter {
  const writer = new NumberWriter();
  for (const at of times) writer.push(at);
  return writer;
}

function orderOf(times: readonly number[]) {
  const repeats: [index: number, kept: number][] = [];
  const order = sortedOnce(writtenOf(times), (index, kept) => repeats.push([index, kept]));
  return { order, places: [...(order ?? times.keys())], repeats };
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
        const { places, repeats } = orderOf(times);
        expect({ places, repeats }).toEqual(byTheRule(times));
      }),
    );
  });

  it.each([
    ['as they stand', [1, 2, 3], undefined],
    ['no rows', [], undefined],
  ])('need no order: %s', (_, times, order) => {
    expect(orderOf(times).order).toBe(order);
  });

  it.each([
    ['downwards', [3, 2, 1], false],
    ['with a time twice', [1, 2, 2, 3], false],
    ['downwards with a time twice', [3, 2, 2, 1], false],
    ['back and forth', [1, 3, 2], true],
  ])('are listed in memory only where they go back and forth: %s', (_, times, isList) => {
    expect(orderOf(times).order instanceof Uint32Array).toBe(isList);
  });
});

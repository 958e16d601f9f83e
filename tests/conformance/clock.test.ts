import { describe, expect, it } from 'vitest';
import { checkClock } from '../../src/conformance.js';
import type { Clock } from '../../src/core/ports/clock.js';
import { brokenRules } from './broken-rules.js';

const VALID = 'It gives valid dates of the years 1970 to 9999, each time it is asked';
const OWN = 'Each call gives a Date of its own';
const shared = new Date('2026-07-14T12:00:00Z');

describe('the contract of a clock', () => {
  it.each<[string, Clock, string[]]>([
    ['is kept by the machine’s', () => new Date(), []],
    ['is kept by one that stands still', () => new Date('2026-07-14T12:00:00Z'), []],
    [
      'is not kept by one that throws',
      () => {
        throw new Error('no battery');
      },
      [VALID, OWN],
    ],
    ['is not kept by one that gives no time', () => new Date(Number.NaN), [VALID]],
    ['is not kept by one that was reset to year 1', () => new Date('0001-01-01T00:00:00Z'), [VALID]],
    ['is not kept by one that gives the same Date', () => shared, [OWN]],
  ])('%s', async (_, clock, rules) => {
    expect(brokenRules(await checkClock(clock))).toEqual(rules);
  });
});

import { describe, expect, it } from 'vitest';
import { DossierError } from '../../src/core/model/error.js';
import { parseClaimDeadlines } from '../../src/intake/claim-deadlines-file.js';
import { deadlineRules, deadlinesFile } from '../core/assess/claim/made.js';

describe('a file of clocks', () => {
  const wrong = (...change: [string, string]) => {
    try {
      parseClaimDeadlines(deadlinesFile(change), 'claim-deadlines.yaml');
    } catch (error) {
      if (error instanceof DossierError) return error.message;
      throw error;
    }
    throw new Error('it was accepted');
  };

  it.each<[string, string, string]>([
    ['binds: carrier', 'binds: driver', '"driver" is not one of: carrier, claimant, receiver'],
    ['id: us-status', 'id: us-acknowledge', 'clock "us-acknowledge" stands twice'],
    ['holidays: place-of-delivery', 'holidays: elsewhere', 'no list of holidays "elsewhere"'],
    ["to: '17:00'", "to: '08:00'", 'the end is the beginning'],
    ['unit: months', 'unit: moons', 'not one of: hours, days, working-days, months, years'],
    ['place-of-delivery: []', 'place-of-delivery: [2026-02-30]', 'not a day of the calendar'],
  ])('with %s as %s is refused', (from, to, message) => {
    expect(wrong(from, to)).toContain(message);
  });

  it('without any clock is refused', () => {
    expect(() => parseClaimDeadlines('clocks: []\n', 'claim-deadlines.yaml')).toThrow(DossierError);
  });

  it('as shipped says everything in both languages', () => {
    for (const rule of deadlineRules().clocks)
      for (const words of [rule.title, rule.duty, rule.starts]) expect(words.es).not.toBe(words.en);
  });
});

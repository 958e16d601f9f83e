import { describe, expect, it } from 'vitest';
import {
  claimedLines,
  findingAbout,
  milestonesOfLines,
} from '../../../../src/core/assess/claim/claimed-lines.js';
import { readMilestones } from '../../../../src/core/assess/milestones.js';
import { outcomesOf } from '../../../../src/core/assess/outcomes.js';
import type { Finding } from '../../../../src/core/model/results.js';
import { at, DAY_START, HOUR, items, state } from '../made.js';

const TWO_DROPS = {
  stops: [
    { id: 'load-1', does: 'load' as const, place: 'Cooler A', zone: 'UTC' },
    { id: 'denver', does: 'unload' as const, place: 'Denver', zone: 'UTC' },
    { id: 'omaha', does: 'unload' as const, place: 'Omaha', zone: 'UTC' },
  ],
  lines: [
    { id: 'strawberries', goods: 'strawberry', from: 'load-1', to: 'denver', pallets: 18 },
    { id: 'celery', goods: 'celery', from: 'load-1', to: 'omaha', pallets: 6 },
  ],
};
const outcome = (line: string, verdict: 'accepted' | 'refused', hour: number) => ({
  kind: 'outcome' as const,
  outcome: verdict,
  reasons: [],
  documents: [],
  line,
  time: at(hour),
});
const RECORD = state(
  items(outcome('strawberries', 'refused', 10), outcome('celery', 'accepted', 30)),
  TWO_DROPS,
);
const MILESTONES = readMilestones(RECORD, DAY_START + 100 * HOUR);
const OUTCOMES = outcomesOf(RECORD, MILESTONES);

describe('the lines of a claim', () => {
  it('are those that were refused, where the others were accepted and the claim names none', () => {
    expect(claimedLines([], OUTCOMES)).toEqual(new Set(['strawberries']));
  });

  it('are not told where nothing was accepted for certain', () => {
    const [refused] = OUTCOMES;
    expect(claimedLines([], refused === undefined ? [] : [refused])).toBeUndefined();
  });

  it('leave out findings about a stop of other goods', () => {
    const finding = (stop: string): Finding => ({
      id: 'refused-not-inspected',
      weighs: 'open',
      element: 'condition-at-delivery',
      weight: 67,
      evidence: [],
      by: 'a test',
      facts: { stop: { is: 'stop', stop } },
    });
    const [lines, others] = [new Set(['strawberries']), new Set(['omaha'])];
    expect(findingAbout(finding('denver'), lines, others)).toBe(true);
    expect(findingAbout(finding('omaha'), lines, others)).toBe(false);
  });

  it('have the times of their own stops', () => {
    const { events, stops } = milestonesOfLines(MILESTONES, RECORD.delivery, new Set(['strawberries']));
    expect(stops.map(({ id }) => id)).toEqual(['load-1', 'denver']);
    expect(events.map(({ event, stop }) => [event, stop])).toEqual([['refused', 'denver']]);
  });
});

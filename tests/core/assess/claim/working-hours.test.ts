import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addWorkingHours } from '../../../../src/core/assess/claim/working-hours.js';
import type { WorkingTime } from '../../../../src/core/model/claim-deadlines.js';
import type { Zone } from '../../../../src/core/model/time.js';

const CHICAGO = 'America/Chicago' as Zone;
const WORK: WorkingTime = {
  days: ['mon', 'tue', 'wed', 'thu', 'fri'],
  from: '08:00',
  to: '17:00',
  assumed: true,
};
const ended = (at: string, hours: number, work = WORK) => {
  const { at: end, leftOut } = addWorkingHours(Date.parse(at), CHICAGO, hours, work, 'us-federal');
  return { end: new Date(end).toISOString(), leftOut: leftOut.map(({ date }) => date) };
};

/** Reckoned by hand; Chicago is five hours behind UTC in summer, six in winter. */
describe('eight hours at work, from eight to five', () => {
  it.each([
    ['within one day', '2026-07-14T08:00-05:00', '2026-07-14T16:00-05:00', []],
    ['over the night', '2026-07-14T14:00-05:00', '2026-07-15T13:00-05:00', []],
    ['before work began', '2026-07-14T04:30-05:00', '2026-07-14T16:00-05:00', []],
    ['after work was over', '2026-07-14T19:00-05:00', '2026-07-15T16:00-05:00', []],
    ['over a weekend', '2026-07-10T16:00-05:00', '2026-07-13T15:00-05:00', ['2026-07-11', '2026-07-12']],
    [
      'over Independence Day, kept on the Friday',
      '2026-07-02T15:00-05:00',
      '2026-07-06T14:00-05:00',
      ['2026-07-03', '2026-07-04', '2026-07-05'],
    ],
    [
      'over the change to summer time',
      '2026-03-06T16:00-06:00',
      '2026-03-09T15:00-05:00',
      ['2026-03-07', '2026-03-08'],
    ],
  ])('%s', (_, from, to, leftOut) => {
    expect(ended(from, 8)).toEqual({ end: new Date(Date.parse(to)).toISOString(), leftOut });
  });

  it('are hours that pass: when clocks are put forward in the night, it is nine by the clock on the wall', () => {
    const night: WorkingTime = { ...WORK, days: ['sun'], from: '00:00', to: '12:00' };
    expect(ended('2026-03-08T00:00-06:00', 8, night).end).toBe('2026-03-08T14:00:00.000Z');
  });
});

describe('a later start', () => {
  it('never gives an earlier end', () => {
    const from = Date.parse('2026-01-01T00:00Z');
    fc.assert(
      fc.property(fc.nat(525_600), fc.nat(10_000), fc.nat(40), (start, later, hours) => {
        const a = addWorkingHours(from + start * 60_000, CHICAGO, hours, WORK, 'us-federal').at;
        const b = addWorkingHours(from + (start + later) * 60_000, CHICAGO, hours, WORK, 'us-federal').at;
        expect(b).toBeGreaterThanOrEqual(a);
      }),
    );
  });
});

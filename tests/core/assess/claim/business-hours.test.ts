import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addWorkingHours, rejectionEnd } from '../../../../src/core/assess/claim/business-hours.js';
import type { WorkingTime } from '../../../../src/core/model/claim-deadlines.js';
import type { Zone } from '../../../../src/core/model/time.js';
import { cases } from '../../../properties.js';

const CHICAGO = 'America/Chicago' as Zone;
const WORK: WorkingTime = {
  days: ['mon', 'tue', 'wed', 'thu', 'fri'],
  from: '08:00',
  to: '17:00',
  mayReject: 'in-hours',
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

const EVERY_DAY: WorkingTime = { ...WORK, days: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] };
const NIGHTS: WorkingTime = { ...WORK, from: '22:00', to: '06:00' };
const ALWAYS: WorkingTime = { ...WORK, mayReject: 'at-all-hours' };
const ROUND_THE_CLOCK: WorkingTime = { ...EVERY_DAY, from: '00:00', to: '24:00' };

/**
 * Worked by hand from 7 CFR 46.2(cc)(1), (2) and (4), as of 2015. A receiver in Chicago, open Monday to Friday from
 * eight to five with somebody there who may reject, unless the row says otherwise; 14 July 2026 is a Tuesday.
 */
describe('the time to reject', () => {
  const end = (from: string, hours: number, work: WorkingTime) => {
    const found = rejectionEnd(Date.parse(from), CHICAGO, hours, 2, work, 'us-federal');
    return [new Date(found.at).toISOString(), found.counted];
  };

  it.each<[string, string, string, string, number?, WorkingTime?]>([
    ['(cc)(4)(ii): Tuesday 10:00', '2026-07-14T10:00-05:00', '2026-07-14T18:00-05:00', 'uninterrupted'],
    [
      '(4)(ii): Tuesday 14:00 runs on into the night',
      '2026-07-14T14:00-05:00',
      '2026-07-14T22:00-05:00',
      'uninterrupted',
    ],
    [
      '(4)(ii): 15:00 is two hours before the close, not less',
      '2026-07-14T15:00-05:00',
      '2026-07-14T23:00-05:00',
      'uninterrupted',
    ],
    [
      '(4)(ii): 15:30, the rest from the next opening',
      '2026-07-14T15:30-05:00',
      '2026-07-15T14:30-05:00',
      'rest-from-opening',
    ],
    [
      '(4)(i): Tuesday 20:00, nobody there',
      '2026-07-14T20:00-05:00',
      '2026-07-15T16:00-05:00',
      'from-opening',
    ],
    [
      '(4)(ii): Friday 14:00 ends on Friday',
      '2026-07-17T14:00-05:00',
      '2026-07-17T22:00-05:00',
      'uninterrupted',
    ],
    [
      '(4)(i): Saturday 09:00, nobody there',
      '2026-07-18T09:00-05:00',
      '2026-07-20T16:00-05:00',
      'from-opening',
    ],
    [
      '(cc)(1): frozen, Tuesday 10:00',
      '2026-07-14T10:00-05:00',
      '2026-07-14T22:00-05:00',
      'uninterrupted',
      12,
    ],
    ['(4)(ii): at the opening', '2026-07-14T08:00-05:00', '2026-07-14T16:00-05:00', 'uninterrupted'],
    [
      '(4)(i): before the opening of a working day',
      '2026-07-14T04:30-05:00',
      '2026-07-14T16:00-05:00',
      'from-opening',
    ],
    [
      '(4)(ii): a minute less than two hours',
      '2026-07-14T15:01-05:00',
      '2026-07-15T14:01-05:00',
      'rest-from-opening',
    ],
    [
      '(4)(ii): a minute before the close',
      '2026-07-14T16:59-05:00',
      '2026-07-15T15:59-05:00',
      'rest-from-opening',
    ],
    ['(4)(i): at the close', '2026-07-14T17:00-05:00', '2026-07-15T16:00-05:00', 'from-opening'],
    [
      '(4)(ii): the eve of a holiday, two hours before the close',
      '2026-07-02T15:00-05:00',
      '2026-07-02T23:00-05:00',
      'uninterrupted',
    ],
    [
      '(4)(ii): the rest after Independence Day, kept on the Friday',
      '2026-07-02T15:30-05:00',
      '2026-07-06T14:30-05:00',
      'rest-from-opening',
    ],
    ['(4)(i): on that Friday', '2026-07-03T10:00-05:00', '2026-07-06T16:00-05:00', 'from-opening'],
    [
      '(4)(ii): the rest after Labor Day',
      '2026-09-04T16:00-05:00',
      '2026-09-08T15:00-05:00',
      'rest-from-opening',
    ],
    [
      '(4)(i): the evening before Thanksgiving',
      '2026-11-25T18:00-06:00',
      '2026-11-27T16:00-06:00',
      'from-opening',
    ],
    [
      '(4)(ii): the rest after Christmas, a Friday',
      '2026-12-24T15:30-06:00',
      '2026-12-28T14:30-06:00',
      'rest-from-opening',
    ],
    [
      '(4)(ii): frozen, the rest is ten and a half hours without a break',
      '2026-07-14T15:30-05:00',
      '2026-07-15T18:30-05:00',
      'rest-from-opening',
      12,
    ],
    [
      '(4)(i): frozen, from the opening without a break',
      '2026-07-14T20:00-05:00',
      '2026-07-15T20:00-05:00',
      'from-opening',
      12,
    ],
    [
      '(4)(i): the Sunday when clocks go forward',
      '2026-03-08T01:00-06:00',
      '2026-03-09T16:00-05:00',
      'from-opening',
    ],
    [
      '(4)(i): open every day, over the night when clocks go forward',
      '2026-03-07T20:00-06:00',
      '2026-03-08T16:00-05:00',
      'from-opening',
      8,
      EVERY_DAY,
    ],
    [
      '(4)(ii): open every day, the rest over the night when clocks go back',
      '2026-10-31T16:00-05:00',
      '2026-11-01T15:00-06:00',
      'rest-from-opening',
      8,
      EVERY_DAY,
    ],
    [
      '(4)(ii): night receiving when clocks go forward: eight hours that pass',
      '2026-03-07T23:00-06:00',
      '2026-03-08T08:00-05:00',
      'uninterrupted',
      8,
      { ...NIGHTS, days: ['sat'] },
    ],
    [
      '(4)(ii): night receiving when clocks go back',
      '2026-10-31T23:00-05:00',
      '2026-11-01T06:00-06:00',
      'uninterrupted',
      8,
      { ...NIGHTS, days: ['sat'] },
    ],
    [
      '(4)(ii): night receiving, an hour and a half before its close',
      '2026-07-14T04:30-05:00',
      '2026-07-15T04:30-05:00',
      'rest-from-opening',
      8,
      NIGHTS,
    ],
    [
      '(4)(ii): Friday night’s work, two hours before it ends on Saturday',
      '2026-07-18T04:00-05:00',
      '2026-07-18T12:00-05:00',
      'uninterrupted',
      8,
      NIGHTS,
    ],
    [
      '(4)(ii): Friday night’s work, an hour before: the rest from Monday night',
      '2026-07-18T05:00-05:00',
      '2026-07-21T05:00-05:00',
      'rest-from-opening',
      8,
      NIGHTS,
    ],
    [
      '(4)(i): night receiving, at noon',
      '2026-07-14T12:00-05:00',
      '2026-07-15T06:00-05:00',
      'from-opening',
      8,
      NIGHTS,
    ],
    [
      '(4)(i): somebody there who may reject, at night',
      '2026-07-14T20:00-05:00',
      '2026-07-15T04:00-05:00',
      'uninterrupted',
      8,
      ALWAYS,
    ],
    [
      '(4)(i): somebody there who may reject, on a Saturday',
      '2026-07-18T09:00-05:00',
      '2026-07-18T17:00-05:00',
      'uninterrupted',
      8,
      ALWAYS,
    ],
    [
      '(4)(ii): work round the clock has no close',
      '2026-07-14T23:30-05:00',
      '2026-07-15T07:30-05:00',
      'uninterrupted',
      8,
      ROUND_THE_CLOCK,
    ],
  ])('%s', (_, from, to, how, hours = 8, work = WORK) => {
    expect(end(from, hours, work)).toEqual([new Date(Date.parse(to)).toISOString(), how]);
  });

  it('is never shorter than its hours, and longer only by the wait for one opening', () => {
    const from = Date.parse('2026-01-01T00:00Z');
    fc.assert(
      fc.property(
        fc.nat(525_600),
        fc.constantFrom(8, 12),
        fc.constantFrom(WORK, NIGHTS, EVERY_DAY),
        (start, hours, work) => {
          const at = from + start * 60_000;
          const found = rejectionEnd(at, CHICAGO, hours, 2, work, 'us-federal');
          expect(found.at).toBeGreaterThanOrEqual(at + hours * 3_600_000);
          const ran = found.opening === undefined ? at : found.opening;
          expect(found.at - ran).toBeLessThanOrEqual(hours * 3_600_000);
        },
      ),
      { numRuns: cases(200) },
    );
  });
});

import { describe, expect, it } from 'vitest';
import { DossierError } from '../../src/core/model/error.js';
import { zone } from '../../src/core/model/time.js';
import { dayOf } from '../../src/jobs/claim/day.js';
import { parseZoneOption } from '../../src/jobs/typed/zone-option.js';
import { delivery } from '../intake/a-delivery.js';

const parsed = (typed: string, near = 'America/Chicago') => {
  try {
    return parseZoneOption(typed, '--zone', zone.parse(near));
  } catch (error) {
    if (!(error instanceof DossierError)) throw error;
    return { message: error.message, choices: error.choices };
  }
};

describe('a zone as people name it', () => {
  it.each([
    ['America/Phoenix', 'America/Phoenix'],
    ['Arizona', 'America/Phoenix'],
    ['Omaha NE', 'America/Chicago'],
    ['Pacific', 'America/Los_Angeles'],
    ['ET', 'America/New_York'],
    ['Mountain Time', 'America/Denver'],
  ])('%s', (typed, name) => expect(parsed(typed)).toBe(name));

  it.each([
    ['Texas', { choices: ['America/Chicago', 'America/Denver'] }],
    ['MST', { choices: ['America/Denver', 'America/Phoenix'] }],
    ['PDT', { choices: ['America/Los_Angeles'] }],
    ['the yard', { message: expect.stringContaining('not a time zone') }],
  ])('%s is asked about', (typed, problem) => expect(parsed(typed)).toMatchObject(problem));
});

describe('a day of a claim', () => {
  const now = new Date('2026-08-20T12:00:00Z');
  const day = (on: string, zoneSaid?: string) => dayOf(on, zoneSaid, delivery, now);
  it.each([
    ['8/3/2026', undefined, { date: '2026-08-03', zone: 'America/Chicago' }],
    ['7/22/2026', undefined, { date: '2026-07-22', zone: 'America/Chicago' }],
    ['Aug 3 2026', 'PT', { date: '2026-08-03', zone: 'America/Los_Angeles' }],
    ['3/8/2026', 'Europe/Madrid', { date: '2026-08-03', zone: 'Europe/Madrid' }],
    // December has not come yet.
    ['7/12/2026', 'Europe/Madrid', { date: '2026-07-12', zone: 'Europe/Madrid' }],
  ])('%s', (on, zoneSaid, meant) => expect(day(on, zoneSaid)).toEqual(meant));

  it('is asked about where both can be', () => {
    expect(() => day('3/8/2026', 'America/Toronto')).toThrow(/can be 2026-03-08 or 2026-08-03/);
  });
});

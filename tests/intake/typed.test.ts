import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { instant, zone } from '../../src/core/model/time.js';
import { parseTypedTime } from '../../src/intake/typed.js';

const now = instant.parse('2026-07-14T21:30:00.000Z'); // 14:30 in Phoenix
const phoenix = { now, zone: zone.parse('America/Phoenix') };
const chicago = (at: string) => ({ now: instant.parse(at), zone: zone.parse('America/Chicago') });

describe('a time as people type it', () => {
  it.each([
    ['14:05', '2026-07-14T21:05:00.000Z', 60],
    ['2:05pm', '2026-07-14T21:05:00.000Z', 60],
    ['2:05 PM', '2026-07-14T21:05:00.000Z', 60],
    ['14:05:30', '2026-07-14T21:05:30.000Z', 1],
    ['23:50', '2026-07-14T06:50:00.000Z', 60],
    ['14:35', '2026-07-14T21:35:00.000Z', 60],
    ['yesterday 14:05', '2026-07-13T21:05:00.000Z', 60],
    ['today 04:10', '2026-07-14T11:10:00.000Z', 60],
    ['2026-07-14T04:10', '2026-07-14T11:10:00.000Z', 60],
    ['2026-07-14 04:10 MST', '2026-07-14T11:10:00.000Z', 60],
    ['2026-07-14T04:10-06:00', '2026-07-14T10:10:00.000Z', 60],
    ['2026-07-14T11:10Z', '2026-07-14T11:10:00.000Z', 60],
    ['Jul 13 2026 4:10 AM', '2026-07-13T11:10:00.000Z', 60],
    ['7/13/2026 4:10', '2026-07-13T11:10:00.000Z', 60],
    ['now', '2026-07-14T21:30:00.000Z', 60],
    ['7/8/2026 4:10', '2026-07-08T11:10:00.000Z', 60],
    ['7/12/2026 2:05 PM', '2026-07-12T21:05:00.000Z', 60],
    ['14:05 PT', '2026-07-14T21:05:00.000Z', 60],
    ['14:05 PDT', '2026-07-14T21:05:00.000Z', 60],
    ['12:05 Pacific', '2026-07-14T19:05:00.000Z', 60],
    ['2:05 PM Mountain Time', '2026-07-14T20:05:00.000Z', 60],
    ['2:05 p.m. CDT', '2026-07-14T19:05:00.000Z', 60],
    ['14:05 ET', '2026-07-14T18:05:00.000Z', 60],
    ['14:05 Arizona time', '2026-07-14T21:05:00.000Z', 60],
    ['14:05 Chicago', '2026-07-14T19:05:00.000Z', 60],
    ['14:05 Omaha NE', '2026-07-14T19:05:00.000Z', 60],
  ])('%s', (text, at, uncertaintySeconds) => {
    const read = parseTypedTime(text, phoenix);
    expect(read).toMatchObject({
      is: 'time',
      time: { is: 'known', instant: at, basis: 'typed', zone: 'America/Phoenix', uncertaintySeconds },
    });
  });

  it.each([
    ['soon', /not a time/, /14:05/],
    ['25:00', /not a time/, /14:05/],
    ['2026-02-30 04:10', /no day that there is/, /./],
    ['04:10 PST', /PST is not in force in America.Los_Angeles/, /04:10:00-08:00 or .*04:10:00-07:00/],
    ['04:10 Nebraska', /"Nebraska" is not a time zone that is known/, /14:05/],
    ['2026-07-14 four', /not a time/, /14:05/],
    ['7/14/2026 morning', /not a time/, /14:05/],
    ['yesterday evening', /not a time/, /14:05/],
    ['04:10 somewhere', /"somewhere" is not a time zone/, /14:05/],
    ['', /not a time/, /./],
  ])('"%s" is a problem with a way out', (text, message, fix) => {
    const read = parseTypedTime(text, { ...phoenix, field: '--at' });
    expect(read.is).toBe('problem');
    if (read.is === 'problem') {
      expect(read.problem.message).toMatch(message);
      expect(read.problem.fix).toMatch(fix);
      expect(read.problem.where.field).toBe('--at');
    }
  });

  it.each([
    ['2026-07-12', '2026-07-12T19:00:00.000Z', 43_200],
    ['7/12/2026', '2026-07-12T19:00:00.000Z', 43_200],
    ['yesterday', '2026-07-13T19:00:00.000Z', 43_200],
    // From midnight to now: it is half past two.
    ['today', '2026-07-14T14:15:00.000Z', 26_100],
  ])('%s alone is the whole day', (text, at, uncertaintySeconds) => {
    expect(parseTypedTime(text, phoenix)).toMatchObject({ time: { instant: at, uncertaintySeconds } });
  });

  const at = (zoneName: string, moment: string, planned: string[] = []) => ({
    now: instant.parse(moment),
    zone: zone.parse(zoneName),
    near: planned.map((local) => Date.parse(`${local}Z`)),
  });
  const december = '2026-12-20T12:00:00.000Z';
  it.each([
    ['the country, at a US stop', at('America/Chicago', december), '2026-07-12'],
    ['the country, at a Spanish stop', at('Europe/Madrid', december), '2026-12-07'],
    [
      'planned times, where the country has no order',
      at('America/Toronto', december, ['2026-07-13T06:00']),
      '2026-07-12',
    ],
    ['the future, against the country', at('Europe/Madrid', '2026-08-01T12:00:00.000Z'), '2026-07-12'],
    ['country and plan together', at('America/Chicago', december, ['2026-07-11T04:00']), '2026-07-12'],
  ])('7/12/2026 is decided by %s', (_, context, day) => {
    const read = parseTypedTime('7/12/2026 14:05', context);
    expect(read).toMatchObject({
      is: 'time',
      time: { is: 'known', instant: expect.stringMatching(`^${day}T`) },
    });
  });

  it.each([
    ['nothing speaks', at('America/Toronto', december)],
    ['the country and the plan contradict each other', at('America/Chicago', december, ['2026-12-08T04:00'])],
  ])('7/12/2026 is asked about where %s', (_, context) => {
    expect(parseTypedTime('7/12/2026 14:05', context)).toMatchObject({
      problem: { choices: ['2026-07-12T14:05:00', '2026-12-07T14:05:00'] },
    });
  });

  it('in the hour that happened twice asks which, and takes the abbreviation as the answer', () => {
    const context = chicago('2026-11-01T12:00:00.000Z');
    expect(parseTypedTime('2026-11-01 01:30', context)).toMatchObject({
      problem: { fix: 'write 2026-11-01T01:30:00-05:00 or 2026-11-01T01:30:00-06:00' },
    });
    expect(parseTypedTime('2026-11-01 01:30 CST', context)).toMatchObject({
      time: { instant: '2026-11-01T07:30:00.000Z' },
    });
    expect(parseTypedTime('2026-11-01 01:30 CDT', context)).toMatchObject({
      time: { instant: '2026-11-01T06:30:00.000Z' },
    });
  });

  it('in the hour that never happened is a problem', () => {
    expect(parseTypedTime('2026-03-08 02:30', chicago('2026-03-08T12:00:00.000Z')).is).toBe('problem');
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(['time', 'problem']).toContain(parseTypedTime(text, phoenix).is);
      }),
    );
  });
});

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
    ['2026-07-14', /no time of day/, /14:05/],
    ['2026-02-30 04:10', /no day that there is/, /./],
    ['7/8/2026 4:10', /2026-07-08T04:10:00 or 2026-08-07T04:10:00/, /write 2026-07-08T04:10:00 or/],
    ['04:10 PDT', /PDT is not in force/, /-07:00/],
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

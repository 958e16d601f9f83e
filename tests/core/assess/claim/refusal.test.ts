import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { refusalDeadlinesOf } from '../../../../src/core/assess/claim/refusal.js';
import { readMilestones } from '../../../../src/core/assess/milestones.js';
import type { DeliveryInput } from '../../../../src/core/model/delivery.js';
import type { EventName } from '../../../../src/core/model/evidence.js';
import type { ClaimDeadline } from '../../../../src/core/model/results.js';
import { type KnownTime, toInstant, type Zone } from '../../../../src/core/model/time.js';
import { cases } from '../../../properties.js';
import { items, state } from '../made.js';
import { deadlineRules } from './made.js';

const CHICAGO = 'America/Chicago' as Zone;
const known = (at: number): KnownTime => ({
  is: 'known',
  instant: toInstant(at),
  zone: CHICAGO,
  basis: 'typed',
  uncertaintySeconds: 0,
});
/** A Tuesday in July, Chicago: five hours behind UTC. Times such as `14 09:00` are days of that month. */
const july = (text: string) => Date.parse(`2026-07-${text.replace(' ', 'T')}-05:00`);

type Happened = [event: EventName, when: string];
const LINE = { id: 'romaine', goods: 'lettuce-romaine', from: 'load-1', to: 'drop-1' };

function judged(
  happened: readonly Happened[],
  change: Partial<DeliveryInput> = {},
  rules = deadlineRules(),
): ClaimDeadline[] {
  const evidence = items(
    ...happened.map(([event, when]) => ({
      kind: 'event' as const,
      event,
      time: known(july(when)),
      place: { stop: 'drop-1' },
    })),
  );
  const record = state(evidence, change);
  const now = july('28 12:00');
  const milestones = readMilestones(record, now);
  return refusalDeadlinesOf({ rules, milestones, lines: record.delivery.lines, now });
}
const local = (at: number) => new Date(at - 5 * 3_600_000).toISOString().slice(8, 16).replace('T', ' ');
const of = (list: ClaimDeadline[]) =>
  list.map(({ id, due, state: how }) => [id, due?.is === 'time' ? local(due.at) : undefined, how]);

/** 7 CFR 46.2(cc) as reported; hours at work from eight to five are assumed. 14 July 2026 is a Tuesday. */
describe('whether the receiver refused in time', () => {
  it.each<[string, Happened[], string | undefined, string]>([
    [
      'within the working day',
      [
        ['arrived', '14 08:00'],
        ['refused', '14 15:00'],
      ],
      '14 16:00',
      'done',
    ],
    [
      'hours at night do not count',
      [
        ['arrived', '14 14:00'],
        ['refused', '15 10:00'],
      ],
      '15 13:00',
      'done',
    ],
    [
      'too late',
      [
        ['arrived', '14 08:00'],
        ['refused', '15 09:00'],
      ],
      '14 16:00',
      'done-late',
    ],
    ['never', [['arrived', '14 08:00']], '14 16:00', 'overdue'],
    [
      'unloaded instead',
      [
        ['arrived', '14 08:00'],
        ['unloaded', '14 11:00'],
      ],
      '14 16:00',
      'no-longer-needed',
    ],
    [
      'from the notice, where that came after the truck',
      [
        ['arrived', '14 08:00'],
        ['notice-of-arrival', '14 09:00'],
        ['refused', '14 16:30'],
      ],
      '14 17:00',
      'done',
    ],
    [
      'from the truck, where the notice came first',
      [
        ['notice-of-arrival', '13 08:00'],
        ['arrived', '14 08:00'],
        ['refused', '14 16:00'],
      ],
      '14 16:00',
      'done',
    ],
    [
      'after an inspection asked for in time: two hours more from its result',
      [
        ['arrived', '14 08:00'],
        ['inspection-requested', '14 09:00'],
        ['inspected', '15 10:00'],
        ['refused', '15 11:30'],
      ],
      '15 12:00',
      'done',
    ],
    [
      'after an inspection asked for too late: nothing more',
      [
        ['arrived', '14 08:00'],
        ['inspection-requested', '14 16:30'],
        ['inspected', '15 10:00'],
        ['refused', '15 11:30'],
      ],
      '14 16:00',
      'done-late',
    ],
    [
      'after an early result: no less than the eight hours',
      [
        ['arrived', '14 08:00'],
        ['inspection-requested', '14 08:30'],
        ['inspected', '14 09:00'],
        ['refused', '14 15:00'],
      ],
      '14 16:00',
      'done',
    ],
    [
      'while an inspection has no result there is no end',
      [
        ['arrived', '14 08:00'],
        ['inspection-requested', '14 09:00'],
      ],
      undefined,
      'running',
    ],
    [
      'over a weekend',
      [
        ['arrived', '17 15:00'],
        ['refused', '20 13:30'],
      ],
      '20 14:00',
      'done',
    ],
  ])('%s', (_, happened, due, how) => {
    expect(of(judged(happened))).toEqual([['us-refusal-fresh', due, how]]);
  });

  it('says nothing where the truck is not known to have been', () => {
    expect(judged([])).toEqual([]);
    expect(judged([['notice-of-arrival', '14 08:00']])).toEqual([]);
  });

  it('says when it would be over if every hour counted, and which hours were assumed', () => {
    const [found] = judged([
      ['arrived', '14 14:00'],
      ['refused', '15 10:00'],
    ]);
    expect(found?.counting).toMatchObject({
      hours: { from: '08:00', to: '17:00', assumed: true },
      ifEveryHourCounts: { is: 'time', at: july('14 22:00') },
      holidays: { list: 'us-federal', known: true },
    });
    expect(found).toMatchObject({ binds: 'receiver', stop: 'drop-1', source: '7 CFR 46.2(cc)' });
  });

  it('takes the receiver’s own hours where they are written in the rules', () => {
    const rules = deadlineRules(
      ["from: '08:00'", "from: '04:00'"],
      ["to: '17:00'", "to: '14:00'"],
      ['assumed: true', 'assumed: false'],
    );
    const [found] = judged([['arrived', '14 05:00']], {}, rules);
    expect(of(found === undefined ? [] : [found])).toEqual([['us-refusal-fresh', '14 13:00', 'overdue']]);
    expect(found?.counting?.hours?.assumed).toBe(false);
  });

  it('gives frozen goods twelve hours, and both clocks to a mixed load', () => {
    const frozen = { ...LINE, id: 'peas', goods: 'peas', instruction: { setPoint: '-10 °F' } };
    const happened: Happened[] = [['arrived', '14 08:00']];
    expect(of(judged(happened, { lines: [frozen] }))).toEqual([['us-refusal-frozen', '15 11:00', 'overdue']]);
    expect(judged(happened, { lines: [frozen, LINE] }).map(({ id }) => id)).toEqual([
      'us-refusal-fresh',
      'us-refusal-frozen',
    ]);
  });

  it('never ends before every hour has counted, and never earlier for a later arrival', () => {
    const rules = deadlineRules();
    const end = (minutes: number) => {
      const evidence = items({
        kind: 'event',
        event: 'arrived',
        time: known(july('01 00:00') + minutes * 60_000),
        place: { stop: 'drop-1' },
      });
      const record = state(evidence);
      const now = july('30 00:00');
      const [found] = refusalDeadlinesOf({
        rules,
        milestones: readMilestones(record, now),
        lines: record.delivery.lines,
        now,
      });
      const every = found?.counting?.ifEveryHourCounts;
      if (found?.due?.is !== 'time' || every?.is !== 'time') throw new Error('no end');
      expect(found.due.at).toBeGreaterThanOrEqual(every.at);
      return found.due.at;
    };
    fc.assert(
      fc.property(fc.nat(20_000), fc.nat(5000), (from, later) => {
        expect(end(from + later)).toBeGreaterThanOrEqual(end(from));
      }),
      { numRuns: cases(40) },
    );
  });
});

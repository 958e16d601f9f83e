import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { consignorNotices } from '../../../../src/core/assess/claim/notices.js';
import { refusalDeadlinesOf } from '../../../../src/core/assess/claim/refusal.js';
import { readMilestones } from '../../../../src/core/assess/milestones.js';
import type { DeliveryInput } from '../../../../src/core/model/delivery.js';
import { type EventName, reading } from '../../../../src/core/model/evidence.js';
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
/** A contact with the shipper that gives notice of something; `driver` is none. */
type Notice = [of: 'rejection' | 'inspection-delay', when: string, to?: 'shipper' | 'carrier'];
const LINE = { id: 'romaine', goods: 'lettuce-romaine', from: 'load-1', to: 'drop-1' };

function judged(
  happened: readonly Happened[],
  change: Partial<DeliveryInput> = {},
  { rules = deadlineRules(), notices = [] as readonly Notice[] } = {},
): ClaimDeadline[] {
  const place = { stop: 'drop-1' };
  const evidence = items(
    ...happened.map(([event, when]) => ({ kind: 'event' as const, event, time: known(july(when)), place })),
    ...notices.map(([notice, when, to = 'shipper']) => ({
      kind: 'contact' as const,
      with: to,
      how: 'call' as const,
      about: 'the load',
      notice,
      time: known(july(when)),
      place,
    })),
  );
  const record = state(evidence, change);
  const now = july('28 12:00');
  const milestones = readMilestones(record, now);
  const { delivery } = record;
  return refusalDeadlinesOf({ rules, milestones, delivery, notices: consignorNotices(record, now), now });
}
const local = (at: number) => new Date(at - 5 * 3_600_000).toISOString().slice(8, 16).replace('T', ' ');
const of = (list: ClaimDeadline[]) =>
  list.map(({ id, due, state: how }) => [id, due?.is === 'time' ? local(due.at) : undefined, how]);
const remarks = (list: ClaimDeadline[]) => list.flatMap(({ remarks: all = [] }) => all.map(({ is }) => is));

/** 7 CFR 46.2(cc) and (dd), as of 2015; business hours from eight to five are assumed. 14 July 2026 is a Tuesday. */
describe('whether the receiver rejected in time', () => {
  it.each<[string, Happened[], Notice[], string | undefined, string, string[]]>([
    [
      '(dd)(3): the consignor told in time',
      [['arrived', '14 08:00']],
      [['rejection', '14 15:00']],
      '14 16:00',
      'done',
      [],
    ],
    [
      '(dd)(3): the consignor told too late',
      [['arrived', '14 08:00']],
      [['rejection', '14 16:01']],
      '14 16:00',
      'done-late',
      [],
    ],
    [
      '(dd)(3): refused at the dock in time, and no notice to the consignor on file',
      [
        ['arrived', '14 08:00'],
        ['refused', '14 15:00'],
      ],
      [],
      '14 16:00',
      'not-shown',
      ['consignor-not-told'],
    ],
    [
      '(dd)(3): what the carrier is told is no notice to the consignor',
      [
        ['arrived', '14 08:00'],
        ['refused', '14 15:00'],
      ],
      [['rejection', '14 15:00', 'carrier']],
      '14 16:00',
      'not-shown',
      ['consignor-not-told'],
    ],
    [
      '(cc)(4)(ii): refused the next morning is late, for the evening counts',
      [
        ['arrived', '14 14:00'],
        ['refused', '15 10:00'],
      ],
      [],
      '14 22:00',
      'done-late',
      [],
    ],
    ['never', [['arrived', '14 08:00']], [], '14 16:00', 'overdue', []],
    [
      '(dd)(1): unloaded instead',
      [
        ['arrived', '14 08:00'],
        ['unloaded', '14 11:00'],
      ],
      [],
      '14 16:00',
      'no-longer-needed',
      [],
    ],
    [
      '(dd)(1): diverted instead',
      [
        ['arrived', '14 08:00'],
        ['diverted', '14 11:00'],
      ],
      [],
      '14 16:00',
      'no-longer-needed',
      ['diverted'],
    ],
    [
      '(dd)(1): a part unloaded to be inspected does not lose the right; that unloading began is said',
      [
        ['arrived', '14 08:00'],
        ['unloading-began', '14 09:00'],
      ],
      [['rejection', '14 12:00']],
      '14 16:00',
      'done',
      ['unloading-began'],
    ],
    [
      '(cc)(2): from the notice, where that came after the truck',
      [
        ['arrived', '14 08:00'],
        ['notice-of-arrival', '14 09:00'],
      ],
      [['rejection', '14 16:30']],
      '14 17:00',
      'done',
      [],
    ],
    [
      '(cc)(2): from the truck, where the notice came first',
      [
        ['notice-of-arrival', '13 08:00'],
        ['arrived', '14 08:00'],
      ],
      [['rejection', '14 16:00']],
      '14 16:00',
      'done',
      [],
    ],
    [
      '(cc)(4)(ii): Friday two hours before the close',
      [['arrived', '17 15:00']],
      [['rejection', '17 23:00']],
      '17 23:00',
      'done',
      [],
    ],
    [
      '(cc)(4)(ii): Friday an hour before the close',
      [['arrived', '17 16:00']],
      [['rejection', '20 13:30']],
      '20 15:00',
      'done',
      [],
    ],
  ])('%s', (_, happened, notices, due, how, said) => {
    const found = judged(happened, {}, { notices });
    expect(of(found)).toEqual([['us-refusal-fresh', due, how]]);
    expect(remarks(found)).toEqual(said);
  });

  const asked: Happened[] = [
    ['arrived', '14 08:00'],
    ['inspection-requested', '14 09:00'],
  ];
  const failed: Happened[] = [...asked, ['inspection-unavailable', '14 11:00']];
  const told: Notice[] = [['inspection-delay', '14 12:00']];

  it.each<[string, Happened[], Notice[], string | undefined, string]>([
    [
      'could not be had, the consignor told: two hours after its result',
      [...failed, ['inspected', '15 10:00']],
      told,
      '15 12:00',
      'inspection-moved-end',
    ],
    [
      'could not be had, the consignor told: no end before its result',
      failed,
      told,
      undefined,
      'inspection-awaited',
    ],
    [
      'could not be had, the consignor not told',
      [...failed, ['inspected', '15 10:00']],
      [],
      '14 16:00',
      'inspection-consignor-not-told',
    ],
    [
      'could not be had, the consignor told after the period',
      [...failed, ['inspected', '15 10:00']],
      [['inspection-delay', '14 16:30']],
      '14 16:00',
      'inspection-consignor-not-told',
    ],
    [
      'was had within the period',
      [...failed, ['inspected', '14 15:00']],
      told,
      '14 16:00',
      'inspection-in-time',
    ],
    [
      'asked for, had later, and not said that it could not be had',
      [...asked, ['inspected', '15 10:00']],
      told,
      '14 16:00',
      'inspection-not-refused',
    ],
    [
      'asked for after the period: nothing is counted',
      [
        ['arrived', '14 08:00'],
        ['inspection-requested', '14 16:30'],
        ['inspected', '15 10:00'],
      ],
      told,
      '14 16:00',
      'inspection-after-period',
    ],
    [
      'prevented by weather, the consignor told',
      [
        ['arrived', '14 08:00'],
        ['inspection-unavailable', '14 10:00'],
        ['inspected', '14 18:00'],
      ],
      told,
      '14 20:00',
      'inspection-moved-end',
    ],
  ])('(cc)(3): an inspection that %s', (_, happened, notices, due, said) => {
    const found = judged(happened, {}, { notices });
    expect(of(found)[0]?.[1]).toBe(due);
    expect(remarks(found)).toEqual([said]);
  });

  it('names a certificate once that says both when it was asked for and what it found', () => {
    const certificate = reading.parse({
      kind: 'inspection',
      evidence: 'e5',
      source: { is: 'typed' },
      time: known(july('15 10:00')),
      requestedAt: known(july('14 16:30')),
      place: { stop: 'drop-1' },
      lot: 'L-1',
      defects: [{ name: 'decay', percent: 6 }],
    });
    const [clock] = withOutcomes(certificate);
    expect(clock?.remarks).toEqual([{ is: 'inspection-after-period', evidence: ['e5'] }]);
  });

  const outcome = (when: string, more: Record<string, unknown>) =>
    reading.parse({
      kind: 'outcome',
      evidence: 'e1',
      source: { is: 'typed' },
      time: known(july(when)),
      place: { stop: 'drop-1' },
      ...more,
    });
  const withOutcomes = (...outcomes: ReturnType<typeof reading.parse>[]) => {
    const there = {
      kind: 'event' as const,
      event: 'arrived' as const,
      time: known(july('14 08:00')),
      place: { stop: 'drop-1' },
    };
    const record = state(items(there, ...outcomes), {
      lines: [LINE, { ...LINE, id: 'celery', goods: 'celery' }],
    });
    const now = july('28 12:00');
    const milestones = readMilestones(record, now);
    const { delivery } = record;
    return refusalDeadlinesOf({
      rules: deadlineRules(),
      milestones,
      delivery,
      notices: consignorNotices(record, now),
      now,
    });
  };

  it.each([
    ['the shipper', 'shipper', 'done', []],
    ['the consignor', 'consignor', 'done', []],
    ['the driver', 'driver', 'not-shown', ['consignor-not-told']],
    ['nobody that is on record', undefined, 'not-shown', ['consignor-not-told']],
  ])('(dd)(3): a refusal told to %s', (_, told, how, said) => {
    const found = withOutcomes(outcome('14 15:00', { outcome: 'refused', told }));
    expect(of(found)).toEqual([['us-refusal-fresh', '14 16:00', how]]);
    expect(remarks(found)).toEqual(said);
  });

  it('(dd)(1): acceptance of one line is no acceptance of another that is refused after it', () => {
    const found = withOutcomes(
      outcome('14 09:00', { outcome: 'accepted', line: 'celery' }),
      outcome('14 11:00', { outcome: 'refused', line: 'romaine', told: 'shipper' }),
    );
    expect(of(found)).toEqual([['us-refusal-fresh', '14 16:00', 'done']]);
    const same = withOutcomes(
      outcome('14 09:00', { outcome: 'accepted', line: 'romaine' }),
      outcome('14 11:00', { outcome: 'refused', line: 'romaine', told: 'shipper' }),
    );
    expect(of(same)[0]?.[2]).toBe('no-longer-needed');
  });

  it('counts no refusal before the load was there', () => {
    const early = judged([
      ['refused', '14 07:00'],
      ['arrived', '14 08:00'],
    ]);
    expect(of(early)).toEqual([['us-refusal-fresh', '14 16:00', 'overdue']]);
    expect(remarks(early)).toEqual(['refused-before-arrival']);
    const alone = judged([['refused', '14 07:00']]);
    expect(of(alone)).toEqual([['us-refusal-fresh', undefined, 'not-started']]);
    expect(remarks(alone)).toEqual(['refused-without-arrival']);
  });

  it('7 CFR 46.43(l), (m): says that f.o.b. acceptance leaves no right of rejection', () => {
    expect(remarks(judged([['arrived', '14 08:00']], { sale: 'fob-acceptance' }))).toEqual([
      'no-right-of-rejection',
    ]);
    expect(remarks(judged([['arrived', '14 08:00']], { sale: 'fob' }))).toEqual([]);
  });

  it('says nothing where the truck is not known to have been', () => {
    expect(judged([])).toEqual([]);
    expect(judged([['notice-of-arrival', '14 08:00']])).toEqual([]);
  });

  it('names the hours that it depends on, the opening, and the end on a 24-hour count', () => {
    const [found] = judged([['arrived', '14 16:00']]);
    expect(found?.counting).toMatchObject({
      hours: {
        from: '08:00',
        to: '17:00',
        assumed: true,
        counted: 'rest-from-opening',
        opening: july('15 08:00'),
      },
      ifEveryHourCounts: { is: 'time', at: july('15 00:00') },
      holidays: { list: 'us-federal', known: true },
    });
    expect(found).toMatchObject({ binds: 'receiver', stop: 'drop-1', basis: 'read' });
    expect(found?.source).toContain('7 CFR 46.2(cc)(2)');
    expect(found?.edition?.en).toContain('as of 2015');
  });

  it('takes the receiver’s own hours where they are written in the rules', () => {
    const rules = deadlineRules(
      ["from: '08:00'", "from: '04:00'"],
      ["to: '17:00'", "to: '14:00'"],
      ['assumed: true', 'assumed: false'],
    );
    const [found] = judged([['arrived', '14 05:00']], {}, { rules });
    expect(of(found === undefined ? [] : [found])).toEqual([['us-refusal-fresh', '14 13:00', 'overdue']]);
    expect(found?.counting?.hours?.assumed).toBe(false);
  });

  it('(cc)(1), (v): gives produce in frozen form twelve hours, and both clocks to a mixed load', () => {
    const happened: Happened[] = [['arrived', '14 08:00']];
    const byName = { ...LINE, id: 'peas', goods: 'peas', name: 'Frozen peas' };
    const bySetPoint = { ...LINE, id: 'peas', goods: 'peas', instruction: { setPoint: '-10 °F' } };
    for (const frozen of [byName, bySetPoint])
      expect(of(judged(happened, { lines: [frozen] }))).toEqual([
        ['us-refusal-frozen', '14 20:00', 'overdue'],
      ]);
    expect(judged(happened, { lines: [byName, LINE] }).map(({ id }) => id)).toEqual([
      'us-refusal-fresh',
      'us-refusal-frozen',
    ]);
  });

  it('never ends before eight hours have passed, nor earlier for a later arrival', () => {
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
        delivery: record.delivery,
        notices: [],
        now,
      });
      if (found?.due?.is !== 'time') throw new Error('no end');
      const every = found.counting?.ifEveryHourCounts;
      if (every?.is === 'time') expect(found.due.at).toBeGreaterThanOrEqual(every.at);
      return found.due.at;
    };
    fc.assert(
      fc.property(fc.nat(20_000), fc.nat(3000), (from, later) => {
        expect(end(from)).toBeGreaterThanOrEqual(july('01 08:00') + from * 60_000);
        expect(end(from + later)).toBeGreaterThanOrEqual(end(from));
      }),
      { numRuns: cases(40) },
    );
  });
});

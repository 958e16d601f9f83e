import { describe, expect, it } from 'vitest';
import { claimDeadlinesOf } from '../../../../src/core/assess/claim/deadlines.js';
import { claimsAt } from '../../../../src/core/assess/claim/terms.js';
import { readMilestones } from '../../../../src/core/assess/milestones.js';
import type { ClaimDeadline, DeadlineTime } from '../../../../src/core/model/results.js';
import type { ClaimEntry } from '../../../../src/core/model/state.js';
import { type Instant, type KnownTime, toInstant, type Zone } from '../../../../src/core/model/time.js';
import { items, state } from '../made.js';
import { claimEntries, claimReceived, dayOn, deadlineRules } from './made.js';

const at = (text: string): KnownTime => ({
  is: 'known',
  instant: toInstant(Date.parse(text)),
  zone: 'America/Chicago' as Zone,
  basis: 'typed',
  uncertaintySeconds: 0,
});
type Happened = [event: 'unloaded' | 'refused' | 'arrived' | 'notice-of-arrival', time: string];

function claimed(
  entries: ClaimEntry[],
  now: string,
  { happened = [] as Happened[], rules = deadlineRules() } = {},
): ClaimDeadline[] {
  const evidence = items(
    ...happened.map(([event, time]) => ({
      kind: 'event' as const,
      event,
      time: at(time),
      place: { stop: 'drop-1' },
    })),
  );
  const record = { ...state(evidence), claims: entries };
  const moment = Date.parse(now);
  const milestones = readMilestones(record, moment);
  return claimsAt(record, moment).flatMap((claim) =>
    claimDeadlinesOf(claim, { rules, milestones, now: moment }),
  );
}
const shown = (moment: DeadlineTime | undefined) =>
  moment === undefined
    ? undefined
    : moment.is === 'day'
      ? moment.day.date
      : (toInstant(moment.at) as Instant);
const short = (list: ClaimDeadline[], ...ids: string[]) =>
  list
    .filter(({ id }) => ids.includes(id))
    .map(({ id, turn, due, state: how }) => [turn === undefined ? id : `${id} ${turn}`, shown(due), how]);

const US = { is: 'terms', governs: 'us-carriage-by-contract' } as const;
const CMR = { is: 'terms', governs: 'cmr' } as const;

/** 49 CFR 370.5 and 370.9; days reckoned with Python's `datetime`. */
describe('a claim received', () => {
  it.each([
    ['2025-01-15', '2025-02-14', '2025-05-15', '2025-07-14', '2025-09-12'],
    ['2024-01-15', '2024-02-14', '2024-05-14', '2024-07-13', '2024-09-11'],
    ['2025-12-31', '2026-01-30', '2026-04-30', '2026-06-29', '2026-08-28'],
  ])(
    'on %s is to be acknowledged by %s and decided by %s, with status from then on',
    (day, ack, decide, ...more) => {
      const found = claimed(claimEntries(claimReceived(day), US), `${more[0]}T12:00-05:00`);
      expect(short(found, 'us-acknowledge', 'us-pay-decline-or-offer', 'us-status')).toEqual([
        ['us-acknowledge', ack, 'overdue'],
        ['us-pay-decline-or-offer', decide, 'overdue'],
        ['us-status 1', decide, 'overdue'],
        ['us-status 2', more[0], 'running'],
      ]);
      const later = claimed(claimEntries(claimReceived(day), US), `${more[1]}T12:00-05:00`);
      expect(short(later, 'us-status').at(-1)).toEqual(['us-status 3', more[1], 'running']);
    },
  );

  it('is late only when the last day is over at its own place', () => {
    const entries = claimEntries(claimReceived('2025-01-15'), US);
    const state = (now: string) => short(claimed(entries, now), 'us-acknowledge')[0]?.[2];
    // Chicago is six hours behind UTC in February.
    expect(state('2025-02-15T05:59:59Z')).toBe('running');
    expect(state('2025-02-15T06:00:00Z')).toBe('overdue');
  });

  it.each([
    ['2025-02-14', 'done'],
    ['2025-02-15', 'done-late'],
  ])('and acknowledged on %s is %s', (day, how) => {
    const letter = {
      is: 'letter',
      way: 'sent',
      letter: 'acknowledgement',
      on: dayOn(day),
      with: 'Mock Elms',
    };
    expect(
      short(
        claimed(claimEntries(claimReceived('2025-01-15'), US, letter), '2025-03-01T00:00Z'),
        'us-acknowledge',
      ),
    ).toEqual([['us-acknowledge', '2025-02-14', how]]);
  });

  it('that a later entry corrects is counted from the corrected day', () => {
    const entries = claimEntries(
      claimReceived('2025-01-15'),
      US,
      claimReceived('2025-01-20', { replaces: 10 }),
    );
    expect(short(claimed(entries, '2025-01-21T00:00Z'), 'us-acknowledge')).toEqual([
      ['us-acknowledge', '2025-02-19', 'running'],
    ]);
  });

  it('tomorrow is not there yet', () => {
    expect(claimed(claimEntries(claimReceived('2025-01-15')), '2025-01-14T12:00Z')).toEqual([]);
  });
});

describe('what meets or ends the carrier’s clocks', () => {
  const usd = (amount: string) => ({ amount, currency: 'USD' });
  const claim = claimReceived('2025-01-15', { amount: usd('1000') });
  const how = (...notes: Parameters<typeof claimEntries>) =>
    short(
      claimed(claimEntries(claim, US, ...notes), '2025-06-01T00:00Z'),
      'us-acknowledge',
      'us-pay-decline-or-offer',
      'us-status',
    ).map(([id, , state]) => `${id}: ${state}`);
  const pay = (amount: string, day: string) => ({
    is: 'payment',
    by: 'carrier',
    on: dayOn(day),
    amount: usd(amount),
  });

  it.each([
    ['payment in time', [pay('1000', '2025-02-01')]],
    ['a written declination', [{ is: 'declined', on: dayOn('2025-02-01'), inWriting: true }]],
    [
      'a part paid and the rest declined',
      [
        pay('400', '2025-01-20'),
        { is: 'declined', on: dayOn('2025-02-01'), inWriting: true, part: usd('600') },
      ],
    ],
    [
      'a firm offer',
      [{ is: 'offer', by: 'carrier', on: dayOn('2025-02-01'), amount: usd('500'), firm: true }],
    ],
  ])('%s makes all else needless', (_, notes) => {
    expect(how(...notes)).toEqual([
      'us-acknowledge: no-longer-needed',
      'us-pay-decline-or-offer: done',
      'us-status 1: no-longer-needed',
    ]);
  });

  it.each([
    ['a part paid', [pay('400', '2025-01-20')]],
    ['declining by word of mouth', [{ is: 'declined', on: dayOn('2025-02-01'), inWriting: false }]],
    [
      'an offer that is not firm',
      [{ is: 'offer', by: 'carrier', on: dayOn('2025-02-01'), amount: usd('500') }],
    ],
    [
      'an offer by the claimant',
      [{ is: 'offer', by: 'claimant', on: dayOn('2025-02-01'), amount: usd('500'), firm: true }],
    ],
    [
      'money of another currency',
      [{ ...pay('1000', '2025-02-01'), amount: { amount: '1000', currency: 'CAD' } }],
    ],
  ])('%s does not', (_, notes) => {
    expect(how(...notes)).toEqual([
      'us-acknowledge: overdue',
      'us-pay-decline-or-offer: overdue',
      'us-status 1: overdue',
      'us-status 2: running',
    ]);
  });

  it('each status letter counts for one turn, the earliest that is open', () => {
    const letter = (day: string) => ({
      is: 'letter',
      way: 'sent',
      letter: 'status-report',
      on: dayOn(day),
      with: 'Mock Elms',
    });
    expect(
      short(
        claimed(claimEntries(claim, US, letter('2025-05-10'), letter('2025-08-01')), '2025-09-01T00:00Z'),
        'us-status',
      ),
    ).toEqual([
      ['us-status 1', '2025-05-15', 'done'],
      ['us-status 2', '2025-07-14', 'done-late'],
      ['us-status 3', '2025-09-12', 'running'],
    ]);
  });
});

describe('what governs', () => {
  const ids = (...notes: Parameters<typeof claimEntries>) =>
    claimed(claimEntries(claimReceived('2025-01-15'), ...notes), '2025-02-01T00:00Z').map(({ id }) => id);

  it('not said: the clocks of every candidate, earliest end first', () => {
    const found = claimed(claimEntries(claimReceived('2025-01-15')), '2025-02-01T00:00Z', {
      happened: [['unloaded', '2025-01-10T10:00-06:00']],
    });
    expect(found.map(({ id, due }) => `${id} ${shown(due) ?? '-'}`)).toEqual([
      'cmr-apparent-damage 2025-01-10',
      'cmr-hidden-damage 2025-01-18',
      'us-acknowledge 2025-02-14',
      'us-pay-decline-or-offer 2025-05-15',
      'us-status 2025-05-15',
      'us-least-time-to-claim 2025-10-10',
      'us-least-time-to-sue -',
      'us-food-transport-records -',
      'cmr-delay -',
      'cmr-limitation -',
      'cmr-limitation-wilful -',
    ]);
  });

  it('said to be unknown: the same', () => {
    expect(ids({ is: 'terms', governs: 'unknown' })).toEqual(ids());
  });

  it('said: only its own, and what counts whatever governs', () => {
    expect(ids(CMR).every((id) => id.startsWith('cmr-') || id === 'us-food-transport-records')).toBe(true);
    expect(ids(US).some((id) => id.startsWith('cmr-'))).toBe(false);
    expect(ids({ is: 'terms', governs: 'state-law' })).toEqual(['us-food-transport-records']);
  });

  it('the last that was said counts', () => {
    expect(ids(US, CMR)).toEqual(ids(CMR));
  });
});

/** 49 U.S.C. 14706(e). */
describe('the least times that a carrier may leave', () => {
  const find = (id: string, list: ClaimDeadline[]) => list.find((deadline) => deadline.id === id);
  const happened: Happened[] = [['unloaded', '2025-06-10T09:00-05:00']];

  it('are no deadlines by themselves, and a claim that came in meets the first', () => {
    const found = find(
      'us-least-time-to-claim',
      claimed(claimEntries(claimReceived('2025-06-20'), US), '2025-07-01T00:00Z', { happened }),
    );
    expect(found).toMatchObject({ nature: 'least-time', state: 'done', binds: 'claimant' });
    expect(shown(found?.due)).toBe('2026-03-10');
  });

  it.each([
    [
      'an offer of compromise',
      {
        is: 'offer',
        by: 'carrier',
        on: dayOn('2024-02-29'),
        amount: { amount: '5', currency: 'USD' },
        firm: true,
      },
      undefined,
    ],
    ['declining by word of mouth', { is: 'declined', on: dayOn('2024-02-29'), inWriting: false }, undefined],
    ['declining in writing', { is: 'declined', on: dayOn('2024-02-29'), inWriting: true }, '2026-02-28'],
  ])('two years for suit after %s', (_, note, due) => {
    const found = find(
      'us-least-time-to-sue',
      claimed(claimEntries(claimReceived('2024-01-15'), US, note), '2024-03-01T00:00Z'),
    );
    expect(shown(found?.due)).toBe(due);
    expect(found?.state).toBe(due === undefined ? 'not-started' : 'running');
  });

  it('are shown beside a contract that leaves less', () => {
    const set = {
      is: 'clock-set',
      clock: 'us-least-time-to-claim',
      count: 60,
      unit: 'days',
      note: 'Contract, 12(b)',
    };
    const found = find(
      'us-least-time-to-claim',
      claimed(claimEntries(claimReceived('2025-06-20'), US, set), '2025-07-01T00:00Z', { happened }),
    );
    expect([shown(found?.due), shown(found?.leastDue)]).toEqual(['2025-08-09', '2026-03-10']);
    expect(found?.setBy).toMatchObject({ seq: 12, note: 'Contract, 12(b)' });
  });
});

/** CMR, articles 30 and 32. */
describe('the clocks of international carriage by road', () => {
  const happened: Happened[] = [
    ['arrived', '2024-03-01T08:00-06:00'],
    ['unloaded', '2024-03-01T10:00-06:00'],
  ];
  const late = claimReceived('2024-06-01');
  const due = (id: string, rules = deadlineRules()) =>
    claimed(claimEntries(late, CMR), '2024-06-01T18:00Z', { happened, rules }).find(
      (deadline) => deadline.id === id,
    );

  it('leave out the day of delivery and Sundays for damage that cannot be seen', () => {
    expect(shown(due('cmr-hidden-damage')?.due)).toBe('2024-03-09');
    expect(due('cmr-hidden-damage')?.counting).toEqual({
      leftOut: [{ date: '2024-03-03', why: 'sunday' }],
      holidays: { list: 'place-of-delivery', known: false },
    });
  });

  it('leave out the holidays of the place where they are named', () => {
    const rules = deadlineRules(['place-of-delivery: []', 'place-of-delivery: [2024-03-08]']);
    expect(shown(due('cmr-hidden-damage', rules)?.due)).toBe('2024-03-11');
    expect(due('cmr-hidden-damage', rules)?.counting?.leftOut.map(({ why }) => why)).toEqual([
      'sunday',
      'holiday',
      'sunday',
    ]);
  });

  it('give 21 days for delay, and the day of delivery for damage that can be seen', () => {
    expect(shown(due('cmr-delay')?.due)).toBe('2024-03-22');
    expect(shown(due('cmr-apparent-damage')?.due)).toBe('2024-03-01');
  });

  it('stand still from a claim in writing until it is declined in writing', () => {
    const year = (...notes: Parameters<typeof claimEntries>) => {
      const found = claimed(claimEntries(late, CMR, ...notes), '2024-12-01T00:00Z', { happened });
      const { due: end, state: how, stopped } = found.find(({ id }) => id === 'cmr-limitation') ?? {};
      return [shown(end), how, stopped?.from.date, stopped?.until?.date];
    };
    expect(year()).toEqual([undefined, 'running', '2024-06-01', undefined]);
    // One year is 1 March 2025; 30 days of standing still more.
    expect(year({ is: 'declined', on: dayOn('2024-07-01'), inWriting: true })).toEqual([
      '2025-03-31',
      'running',
      '2024-06-01',
      '2024-07-01',
    ]);
  });

  it('do not stand still for a claim by word of mouth', () => {
    const spoken = claimReceived('2024-06-01', { contents: { form: 'spoken' } });
    const found = claimed(claimEntries(spoken, CMR), '2024-12-01T00:00Z', { happened });
    expect(shown(found.find(({ id }) => id === 'cmr-limitation')?.due)).toBe('2025-03-01');
  });

  it('do not start the year when the goods were refused: other days count then', () => {
    const found = claimed(claimEntries(late, CMR), '2024-12-01T00:00Z', {
      happened: [['refused', '2024-03-01T10:00-06:00']],
    });
    expect(found.find(({ id }) => id === 'cmr-limitation')?.state).toBe('not-started');
  });
});

describe('a term of the contract', () => {
  const set = (clock: string, count: number, unit: string) => ({ is: 'clock-set', clock, count, unit });
  const entries = (...notes: Parameters<typeof claimEntries>) =>
    claimEntries(claimReceived('2026-06-24'), US, ...notes);

  it.each([
    ['days', 10, '2026-07-04'],
    // Friday 3 July is kept for Independence Day; Saturdays and Sundays are not worked.
    ['working-days', 10, '2026-07-09'],
    ['months', 1, '2026-07-24'],
  ])('in %s takes the place of the rule', (unit, count, due) => {
    const [found] = claimed(entries(set('us-acknowledge', count, unit)), '2026-06-25T00:00Z').filter(
      ({ id }) => id === 'us-acknowledge',
    );
    expect(shown(found?.due)).toBe(due);
    expect(found?.setBy?.seq).toBe(12);
  });

  it('in hours counts from the end of a day whose hour is not known', () => {
    expect(
      short(claimed(entries(set('us-acknowledge', 48, 'hours')), '2026-06-25T00:00Z'), 'us-acknowledge'),
    ).toEqual([['us-acknowledge', '2026-06-27T05:00:00.000Z', 'running']]);
  });

  it('for a clock that comes round again says how often; the first turn stays', () => {
    expect(short(claimed(entries(set('us-status', 30, 'days')), '2026-11-20T12:00Z'), 'us-status')).toEqual([
      ['us-status 1', '2026-10-22', 'overdue'],
      ['us-status 2', '2026-11-21', 'running'],
    ]);
  });
});

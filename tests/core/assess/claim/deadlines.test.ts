import { describe, expect, it } from 'vitest';
import { claimDeadlinesOf } from '../../../../src/core/assess/claim/deadlines.js';
import { claimsAt, termsOf } from '../../../../src/core/assess/claim/terms.js';
import { readMilestones } from '../../../../src/core/assess/milestones.js';
import type { EventName } from '../../../../src/core/model/evidence.js';
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
type Happened = [event: EventName, time: string];

function claimed(
  entries: ClaimEntry[],
  now: string,
  { happened = [] as Happened[], rules = deadlineRules(), exceptions = [] as readonly DeadlineTime[] } = {},
): ClaimDeadline[] {
  const evidence = items(
    ...happened.map(([event, time]) => ({
      kind: 'event' as const,
      event,
      time: at(time),
      place: { stop: event === 'departed' ? 'load-1' : 'drop-1' },
    })),
  );
  const record = { ...state(evidence), claims: entries };
  const moment = Date.parse(now);
  const milestones = readMilestones(record, moment);
  return claimsAt(record, moment).flatMap((claim) =>
    claimDeadlinesOf(claim, { rules, milestones, lines: record.delivery.lines, exceptions, now: moment }),
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
  ])('370.5(a), 370.9(a): %s makes all else needless', (_, notes) => {
    expect(how(...notes)).toEqual([
      'us-acknowledge: no-longer-needed',
      'us-pay-decline-or-offer: done',
      'us-status 1: no-longer-needed',
    ]);
  });

  it('370.5(a): a firm offer answers the claim, and spares no acknowledgment', () => {
    expect(
      how({ is: 'offer', by: 'carrier', on: dayOn('2025-02-01'), amount: usd('500'), firm: true }),
    ).toEqual(['us-acknowledge: overdue', 'us-pay-decline-or-offer: done', 'us-status 1: no-longer-needed']);
  });

  it.each([
    ['a part paid', [pay('400', '2025-01-20')]],
    ['declining by word of mouth', [{ is: 'declined', on: dayOn('2025-02-01'), inWriting: false }]],
    [
      'a letter of the insurer that does not say for whom it acts',
      [
        {
          is: 'declined',
          on: dayOn('2025-02-01'),
          inWriting: true,
          by: 'insurer',
          reasons: ['warm when loaded'],
        },
      ],
    ],
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
      'cmr-apparent-damage 2025-01-10T16:00:00.000Z',
      'cmr-hidden-damage 2025-01-18',
      'us-acknowledge 2025-02-14',
      'ca-notice 2025-03-11',
      'us-pay-decline-or-offer 2025-05-15',
      'us-status 2025-05-15',
      'us-transport-records-fresh 2025-07-10',
      'us-least-time-to-claim 2025-10-10',
      'uniform-bill-claim 2025-10-10',
      'us-least-time-to-sue -',
      'uniform-bill-claim-not-delivered -',
      'uniform-bill-suit -',
      'ca-final-statement -',
      'us-food-transport-records -',
      'cmr-joint-check -',
      'cmr-delay -',
      'cmr-limitation -',
      'cmr-limitation-total-loss -',
      'cmr-limitation-other -',
      'cmr-limitation-wilful -',
    ]);
  });

  it('said to be unknown: the same', () => {
    expect(ids({ is: 'terms', governs: 'unknown' })).toEqual(ids());
  });

  it('stated: only its own', () => {
    expect(new Set(ids(CMR).map((id) => id.split('-')[0]))).toEqual(new Set(['cmr']));
    expect(new Set(ids(US).map((id) => id.split('-')[0]))).toEqual(new Set(['us']));
    expect(ids({ is: 'terms', governs: 'state-law' })).toEqual([
      'us-transport-records-fresh',
      'us-food-transport-records',
    ]);
  });

  it('49 U.S.C. 14101(b)(1): a contract that waives part B in writing leaves out its times', () => {
    const waived = ids({ is: 'terms', governs: 'us-carriage-waived' });
    expect(waived).toEqual(ids({ is: 'terms', governs: 'state-law' }));
  });

  it('terms of a bill hold beside those of the law', () => {
    const both = ids(US, { is: 'terms', governs: 'uniform-bill' });
    expect(both).toEqual(expect.arrayContaining(['us-acknowledge', 'uniform-bill-suit']));
    expect(both.some((id) => id.startsWith('cmr-'))).toBe(false);
  });

  it.each([
    ['the law of the United States and the CMR', [US, CMR]],
    ['the CMR and the law of a state', [CMR, { is: 'terms', governs: 'state-law' }]],
    ['the CMR and a uniform bill', [CMR, { is: 'terms', governs: 'uniform-bill' }]],
    ['a waiver and what it waives', [US, { is: 'terms', governs: 'us-carriage-waived' }]],
  ])('%s contradict each other: nothing that depends on them is counted', (_, notes) => {
    const entries = claimEntries(claimReceived('2025-01-15'), ...notes);
    expect(ids(...notes)).toEqual([]);
    expect(termsOf({ entries })).toEqual({ governs: 'unknown', contradicts: [11, 12] });
  });

  it('an entry that corrects another ends the contradiction, and `unknown` takes all back', () => {
    expect(ids(US, { ...CMR, replaces: 11 })).toEqual(ids(CMR));
    expect(ids(US, { is: 'terms', governs: 'unknown' }, CMR)).toEqual(ids(CMR));
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
    [
      '(e)(2)(B): the insurer, with no word for whom it acts',
      { is: 'declined', on: dayOn('2024-02-29'), inWriting: true, by: 'insurer', reasons: ['frost'] },
      undefined,
    ],
    [
      '(e)(2)(B): the insurer, without a reason',
      { is: 'declined', on: dayOn('2024-02-29'), inWriting: true, by: 'insurer', onBehalf: true },
      undefined,
    ],
    [
      '(e)(2)(B): the insurer, with a reason, on behalf of the carrier',
      {
        is: 'declined',
        on: dayOn('2024-02-29'),
        inWriting: true,
        by: 'insurer',
        onBehalf: true,
        reasons: ['frost'],
      },
      '2026-02-28',
    ],
    ['declining in writing', { is: 'declined', on: dayOn('2024-02-29'), inWriting: true }, '2026-02-28'],
  ])('two years for suit after: %s', (_, note, due) => {
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

/**
 * CMR, articles 30 and 32, worked by hand. 1 March 2024 is a Friday; Chicago is six hours behind UTC until 10 March.
 */
describe('the clocks of international carriage by road', () => {
  const happened: Happened[] = [
    ['arrived', '2024-03-01T08:00-06:00'],
    ['unloaded', '2024-03-01T10:00-06:00'],
  ];
  const late = claimReceived('2024-06-01', { evidence: ['e7'] });
  const all = (...notes: Parameters<typeof claimEntries>) =>
    claimed(claimEntries(late, CMR, ...notes), '2024-12-01T00:00Z', { happened });
  const due = (id: string, rules = deadlineRules()) =>
    claimed(claimEntries(late, CMR), '2024-06-01T18:00Z', { happened, rules }).find(
      (deadline) => deadline.id === id,
    );
  const reservation = (day: string, more: Record<string, unknown> = {}) => ({
    is: 'letter',
    way: 'received',
    letter: 'reservation',
    on: dayOn(day),
    with: 'Mock Elms',
    ...more,
  });
  const how = (id: string, ...notes: Parameters<typeof claimEntries>) => {
    const found = all(...notes).find((one) => one.id === id);
    return [found?.state, ...(found?.remarks ?? []).map(({ is }) => is)];
  };

  it('30(1), (4): seven days leave out the day of delivery and Sundays', () => {
    // Friday 1 March; Saturday 2 is day one, Sunday 3 is left out, Monday 4 is day two, Saturday 9 is day seven.
    expect(shown(due('cmr-hidden-damage')?.due)).toBe('2024-03-09');
    expect(due('cmr-hidden-damage')?.counting).toEqual({
      leftOut: [{ date: '2024-03-03', why: 'sunday' }],
      holidays: { list: 'place-of-delivery', known: false },
    });
  });

  it('30(1): leave out the public holidays of the place where they are named', () => {
    const rules = deadlineRules(['place-of-delivery: []', 'place-of-delivery: [2024-03-08]']);
    expect(shown(due('cmr-hidden-damage', rules)?.due)).toBe('2024-03-11');
    expect(due('cmr-hidden-damage', rules)?.counting?.leftOut.map(({ why }) => why)).toEqual([
      'sunday',
      'holiday',
      'sunday',
    ]);
  });

  it('30(1): apparent damage is due at the time of delivery, not at the end of its day', () => {
    expect(shown(due('cmr-apparent-damage')?.due)).toBe('2024-03-01T16:00:00.000Z');
    expect(how('cmr-apparent-damage', reservation('2024-03-01'))).toEqual(['not-shown', 'hour-unknown']);
    expect(how('cmr-apparent-damage', reservation('2024-03-02', { sent: dayOn('2024-03-02') }))).toEqual([
      'done-late',
    ]);
  });

  it('30(1): goods taken with exceptions, or refused, at the dock are a reservation in time', () => {
    const dock = at('2024-03-01T09:50-06:00');
    const exceptions = [
      { is: 'time' as const, at: Date.parse('2024-03-01T09:50-06:00'), zone: dock.zone, evidence: [] },
    ];
    const found = claimed(claimEntries(late, CMR), '2024-06-01T18:00Z', { happened, exceptions });
    expect(found.find(({ id }) => id === 'cmr-apparent-damage')?.state).toBe('done');
  });

  it.each<[string, Parameters<typeof claimEntries>[number], (string | undefined)[]]>([
    ['came on the last day', reservation('2024-03-09'), ['done']],
    [
      'sent on the last day, came after it',
      reservation('2024-03-14', { sent: dayOn('2024-03-09') }),
      ['done'],
    ],
    ['sent after the last day', reservation('2024-03-14', { sent: dayOn('2024-03-11') }), ['done-late']],
    [
      'came after the last day, nobody says when it was sent',
      reservation('2024-03-14'),
      ['not-shown', 'sent-day-unknown'],
    ],
  ])('30(1): a reservation %s', (_, letter, expected) => {
    expect(how('cmr-hidden-damage', letter)).toEqual(expected);
  });

  it('30(3): 21 days for delay, by the day of sending', () => {
    expect(shown(due('cmr-delay')?.due)).toBe('2024-03-22');
    expect(how('cmr-delay', reservation('2024-03-25', { sent: dayOn('2024-03-22') }))).toEqual(['done']);
  });

  it('30(2): seven days from a joint check, its day and Sundays left out', () => {
    const checked: Happened[] = [...happened, ['jointly-checked', '2024-03-04T09:00-06:00']];
    const found = claimed(claimEntries(late, CMR), '2024-06-01T18:00Z', { happened: checked });
    // Monday 4 March; Tuesday 5 is day one, Sunday 10 is left out, Tuesday 12 is day seven.
    expect(shown(found.find(({ id }) => id === 'cmr-joint-check')?.due)).toBe('2024-03-12');
  });

  const year = (...notes: Parameters<typeof claimEntries>) => {
    const {
      due: end,
      state,
      stopped,
      remarks = [],
    } = all(...notes).find(({ id }) => id === 'cmr-limitation') ?? {};
    return [
      shown(end),
      state,
      stopped?.from.date,
      stopped?.until?.date,
      stopped?.notBefore ?? false,
      ...remarks.map(({ is }) => is),
    ];
  };
  const declined = { is: 'declined', on: dayOn('2024-07-01'), inWriting: true };
  const returned = (day: string) => ({
    is: 'papers-returned',
    on: dayOn(day),
    to: 'Mock Elms',
    form: 'paper',
  });

  it('32(2): stand still from a written claim', () => {
    expect(year()).toEqual([undefined, 'running', '2024-06-01', undefined, false]);
  });

  it('32(2): until it is declined in writing and the documents are returned', () => {
    // One year is 1 March 2025. Declined on 1 July, returned on the 11th: 40 days of standing still.
    expect(year(declined, returned('2024-07-11'))).toEqual([
      '2025-04-10',
      'running',
      '2024-06-01',
      '2024-07-11',
      false,
    ]);
    expect(year(returned('2024-06-20'), declined)).toEqual([
      '2025-03-31',
      'running',
      '2024-06-01',
      '2024-07-01',
      false,
    ]);
  });

  it('32(2): declined alone, the end is not before 30 days later', () => {
    expect(year(declined)).toEqual([
      '2025-03-31',
      'running',
      '2024-06-01',
      '2024-07-01',
      true,
      'papers-not-returned',
    ]);
  });

  it('32(2): returned alone, it stands still', () => {
    expect(year(returned('2024-07-11'))).toEqual([undefined, 'running', '2024-06-01', undefined, false]);
  });

  it('32(2): the earliest possible end, once past, shows nothing', () => {
    const found = claimed(claimEntries(late, CMR, declined), '2025-04-15T00:00Z', { happened });
    expect(found.find(({ id }) => id === 'cmr-limitation')?.state).toBe('running');
    const shownToBe = claimed(
      claimEntries(late, CMR, declined, returned('2024-07-01')),
      '2025-04-15T00:00Z',
      {
        happened,
      },
    );
    expect(shownToBe.find(({ id }) => id === 'cmr-limitation')?.state).toBe('overdue');
  });

  it('32(2): a return of documents that never came is said and not counted', () => {
    const bare = claimReceived('2024-06-01');
    const found = claimed(claimEntries(bare, CMR, declined, returned('2024-07-11')), '2024-12-01T00:00Z', {
      happened,
    });
    const limit = found.find(({ id }) => id === 'cmr-limitation');
    expect([shown(limit?.due), limit?.stopped?.notBefore]).toEqual(['2025-03-31', true]);
    expect(limit?.remarks?.map(({ is }) => is)).toEqual([
      'papers-returned-never-came',
      'papers-not-returned',
    ]);
  });

  it('32(2), second sentence: a part admitted, and a part declined, stand apart', () => {
    const usd = (amount: string) => ({ amount, currency: 'USD' });
    const admitted = { is: 'admitted', on: dayOn('2024-07-01'), part: usd('400') };
    expect(year({ ...declined, part: usd('600') }, admitted, returned('2024-07-01')).slice(5)).toEqual([
      'part-admitted',
      'part-declined',
    ]);
  });

  it('32(2): do not stand still for a claim by word of mouth', () => {
    const spoken = claimReceived('2024-06-01', { contents: { form: 'spoken' } });
    const found = claimed(claimEntries(spoken, CMR), '2024-12-01T00:00Z', { happened });
    expect(shown(found.find(({ id }) => id === 'cmr-limitation')?.due)).toBe('2025-03-01');
  });

  it('32(1)(b): goods not delivered: a year from the sixtieth day after they were taken over', () => {
    const found = claimed(
      claimEntries(claimReceived('2024-12-01', { contents: { form: 'spoken' } }), CMR),
      '2024-12-02T00:00Z',
      {
        happened: [
          ['departed', '2024-03-01T10:00-06:00'],
          ['refused', '2024-03-03T10:00-06:00'],
        ],
      },
    );
    const end = (id: string) => found.find((one) => one.id === id);
    // 1 March and 60 days is 30 April.
    expect(shown(end('cmr-limitation-total-loss')?.from)).toBe('2024-04-30');
    expect(shown(end('cmr-limitation-total-loss')?.due)).toBe('2025-04-30');
    expect(end('cmr-limitation')?.state).toBe('not-started');
  });
});

/** Uniform straight bill of lading, sec. 3; uniform conditions of carriage of Canada, notice of claim. */
describe('the times of a bill of lading', () => {
  const happened: Happened[] = [
    ['departed', '2024-02-27T10:00-06:00'],
    ['unloaded', '2024-03-01T10:00-06:00'],
  ];
  const ends = (governs: string, more: Happened[] = happened) => {
    const notes = [
      { is: 'terms', governs },
      { is: 'declined', on: dayOn('2024-06-30'), inWriting: true },
    ];
    const found = claimed(claimEntries(claimReceived('2024-05-01'), ...notes), '2024-07-01T00:00Z', {
      happened: more,
    });
    return Object.fromEntries(found.map(({ id, due }) => [id, shown(due)]));
  };

  it('3(b), (c): nine months from delivery, suit within two years and one day', () => {
    expect(ends('uniform-bill')).toMatchObject({
      'uniform-bill-claim': '2024-12-01',
      'uniform-bill-claim-not-delivered': undefined,
      'uniform-bill-suit': '2026-07-01',
    });
  });

  it('3(b): a refusal starts nothing', () => {
    expect(
      ends('uniform-bill', [['refused', '2024-03-01T10:00-06:00']])['uniform-bill-claim'],
    ).toBeUndefined();
  });

  it('Canada: sixty days from delivery, nine months from shipment', () => {
    expect(ends('ca-uniform-conditions')).toMatchObject({
      'ca-notice': '2024-04-30',
      'ca-final-statement': '2024-11-27',
    });
  });
});

/** 21 CFR 1.360(f) and 1.912. */
describe('records that a carrier keeps', () => {
  it('are kept six months for fresh goods, and nothing is late after that', () => {
    const happened: Happened[] = [['unloaded', '2024-03-01T10:00-06:00']];
    const kept = (now: string) =>
      short(
        claimed(claimEntries(claimReceived('2024-03-20'), US), now, { happened }),
        'us-transport-records-fresh',
      );
    expect(kept('2024-08-31T12:00Z')).toEqual([['us-transport-records-fresh', '2024-09-01', 'running']]);
    expect(kept('2024-09-03T12:00Z')).toEqual([
      ['us-transport-records-fresh', '2024-09-01', 'no-longer-needed'],
    ]);
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

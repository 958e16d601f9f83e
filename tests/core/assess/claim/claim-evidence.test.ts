import { describe, expect, it } from 'vitest';
import { claimResults } from '../../../../src/core/assess/claim/claim.js';
import { readMilestones } from '../../../../src/core/assess/milestones.js';
import { outcomesOf } from '../../../../src/core/assess/outcomes.js';
import type { DeliveryInput } from '../../../../src/core/model/delivery.js';
import type { EvidenceId } from '../../../../src/core/model/evidence.js';
import { at, items, state } from '../made.js';
import { claimEntries, claimReceived, deadlineRules } from './made.js';

const NOW = Date.parse('2026-09-01T00:00Z');
const LINES: Partial<DeliveryInput> = {
  lines: [
    { id: 'romaine', goods: 'lettuce-romaine', from: 'load-1', to: 'drop-1', cartons: 400 },
    { id: 'celery', goods: 'celery', from: 'load-1', to: 'drop-1', cartons: 200 },
  ],
};
const results = (evidence: Parameters<typeof items>, ...notes: Parameters<typeof claimEntries>) => {
  const record = { ...state(items(...evidence), LINES), claims: claimEntries(...notes) };
  const milestones = readMilestones(record, NOW);
  return claimResults({
    state: record,
    rules: deadlineRules(),
    milestones,
    now: NOW,
    findings: [],
    gaps: [],
    outcomes: outcomesOf(record, milestones),
  });
};
const refused = (amount: string, line = 'romaine') => ({
  kind: 'outcome' as const,
  outcome: 'refused' as const,
  quantity: { amount, unit: 'cartons' as const },
  line,
  reasons: [],
  documents: [],
  place: { stop: 'drop-1' },
  time: at(50),
});
const usd = (amount: string) => ({ amount, currency: 'USD' });
const EACH = {
  is: 'amount',
  item: 'market-value',
  saidBy: 'claimant',
  line: 'romaine',
  each: usd('10'),
  unit: 'cartons',
  evidence: ['e1' as EvidenceId],
};

describe('quantities of a claim that states none', () => {
  it('are those of the outcomes at the dock, and the worksheet says so', () => {
    const [claim] = results([refused('120')], claimReceived('2026-08-03', { amount: usd('1200') }), EACH);
    expect(claim?.amounts?.computed).toEqual({ low: 120_000, high: 120_000 });
    expect(claim?.amounts?.notes).toContainEqual(
      expect.objectContaining({ detail: 'quantities-from-outcomes', seqs: [1] }),
    );
    expect(claim?.quantities).toMatchObject([
      {
        line: 'romaine',
        unit: 'cartons',
        states: [
          { state: 'shipped', low: '400' },
          { state: 'rejected', low: '120' },
        ],
      },
    ]);
  });

  it('of a line are not joined with those that the claim states of it', () => {
    const own = {
      is: 'quantity',
      state: 'rejected',
      line: 'romaine',
      quantity: '100',
      unit: 'cartons',
      saidBy: 'claimant',
    };
    const [claim] = results([refused('120')], claimReceived('2026-08-03'), EACH, own);
    expect(claim?.amounts?.computed).toEqual({ low: 100_000, high: 100_000 });
    expect(claim?.amounts?.notes.map(({ detail }) => detail)).not.toContain('quantities-from-outcomes');
  });

  it('are unknown where the dock refused nothing', () => {
    const [claim] = results([], claimReceived('2026-08-03'), EACH);
    expect(claim?.amounts?.notes).toContainEqual(expect.objectContaining({ is: 'quantity-unknown' }));
  });
});

/** 49 CFR 370.3(e). */
describe('similar claims', () => {
  const other = claimReceived('2026-08-10', {
    claim: 'c2',
    claimant: { name: 'Dry Wash Growers', role: 'shipper' },
  });
  const similar = (...notes: Parameters<typeof claimEntries>) => results([], ...notes)[0]?.similar;
  it.each([
    [
      'of two claimants on one delivery',
      [claimReceived('2026-08-03'), other],
      { claims: ['c2'], carriers: [] },
    ],
    [
      'of one claimant are not',
      [claimReceived('2026-08-03'), claimReceived('2026-08-10', { claim: 'c2' })],
      undefined,
    ],
    [
      'that were closed are not',
      [
        claimReceived('2026-08-03'),
        other,
        { is: 'closed', claim: 'c2', how: 'withdrawn', on: { date: '2026-08-12', zone: 'America/Chicago' } },
      ],
      undefined,
    ],
    [
      'on other goods are not',
      [claimReceived('2026-08-03'), other, EACH, { ...EACH, claim: 'c2', line: 'celery' }],
      undefined,
    ],
    [
      'presented to other carriers, as the claimant or they say',
      [claimReceived('2026-08-03', { alsoFiledWith: ['Second Haulage'] })],
      { claims: [], carriers: ['Second Haulage'] },
    ],
  ])('%s', (_, notes, expected) => expect(similar(...notes)).toEqual(expected));
});

/** 7 CFR 46.22 and 46.23. */
describe('a dumping certificate', () => {
  const whole = {
    kind: 'inspection' as const,
    lot: 'L-1',
    line: 'romaine',
    place: { stop: 'drop-1' },
    time: at(60),
    defects: [{ name: 'decay', percent: 90 }],
    documents: [],
    dumped: { amount: '20', unit: 'cartons' as const },
    noCommercialValue: true as const,
    marks: 'Green Mesa',
    shipper: 'Green Mesa Packing, Yuma AZ',
    requestedBy: 'Plainwater Foods, Omaha NE',
  };
  const dumping = (...list: Parameters<typeof items>) =>
    results(list, claimReceived('2026-08-03'))[0]?.papers.find(({ id }) => id === 'dumping-certificate');

  it('with all that 46.23 asks for lacks nothing; the share is of what was shipped', () =>
    expect(dumping(whole)).toEqual({
      id: 'dumping-certificate',
      asked: 'if-dumped',
      have: ['e1'],
      dumping: { lacks: [], shares: [{ line: 'romaine', percent: 5 }] },
    }));

  it.each([
    ['marks', { marks: undefined }],
    ['shipper', { shipper: undefined }],
    ['applicant', { requestedBy: undefined }],
    ['no-commercial-value', { noCommercialValue: undefined }],
    ['condition', { defects: [] }],
    ['commodity', { line: undefined }],
    ['place', { place: undefined }],
  ])('lacks %s', (content, change) =>
    expect(dumping({ ...whole, ...change })?.dumping?.lacks).toEqual([content]),
  );

  it('is not asked for where nothing says that goods were dumped', () => expect(dumping()).toBeUndefined());
});

import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { assess } from '../../../../src/core/assess/assess.js';
import { ruleSet } from '../../../../src/core/model/rule-set.js';
import type { Instant } from '../../../../src/core/model/time.js';
import PRODUCE from '../../../../templates/rule-sets/produce.yaml?raw';
import { HASH, state } from '../made.js';
import { claimEntries, claimReceived, dayOn, deadlineRules } from './made.js';

const produce = ruleSet.parse(parse(PRODUCE));
const judged = (at: string, ...notes: Parameters<typeof claimEntries>) =>
  assess({
    state: { ...state([]), claims: claimEntries(...notes) },
    logs: [],
    ruleSet: { ruleSet: produce, sha256: HASH },
    at: at as Instant,
    claimDeadlines: deadlineRules(),
  });
const gap = (id: string, { gaps }: ReturnType<typeof judged>) => gaps.find(({ rule }) => rule === id);

describe('what a claim asks, among what is missing', () => {
  it('is asked for as soon as a claim is recorded, and says by when', () => {
    const found = gap('claim-acknowledged', judged('2025-02-01T00:00:00.000Z', claimReceived('2025-01-15')));
    expect(found).toMatchObject({ outcome: 'missing', closable: { is: 'now' } });
    expect(found?.due).toMatchObject([
      { claim: 'c1', state: 'running', source: '49 CFR 370.5(a)', at: { day: { date: '2025-02-14' } } },
    ]);
  });

  it('can still be got when it is overdue', () => {
    const found = gap('claim-answered', judged('2025-06-01T00:00:00.000Z', claimReceived('2025-01-15')));
    expect(found).toMatchObject({ closable: { is: 'now' }, due: [{ state: 'overdue' }] });
  });

  it('has no day where what governs has no such clock', () => {
    const under = judged('2025-02-01T00:00:00.000Z', claimReceived('2025-01-15'), {
      is: 'terms',
      governs: 'cmr',
    });
    expect(gap('claim-acknowledged', under)).not.toHaveProperty('due');
  });

  it('is not asked for before the claim came in', () => {
    const before = judged('2025-01-10T00:00:00.000Z', claimReceived('2025-01-15'));
    expect(gap('claim-acknowledged', before)?.outcome).toBe('does-not-apply');
    expect(before).not.toHaveProperty('claims');
  });

  it('names clocks that there are', () => {
    const ids = deadlineRules().clocks.map(({ id }) => id);
    const named = produce.rules.flatMap(({ clock }) => clock ?? []);
    expect(named.length).toBeGreaterThan(0);
    expect(ids).toEqual(expect.arrayContaining(named));
  });

  const LETTER = {
    is: 'letter' as const,
    letter: 'acknowledgement',
    way: 'sent',
    with: 'x',
    on: dayOn('2025-01-20'),
  };
  const WHOLE = {
    is: 'declined' as const,
    on: dayOn('2025-01-25'),
    inWriting: true,
    reasons: ['warm when loaded'],
  };
  it.each<[string, string, Parameters<typeof claimEntries>, string]>([
    ['claim-letter', 'is met by a claim that was recorded', [claimReceived('2025-01-15')], 'met'],
    [
      'claim-acknowledged',
      'is met by an acknowledgement that was sent',
      [claimReceived('2025-01-15'), LETTER],
      'met',
    ],
    [
      'claim-acknowledged',
      'is not met by one that was only put together',
      [claimReceived('2025-01-15'), { is: 'answered', letter: 'acknowledgement', to: 'x', files: [] }],
      'missing',
    ],
    [
      'claim-acknowledged',
      'is not met by a letter that came',
      [claimReceived('2025-01-15'), { ...LETTER, way: 'received' }],
      'missing',
    ],
    ['claim-answered', 'is met by a denial in writing', [claimReceived('2025-01-15'), WHOLE], 'met'],
    [
      'claim-answered',
      'is not met by a denial by word of mouth',
      [claimReceived('2025-01-15'), { ...WHOLE, inWriting: false }],
      'missing',
    ],
    [
      'claim-answered',
      'is not met by an offer that is not firm',
      [
        claimReceived('2025-01-15'),
        { is: 'offer', by: 'carrier', on: dayOn('2025-01-25'), amount: { amount: '10', currency: 'USD' } },
      ],
      'missing',
    ],
    [
      'claim-acknowledged',
      'is short while only one of two claims has it',
      [claimReceived('2025-01-15'), LETTER, claimReceived('2025-01-16', { claim: 'c2' })],
      'short',
    ],
  ])('%s %s', (rule, _, notes, outcome) => {
    expect(gap(rule, judged('2025-02-01T00:00:00.000Z', ...notes))?.outcome).toBe(outcome);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayAt, endOfDay } from '../../../../src/core/assess/claim/calendar.js';
import { claimResults } from '../../../../src/core/assess/claim/claim.js';
import { contentsOf } from '../../../../src/core/assess/claim/contents.js';
import { endOf, onDay } from '../../../../src/core/assess/claim/deadline-milestones.js';
import { dueOf } from '../../../../src/core/assess/claim/due.js';
import { claimsAt } from '../../../../src/core/assess/claim/terms.js';
import { readMilestones } from '../../../../src/core/assess/milestones.js';
import type { Zone } from '../../../../src/core/model/time.js';
import { cases } from '../../../properties.js';
import { items, state } from '../made.js';
import { claimEntries, claimReceived, dayOn, deadlineRules } from './made.js';

const NOW = Date.parse('2026-09-01T00:00Z');
const results = (evidence: Parameters<typeof items>, ...notes: Parameters<typeof claimEntries>) => {
  const record = { ...state(items(...evidence)), claims: claimEntries(...notes) };
  const milestones = readMilestones(record, NOW);
  return claimResults({
    state: record,
    rules: deadlineRules(),
    milestones,
    now: NOW,
    findings: [],
    gaps: [],
    outcomes: [],
  });
};
const contents = (change: Record<string, unknown>) => {
  const [claim] = claimsAt({ claims: claimEntries(claimReceived('2026-08-03', change)) }, NOW);
  return claim === undefined ? [] : contentsOf(claim.received).map(({ id, state: how }) => `${id}: ${how}`);
};

/** 49 CFR 370.3(b). */
describe('the least that a claim must say', () => {
  it.each([
    ['nobody has looked', {}, ['not-looked-at', 'not-looked-at', 'not-looked-at', 'not-looked-at']],
    [
      'all of it',
      { contents: { form: 'written', shipment: true, liability: true, amount: 'can-be-worked-out' } },
      ['said', 'said', 'said', 'said'],
    ],
    [
      'none of it',
      { contents: { form: 'spoken', shipment: false, liability: false, amount: 'none' } },
      ['not-said', 'not-said', 'not-said', 'not-said'],
    ],
    [
      'by e-mail without an agreement on that',
      { contents: { form: 'electronic-not-agreed' } },
      ['not-said', 'not-looked-at', 'not-looked-at', 'not-looked-at'],
    ],
    [
      'an amount that is recorded is one that is stated',
      { amount: { amount: '12', currency: 'USD' } },
      ['not-looked-at', 'not-looked-at', 'not-looked-at', 'said'],
    ],
  ])('%s', (_, change, how) => {
    expect(contents(change)).toEqual(
      ['form', 'shipment', 'liability', 'amount'].map((id, i) => `${id}: ${how[i]}`),
    );
  });
});

/** 49 CFR 370.7(b). */
describe('papers behind a claim', () => {
  const paper = (is: 'invoice' | 'bill-of-lading') => ({
    kind: 'document' as const,
    subject: { is, sure: 'confirmed' as const },
  });

  it('are those that evidence shows, and freight by the papers of its amounts', () => {
    const [claim] = results(
      [paper('bill-of-lading'), paper('invoice'), paper('invoice')],
      claimReceived('2026-08-03'),
      {
        is: 'amount',
        item: 'freight-paid',
        saidBy: 'carrier',
        total: { amount: '900', currency: 'USD' },
        evidence: ['e3'],
      },
    );
    expect(claim?.papers.map(({ id, have }) => [id, have])).toEqual([
      ['bill-of-lading', ['e1']],
      ['freight-charges', ['e3']],
      ['invoice', ['e2', 'e3']],
      ['inspection-certificate', []],
      ['sale-account', []],
      ['rejection-notice', []],
    ]);
  });
});

/** 49 CFR 370.7(b), first proviso, and (c); 7 CFR 46.22 and 46.23, as of 2015. */
describe('papers that only some claims need', () => {
  const asked = (...notes: Parameters<typeof claimEntries>) =>
    results([], claimReceived('2026-08-03'), ...notes)[0]?.papers.map(
      ({ id, asked: how }) => `${id}: ${how}`,
    ) ?? [];
  const amount = (item: string) => ({
    is: 'amount',
    item,
    saidBy: 'claimant',
    total: { amount: '9', currency: 'USD' },
  });
  const short = {
    is: 'quantity',
    line: 'romaine',
    state: 'short',
    quantity: '4',
    unit: 'cartons',
    saidBy: 'receiver',
  };

  it.each([
    ['goods that were sold', amount('salvage'), 'destination-value: if-sold-or-not-invoiced'],
    ['goods that are short', short, 'statement-of-non-receipt: if-lost'],
    ['goods that were dumped', amount('disposal-cost'), 'dumping-certificate: if-dumped'],
  ])('%s', (_, note, paper) => {
    expect(asked()).not.toContain(paper);
    expect(asked(note)).toContain(paper);
  });

  it('none of them by a rule of the United States where the CMR governs', () => {
    const under = asked({ is: 'terms', governs: 'cmr' }, amount('salvage'), short);
    expect(under).toContain('invoice: to-judge-the-amount');
    expect(under.some((one) => one.includes('by-rule') || one.includes('if-'))).toBe(false);
  });
});

describe('several claims', () => {
  it('each have what was said of them alone', () => {
    const found = results(
      [],
      claimReceived('2026-06-01'),
      claimReceived('2026-07-01', { claim: 'c2' }),
      { is: 'terms', governs: 'cmr', claim: 'c2' },
      { is: 'letter', way: 'sent', letter: 'acknowledgement', on: dayOn('2026-06-05'), with: 'Mock Elms' },
    );
    expect(found.map(({ claim, governs, terms }) => [claim, governs, terms?.seq])).toEqual([
      ['c1', 'unknown', undefined],
      ['c2', 'cmr', 12],
    ]);
    expect(found[0]?.clocks.find(({ id }) => id === 'us-acknowledge')?.state).toBe('done');
    expect(found[1]?.clocks.some(({ id }) => id === 'us-acknowledge')).toBe(false);
  });
});

describe('every shipped clock', () => {
  const rules = deadlineRules();
  const day = fc
    .integer({ min: 0, max: 20_000 })
    .map((n) => n * 86_400_000 + Date.parse('2000-01-01T12:00Z'));
  const zones = fc.constantFrom('America/Chicago', 'America/Phoenix', 'Europe/Madrid', 'Asia/Kathmandu');

  it.each(rules.clocks.map((rule) => [rule.id, rule] as const))(
    '%s never ends before it starts, nor earlier for a later start',
    (_, rule) => {
      fc.assert(
        fc.property(day, fc.nat(400), zones, (at, later, name) => {
          const zone = name as Zone;
          const end = (from: number) =>
            endOf(dueOf(rule, rule.span, onDay(dayAt(from, zone), []), rules).due);
          expect(end(at + later * 86_400_000)).toBeGreaterThanOrEqual(end(at));
          expect(end(at)).toBeGreaterThanOrEqual(endOfDay(dayAt(at, zone)));
        }),
        { numRuns: cases(30) },
      );
    },
  );
});

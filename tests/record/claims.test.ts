import { describe, expect, it } from 'vitest';
import { foldEntries } from '../../src/core/ledger/fold.js';
import { KnownReferences } from '../../src/core/ledger/references.js';
import { EMPTY_ROOT, sha256Of } from '../../src/core/ledger/tree.js';
import type { NewEntry } from '../../src/core/model/entry.js';
import type { Instant } from '../../src/core/model/time.js';
import { stageEntries } from '../../src/record/staging.js';
import { documentOf, someFacts } from '../core/ledger/drafts.js';

const AT = '2026-08-03T15:00:00.000Z' as Instant;
const { facts, sha256, by } = someFacts();
const delivery: NewEntry = {
  type: 'delivery-facts',
  by,
  body: { sha256, facts: JSON.parse(JSON.stringify(facts)) },
};
const letter = documentOf('e1', { bytes: 4, sha256: sha256Of(Buffer.from('claim')) });
type Body = Extract<NewEntry, { type: 'claim-noted' }>['body'];
const noted = (body: Body): NewEntry => ({ type: 'claim-noted', by: 'Office', body });
const on = { date: '2026-08-03', zone: 'America/Chicago' };
const received: Body = {
  is: 'received',
  claim: 'c1',
  evidence: ['e1'],
  claimant: { name: 'Mock Elms Produce', role: 'receiver' },
  ourNumber: '2026-014',
  received: on,
  amount: { amount: '12480.50', currency: 'USD' },
};
const staged = (...notes: Body[]) =>
  stageEntries([delivery, letter, ...notes.map(noted)], AT, 0, new KnownReferences()).map(
    ({ entry }) => entry,
  );

describe('what is said of a claim', () => {
  it('is kept in order, with who entered it and when', () => {
    const entries = staged(received, { is: 'terms', claim: 'c1', governs: 'unknown' });
    expect(foldEntries(entries, entries.length, EMPTY_ROOT).claims).toMatchObject([
      { is: 'received', seq: 2, enteredBy: 'Office', enteredAt: AT, received: on, grounds: [] },
      { is: 'terms', seq: 3, governs: 'unknown' },
    ]);
  });

  it('is corrected by a later entry, and both stay', () => {
    const entries = staged(received, { ...received, theirNumber: 'NE-77', replaces: 2 });
    const { claims } = foldEntries(entries, entries.length, EMPTY_ROOT);
    expect(claims).toMatchObject([
      { seq: 2, replacedBy: 3 },
      { seq: 3, theirNumber: 'NE-77' },
    ]);
    expect(claims[1]).not.toHaveProperty('replacedBy');
  });

  it('holds letters that were put together before there is a claim', () => {
    const notice: Body = { is: 'answered', letter: 'notice-to-shipper', to: 'Three Wells', files: [] };
    const entries = staged(notice, received, { ...notice, claim: 'c1', letter: 'denial' });
    const { claims } = foldEntries(entries, entries.length, EMPTY_ROOT);
    expect(claims.map(({ claim }) => claim)).toEqual([undefined, 'c1', 'c1']);
  });

  it.each<[string, Body[], string]>([
    [
      'of an answer to no claim',
      [{ is: 'answered', letter: 'denial', to: 'Mock Elms', files: [] }],
      'answers a claim',
    ],
    ['of a claim that there is not', [{ is: 'terms', claim: 'c2', governs: 'cmr' }], 'no claim c2'],
    ['of the same claim as if it were new', [received, received], 'claim c1 already'],
    ['resting on evidence that there is not', [{ ...received, evidence: ['e9'] }], 'no evidence e9'],
    [
      'correcting what is of another kind',
      [received, { is: 'terms', claim: 'c1', governs: 'cmr', replaces: 2 }],
      'entry 2 says nothing of that kind',
    ],
    ['on a day that is none', [{ ...received, received: { ...on, date: '2026-02-30' } }], 'calendar'],
    ['in a zone that is none', [{ ...received, received: { ...on, zone: 'Mars/Base' } }], 'time zone'],
  ])('is refused %s', (_, notes, said) => {
    expect(() => staged(...notes)).toThrow(said);
  });
});

import { describe, expect, it } from 'vitest';
import { readRow } from '../../src/core/ledger/ledger.js';
import { KnownReferences } from '../../src/core/ledger/references.js';
import { EMPTY_ROOT, sha256Of } from '../../src/core/ledger/tree.js';
import type { EntryType } from '../../src/core/model/entry.js';
import { toInstant } from '../../src/core/model/time.js';
import { stageEntries } from '../../src/record/staging.js';
import { documentOf, pulpOf, someFacts } from '../core/ledger/drafts.js';

const AT = toInstant(Date.parse('2026-08-03T15:00:00.000Z'));
const HASH = sha256Of(Buffer.from('x'));
const { facts, sha256, by } = someFacts();
const bodies: Record<EntryType, object> = {
  'delivery-facts': { sha256, facts },
  'evidence-received': documentOf('e1', { bytes: 4, sha256: HASH }).body,
  'reading-recorded': pulpOf('e2', -0).body,
  'evidence-described': { evidence: 'e1', caption: 'Page one', place: { stop: 'load-1' } },
  'evidence-withheld': { evidence: 'e1', why: 'prices' },
  'clock-compared': {
    clock: { is: 'unit-log' },
    at: AT,
    addSeconds: -12.5,
    uncertaintySeconds: 2,
    from: 'told',
  },
  'fingerprint-published': { size: 3, root: EMPTY_ROOT, to: 'claims desk', how: 'e-mail' },
  'time-stamp-received': { size: 3, root: EMPTY_ROOT, token: 'AAAA', from: 'Invented Stamps' },
  'dossier-built': { file: 'a.pdf', sha256: HASH, bytes: 9, size: 3, root: EMPTY_ROOT },
  'claim-noted': {
    is: 'received',
    claim: 'c1',
    claimant: { name: 'Mock Elms Produce', role: 'receiver' },
    ourNumber: '2026-014',
    received: { date: '2026-08-03', zone: 'America/Chicago' },
  },
  'entry-corrected': {
    entry: 2,
    becomes: { type: 'reading-recorded', body: pulpOf('e2', 3).body },
    why: 'typed C for F',
  },
  'entry-struck': { entry: 10, why: 'it was right after all' },
  'evidence-admitted': { evidence: 'e1', why: 'the trailer was renumbered' },
  'record-merged': {
    other: { delivery: '4711', size: 2, root: EMPTY_ROOT },
    own: { size: 13, root: EMPTY_ROOT },
    shared: 1,
    leaves: [HASH],
    ledger: { bytes: 900, sha256: HASH },
  },
};

describe('an entry that is checked once and written', () => {
  const types = Object.keys(bodies) as EntryType[];
  const drafts = types.map((type) => ({ type, by, body: bodies[type] }));
  const staged = stageEntries(drafts, AT, 0, new KnownReferences());

  it.each(staged.map((one) => [one.entry.type, one] as const))('%s is read as it is held', (_, one) => {
    expect(readRow(one.row.subarray(0, -1), one.entry.seq)).toEqual({
      is: 'entry',
      entry: one.entry,
      leaf: one.leaf,
    });
  });
});

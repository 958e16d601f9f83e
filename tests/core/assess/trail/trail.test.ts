import { describe, expect, it } from 'vitest';
import { evidenceHistory, trailOf } from '../../../../src/core/assess/trail/trail.js';
import { KnownReferences } from '../../../../src/core/ledger/references.js';
import { EMPTY_ROOT, sha256Of } from '../../../../src/core/ledger/tree.js';
import type { Entry, NewEntry } from '../../../../src/core/model/entry.js';
import { type EvidenceId, evidenceId } from '../../../../src/core/model/evidence.js';
import type { Instant } from '../../../../src/core/model/time.js';
import { stageEntries } from '../../../../src/record/staging.js';
import { bytesOf, documentOf, pulpOf, someFacts } from '../../ledger/drafts.js';

const AT = '2026-07-20T15:00:00.000Z' as Instant;
const id = (text: string): EvidenceId => evidenceId.parse(text);
const HASH = sha256Of(bytesOf('bill'));

function facts(carrier?: string): NewEntry {
  const { facts: written, sha256, by } = someFacts(carrier);
  return { type: 'delivery-facts', by, body: { sha256, facts: JSON.parse(JSON.stringify(written)) } };
}
const entriesOf = (...drafts: NewEntry[]): Entry[] =>
  stageEntries(drafts, AT, 0, new KnownReferences()).map(({ entry }) => entry);
const bill = documentOf('e1', { bytes: 4, sha256: HASH });
const describing = (body: Extract<NewEntry, { type: 'evidence-described' }>['body']): NewEntry => ({
  type: 'evidence-described',
  by: 'Clerk',
  body,
});
const mark = { size: 2, root: EMPTY_ROOT };

describe('the trail of a record', () => {
  it('has one row an entry, in order, with who entered it and when', () => {
    const rows = trailOf(entriesOf(facts(), bill, pulpOf('e2')));
    expect(rows.map(({ seq, type, by, at }) => [seq, type, by, at])).toEqual([
      [0, 'delivery-facts', 'M. Ortega', AT],
      [1, 'evidence-received', 'M. Ortega', AT],
      [2, 'reading-recorded', 'M. Ortega', AT],
    ]);
  });

  it('says the facts once, and later only what changed of them', () => {
    const [first, second] = trailOf(entriesOf(facts('First Haul'), facts('Second Haul')));
    expect(first?.fields).toContainEqual({ field: 'parties carrier name', value: 'First Haul' });
    expect(first?.changes).toEqual([]);
    expect(second?.fields).toEqual([]);
    expect(second?.changes).toEqual([
      { field: 'parties carrier name', before: 'First Haul', after: 'Second Haul' },
    ]);
  });

  it('names the file that an entry brings in, and where a reading was read', () => {
    const row = { ...pulpOf('e2').body, source: { is: 'row', evidence: 'e1', row: 7 } };
    const [, file, reading] = trailOf(entriesOf(facts(), bill, { ...pulpOf('e2'), body: row } as NewEntry));
    expect(file?.file).toEqual({ name: 'bill.txt', bytes: 4, sha256: HASH });
    expect(reading?.from).toEqual({ evidence: 'e1', row: 7 });
    expect(reading?.fields).toContainEqual({ field: 'temperature', value: '34.2 °F' });
  });

  it('says what a description changed, against what was said last', () => {
    const rows = trailOf(
      entriesOf(
        facts(),
        bill,
        describing({ evidence: 'e1', caption: 'front', subject: { is: 'invoice', sure: 'proposed' } }),
        describing({
          evidence: 'e1',
          caption: 'back',
          subject: { is: 'invoice', sure: 'confirmed' },
          why: 'turned',
        }),
      ),
    );
    expect(rows[2]?.changes).toEqual([
      { field: 'subject is', after: 'invoice' },
      { field: 'subject sure', after: 'proposed' },
      { field: 'caption', after: 'front' },
    ]);
    expect(rows[3]?.changes).toEqual([
      { field: 'subject sure', before: 'proposed', after: 'confirmed' },
      { field: 'caption', before: 'front', after: 'back' },
    ]);
    expect(rows[3]?.fields).toEqual([{ field: 'why', value: 'turned' }]);
  });

  it('lists what was sent out and for whom it was built, with its hash', () => {
    const rows = trailOf(
      entriesOf(
        facts(),
        {
          type: 'fingerprint-published',
          by: 'x',
          body: { size: 1, root: EMPTY_ROOT, to: 'insurer', how: 'text' },
        },
        {
          type: 'dossier-built',
          by: 'x',
          body: { ...mark, file: 'a.pdf', sha256: HASH, bytes: 9, for: 'insurer' },
        },
      ),
    );
    expect(rows[1]).toMatchObject({
      covers: 1,
      fields: expect.arrayContaining([{ field: 'to', value: 'insurer' }]),
    });
    expect(rows[2]).toMatchObject({
      covers: 2,
      file: { name: 'a.pdf', sha256: HASH },
      fields: expect.arrayContaining([{ field: 'for', value: 'insurer' }]),
    });
  });

  it('says what a correction of a claim changed', () => {
    const received = {
      is: 'received',
      claim: 'c1',
      claimant: { name: 'Mock Elms', role: 'receiver' },
      ourNumber: '14',
      received: { date: '2026-08-03', zone: 'America/Chicago' },
      amount: { amount: '100', currency: 'USD' },
    } as const;
    const rows = trailOf(
      entriesOf(
        facts(),
        { type: 'claim-noted', by: 'x', body: received },
        {
          type: 'claim-noted',
          by: 'x',
          body: { ...received, amount: { amount: '120', currency: 'USD' }, replaces: 1 },
        },
      ),
    );
    expect(rows[1]).toMatchObject({ claim: 'c1', changes: [] });
    expect(rows[2]).toMatchObject({
      corrects: 1,
      changes: [{ field: 'amount', before: '100 USD', after: '120 USD' }],
    });
  });
});

describe('the life of one piece of evidence', () => {
  const entries = entriesOf(
    facts(),
    { type: 'fingerprint-published', by: 'x', body: { size: 1, root: EMPTY_ROOT, to: 'a', how: 'text' } },
    bill,
    pulpOf('e2'),
    {
      ...pulpOf('e3'),
      body: { ...pulpOf('e3').body, source: { is: 'row', evidence: 'e1', row: 2 } },
    } as NewEntry,
    describing({ evidence: 'e1', caption: 'front' }),
    { type: 'dossier-built', by: 'x', body: { ...mark, size: 6, file: 'a.pdf', sha256: HASH, bytes: 9 } },
    { type: 'dossier-built', by: 'x', body: { ...mark, size: 3, file: 'b.pdf', sha256: HASH, bytes: 9 } },
  );

  it.each([
    ['e1', [2, 4, 5, 6, 7]],
    ['e2', [3, 6]],
    ['e3', [4, 6]],
    ['e9', []],
  ])('%s is told by the entries %j', (evidence, seqs) => {
    expect(evidenceHistory(trailOf(entries), id(evidence)).map(({ seq }) => seq)).toEqual(seqs);
  });
});

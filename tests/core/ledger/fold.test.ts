import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldEntries } from '../../../src/core/ledger/fold.js';
import { KnownReferences } from '../../../src/core/ledger/references.js';
import { EMPTY_ROOT, sha256Of } from '../../../src/core/ledger/tree.js';
import type { Entry, NewEntry } from '../../../src/core/model/entry.js';
import type { Instant } from '../../../src/core/model/time.js';
import { stageEntries } from '../../../src/record/staging.js';
import { bytesOf, documentOf, pulpOf, someFacts } from './drafts.js';

const AT = '2026-07-14T12:42:08.370Z' as Instant;

function facts(carrier?: string): NewEntry {
  const { facts: written, sha256, by } = someFacts(carrier);
  return { type: 'delivery-facts', by, body: { sha256, facts: JSON.parse(JSON.stringify(written)) } };
}
const folded = (entries: NewEntry[]) => {
  const staged: Entry[] = stageEntries(entries, AT, 0, new KnownReferences()).map((s) => s.entry);
  return foldEntries(staged, staged.length, EMPTY_ROOT);
};
const bill = documentOf('e1', { bytes: 4, sha256: sha256Of(bytesOf('bill')) });
const say = (body: Extract<NewEntry, { type: 'evidence-described' }>['body']): NewEntry => ({
  type: 'evidence-described',
  by: 'D. Reyes',
  body,
});

describe('the state of a record', () => {
  it('has the last facts, with defaults filled in', () => {
    const state = folded([facts('First'), facts('Second')]);
    expect(state.delivery).toMatchObject({
      parties: { carrier: { name: 'Second' } },
      show: { paper: 'Letter' },
    });
    expect(state.deliveryHash).toBe(someFacts('Second').sha256);
  });

  it('has evidence as received, with who entered it and when', () => {
    const [item] = folded([facts(), pulpOf('e1')]).evidence;
    expect(item).toMatchObject({
      evidence: 'e1',
      seq: 1,
      enteredAt: AT,
      enteredBy: 'M. Ortega',
      describedBy: [],
      correctedBy: [],
    });
  });

  it('lays later words over earlier ones and keeps what they leave out', () => {
    const [item] = folded([
      facts(),
      bill,
      say({ evidence: 'e1', subject: { is: 'bill-of-lading', sure: 'proposed' }, place: { stop: 'load-1' } }),
      say({ evidence: 'e1', caption: 'page one', by: 'A. Driver', line: 'romaine' }),
      say({
        evidence: 'e1',
        subject: { is: 'scale-ticket', sure: 'confirmed' },
        place: { position: 'tail' },
        time: { is: 'local', local: '2026-07-14T05:42:10', why: 'as the paper says' },
        why: 'it was the other paper',
      }),
    ]).evidence;
    expect(item).toMatchObject({
      subject: { is: 'scale-ticket', sure: 'confirmed' },
      place: { stop: 'load-1', position: 'tail' },
      caption: 'page one',
      by: 'A. Driver',
      line: 'romaine',
      time: { is: 'local', local: '2026-07-14T05:42:10' },
      describedBy: [2, 3, 4],
      correctedBy: [],
      seq: 1,
    });
    expect(item).not.toHaveProperty('why');
  });

  it('marks what is withheld with the reason', () => {
    const state = folded([
      facts(),
      bill,
      { type: 'evidence-withheld', by: 'x', body: { evidence: 'e1', why: 'prices' } },
    ]);
    expect(state.evidence[0]).toMatchObject({ withheld: 'prices' });
  });

  it('collects clocks, fingerprints, time stamps and dossiers with their place in the ledger', () => {
    const at = { size: 1, root: EMPTY_ROOT };
    const state = folded([
      facts(),
      {
        type: 'clock-compared',
        by: 'x',
        body: {
          clock: { is: 'unit-log' },
          at: AT,
          addSeconds: -90,
          uncertaintySeconds: 30,
          from: 'display photo',
        },
      },
      { type: 'fingerprint-published', by: 'x', body: { ...at, to: 'insurer', how: 'e-mail' } },
      { type: 'time-stamp-received', by: 'x', body: { ...at, token: 'AA==', from: 'a server' } },
      { type: 'dossier-built', by: 'x', body: { ...at, file: 'a.pdf', sha256: EMPTY_ROOT, bytes: 1 } },
    ]);
    expect(state.clocks).toMatchObject([{ seq: 1, addSeconds: -90 }]);
    expect(state.published).toMatchObject([{ seq: 2, body: { to: 'insurer' } }]);
    expect(state.timeStamps).toMatchObject([{ seq: 3 }]);
    expect(state.dossiers).toMatchObject([{ seq: 4, body: { file: 'a.pdf' } }]);
  });

  it('does not depend on the order in which independent things were collected, but for ids and numbers', () => {
    const readings = [30, 31, 32, 33, 34, 35].map((value, i) => ({
      value,
      caption: i % 2 === 0 ? `carton ${i}` : undefined,
      withheld: i % 3 === 0,
    }));
    const stateOf = (order: typeof readings) => {
      const state = folded([
        facts(),
        ...order.flatMap(({ value, caption, withheld }, i): NewEntry[] => [
          pulpOf(`e${i + 1}`, value),
          ...(caption === undefined ? [] : [say({ evidence: `e${i + 1}`, caption })]),
          ...(withheld
            ? [
                {
                  type: 'evidence-withheld' as const,
                  by: 'x',
                  body: { evidence: `e${i + 1}`, why: `w${value}` },
                },
              ]
            : []),
        ]),
      ]);
      const withoutNumbers = state.evidence.map(({ evidence: _id, seq: _seq, describedBy, ...rest }) =>
        JSON.stringify({ ...rest, described: describedBy.length }),
      );
      return { ...state, evidence: withoutNumbers.sort() };
    };
    const straight = stateOf(readings);
    fc.assert(
      fc.property(fc.shuffledSubarray(readings, { minLength: readings.length }), (order) => {
        expect(stateOf(order)).toEqual(straight);
      }),
    );
  });

  it('leaves the entries as they are', () => {
    const entries = stageEntries(
      [facts(), bill, say({ evidence: 'e1', place: { stop: 'x' } })],
      AT,
      0,
      new KnownReferences(),
    );
    const before = JSON.stringify(entries);
    foldEntries(
      entries.map((s) => s.entry),
      3,
      EMPTY_ROOT,
    );
    expect(JSON.stringify(entries)).toBe(before);
  });
});

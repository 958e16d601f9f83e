import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldEntries } from '../../../src/core/ledger/fold.js';
import { KnownReferences } from '../../../src/core/ledger/references.js';
import { EMPTY_ROOT, sha256Of } from '../../../src/core/ledger/tree.js';
import type { NewEntry } from '../../../src/core/model/entry.js';
import type { RecordState } from '../../../src/core/model/state.js';
import type { Instant } from '../../../src/core/model/time.js';
import { stageEntries } from '../../../src/record/staging.js';
import { bytesOf, documentOf, pulpOf, someFacts } from './drafts.js';

const AT = '2026-07-14T12:42:08.370Z' as Instant;
const by = 'M. Ortega';
const facts = (): NewEntry => {
  const { facts: written, sha256 } = someFacts();
  return { type: 'delivery-facts', by, body: { sha256, facts: JSON.parse(JSON.stringify(written)) } };
};
const folded = (entries: NewEntry[]) => {
  const staged = stageEntries(entries, AT, 0, new KnownReferences()).map((s) => s.entry);
  return foldEntries(staged, staged.length, EMPTY_ROOT);
};
const correct = (entry: number, right: NewEntry, why = 'typed C for F'): NewEntry => ({
  type: 'entry-corrected',
  by,
  body: { entry, becomes: { type: right.type, body: right.body }, why } as Extract<
    NewEntry,
    { type: 'entry-corrected' }
  >['body'],
});
const strike = (entry: number, why = 'of another load'): NewEntry => ({
  type: 'entry-struck',
  by,
  body: { entry, why },
});
const bill = documentOf('e1', { bytes: 4, sha256: sha256Of(bytesOf('bill')) });
const row = (evidence: string): NewEntry => {
  const pulp = pulpOf(evidence);
  return { ...pulp, body: { ...pulp.body, source: { is: 'row', evidence: 'e1', row: 2 } } } as NewEntry;
};
const values = (state: RecordState) =>
  state.evidence.map((item) => (item.kind === 'pulp' ? item.temperature.value : item.kind));

describe('what counts of a record', () => {
  it('is the right value of a corrected reading, and the last of several', () => {
    const state = folded([
      facts(),
      pulpOf('e1', 102.2),
      correct(1, pulpOf('e1', 93)),
      correct(1, pulpOf('e1', 39)),
    ]);
    expect(values(state)).toEqual([39]);
    expect(state.evidence[0]?.correctedBy).toEqual([2, 3]);
    expect(state.corrections.map(({ entry, corrections }) => [entry.seq, corrections.length])).toEqual([
      [1, 2],
    ]);
  });

  it('is nothing of a struck entry, nor of what only describes it', () => {
    const state = folded([
      facts(),
      bill,
      { type: 'evidence-described', by, body: { evidence: 'e1', caption: 'x' } },
      strike(1),
    ]);
    expect(state.evidence).toEqual([]);
    expect(state.strikes.map(({ entry, strike: by }) => [entry.seq, by.seq])).toEqual([[1, 3]]);
  });

  it('is the entry again when its strike or its correction is struck', () => {
    expect(values(folded([facts(), pulpOf('e1', 39), strike(1), strike(2, 'right after all')]))).toEqual([
      39,
    ]);
    expect(values(folded([facts(), pulpOf('e1', 39), correct(1, pulpOf('e1', 93)), strike(2)]))).toEqual([
      39,
    ]);
  });

  it('leaves out a log of another trailer until somebody admits it', () => {
    const flagged = {
      ...bill,
      body: { ...bill.body, flags: [{ is: 'other-trailer', detail: 'it names TR-9' }] },
    } as NewEntry;
    const state = folded([facts(), flagged]);
    expect(state.evidence).toEqual([]);
    expect(state.notCounted.map(({ evidence }) => evidence)).toEqual(['e1']);
    const admitted = folded([
      facts(),
      flagged,
      { type: 'evidence-admitted', by, body: { evidence: 'e1', why: 'the trailer was renumbered' } },
    ]);
    expect(admitted.evidence).toMatchObject([{ evidence: 'e1', admitted: 'the trailer was renumbered' }]);
    expect(admitted.notCounted).toEqual([]);
  });

  it('is what a record says in which the mistake was never made', () => {
    const step = fc.oneof(
      fc.record({ is: fc.constant('pulp' as const), value: fc.integer({ min: 20, max: 60 }) }),
      fc.record({
        is: fc.constant('correct' as const),
        of: fc.nat(20),
        value: fc.integer({ min: 20, max: 60 }),
      }),
      fc.record({ is: fc.constant('strike' as const), of: fc.nat(20) }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 20 }), (steps) => {
        const entries: NewEntry[] = [facts()];
        const kept = new Map<number, { id: string; value: number }>();
        let count = 0;
        for (const one of steps) {
          const open = [...kept];
          if (one.is === 'pulp') {
            count += 1;
            kept.set(entries.length, { id: `e${count}`, value: one.value });
            entries.push(pulpOf(`e${count}`, one.value));
            continue;
          }
          const [seq, pulp] = open[one.of % Math.max(1, open.length)] ?? [];
          if (seq === undefined || pulp === undefined) continue;
          if (one.is === 'correct') {
            entries.push(correct(seq, pulpOf(pulp.id, one.value)));
            kept.set(seq, { ...pulp, value: one.value });
          } else {
            entries.push(strike(seq));
            kept.delete(seq);
          }
        }
        expect(values(folded(entries))).toEqual(
          values(folded([facts(), ...[...kept.values()].map(({ id, value }) => pulpOf(id, value))])),
        );
      }),
    );
  });
});

describe('what can not be put right', () => {
  const cases: [what: string, entries: NewEntry[], says: RegExp][] = [
    ['an entry that is not there', [facts(), strike(7)], /there is no entry 7/],
    ['an entry that was struck', [facts(), pulpOf('e1'), strike(1), correct(1, pulpOf('e1'))], /was struck/],
    ['an entry that was struck, again', [facts(), pulpOf('e1'), strike(1), strike(1)], /struck already/],
    ['a reading of another number', [facts(), pulpOf('e1'), correct(1, pulpOf('e2'))], /same thing/],
    ['a reading by a document', [facts(), pulpOf('e1'), correct(1, bill)], /not corrected by/],
    ['a table whose rows count', [facts(), bill, row('e2'), strike(1)], /entry 2; strike them first/],
    ['the facts of the delivery', [facts(), strike(0)], /change delivery.yaml/],
  ];
  it.each(cases)('%s', (_, entries, says) => {
    expect(() => folded(entries)).toThrow(says);
  });

  it('strikes a table after its rows', () => {
    expect(folded([facts(), bill, row('e2'), strike(2), strike(1)]).evidence).toEqual([]);
  });
});

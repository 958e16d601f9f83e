import { type ClaimNote, claimNote } from '../../../../src/core/model/claim.js';
import type { ClaimEntry } from '../../../../src/core/model/state.js';
import type { Instant } from '../../../../src/core/model/time.js';

type NoteFields = Record<string, unknown> & { is: ClaimNote['is'] };

/** Entries of one claim as a record holds them: numbered from 10, read by the model's schema, each with a paper. */
export function claimEntries(...notes: NoteFields[]): ClaimEntry[] {
  const entries: ClaimEntry[] = notes.map((note, i) => ({
    ...claimNote.parse({ claim: 'c1', evidence: ['e1'], ...note }),
    seq: 10 + i,
    enteredAt: '2026-08-03T15:00:00.000Z' as Instant,
    enteredBy: 'Office',
  }));
  return entries.map((one) => {
    const by = entries.find((other) => other.replaces === one.seq);
    return by === undefined ? one : { ...one, replacedBy: by.seq };
  });
}

export const usd = (amount: string) => ({ amount, currency: 'USD' });

/** One line of the worksheet, in dollars. */
export const amountStated = (
  item: string,
  total: string,
  saidBy = 'claimant',
  more: object = {},
): NoteFields => ({
  is: 'amount',
  item,
  saidBy,
  total: usd(total),
  ...more,
});

export const claimReceived = (more: object = {}): NoteFields => ({
  is: 'received',
  claimant: { name: 'Mock Elms Produce', role: 'receiver' },
  ourNumber: '2026-014',
  received: { date: '2026-08-03', zone: 'America/Chicago' },
  ...more,
});

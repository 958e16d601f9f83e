import { parse } from 'yaml';
import { claimNote } from '../../../../src/core/model/claim.js';
import { type ClaimDeadlines, claimDeadlines } from '../../../../src/core/model/claim-deadlines.js';
import type { ClaimEntry } from '../../../../src/core/model/state.js';
import FILE from '../../../../templates/claim-deadlines.yaml?raw';
import { instantAt } from '../made.js';

type Change = [from: string, to: string];

/** The file of the shipped clocks, or with parts of its text put otherwise. */
export function deadlinesFile(...changes: Change[]): string {
  return changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`the file does not say ${from}`);
    return text.replace(from, to);
  }, FILE);
}

export const deadlineRules = (...changes: Change[]): ClaimDeadlines =>
  claimDeadlines.parse(parse(deadlinesFile(...changes)));

/** A day in Chicago. */
export const dayOn = (date: string, zone = 'America/Chicago') => ({ date, zone });

type NoteFields = Record<string, unknown> & { is: string };

/** Entries of claim c1, numbered from 10, as they stand in a record; `replaces` names the number. */
export function claimEntries(...notes: NoteFields[]): ClaimEntry[] {
  const entries = notes.map((note, i) => ({
    ...claimNote.parse({ claim: 'c1', ...note }),
    seq: 10 + i,
    enteredAt: instantAt(0),
    enteredBy: 'Office',
  }));
  return entries.map((entry) => {
    const by = entries.find(({ replaces }) => replaces === entry.seq);
    return by === undefined ? entry : { ...entry, replacedBy: by.seq };
  });
}

export const claimReceived = (date: string, change: Record<string, unknown> = {}): NoteFields => ({
  is: 'received',
  claimant: { name: 'Mock Elms Produce', role: 'receiver' },
  ourNumber: '2026-014',
  received: dayOn(date),
  ...change,
});

import { readFileSync } from 'node:fs';
import { claimNote } from '../../../../src/core/model/claim.js';
import type { ClaimClocks } from '../../../../src/core/model/claim-deadlines.js';
import type { ClaimEntry } from '../../../../src/core/model/state.js';
import { parseClaimClocks } from '../../../../src/intake/claim-deadlines-file.js';
import { instantAt } from '../made.js';

const FILE = new URL('../../../../templates/claim-clocks.yaml', import.meta.url);

/** The shipped clocks, or with parts of the file's text put otherwise. */
export function clocks(...changes: [from: string, to: string][]): ClaimClocks {
  let text = readFileSync(FILE, 'utf8');
  for (const [from, to] of changes) {
    if (!text.includes(from)) throw new Error(`the file does not say ${from}`);
    text = text.replace(from, to);
  }
  return parseClaimClocks(text, 'claim-clocks.yaml');
}

/** A day in Chicago. */
export const on = (date: string, zone = 'America/Chicago') => ({ date, zone });

type Said = Record<string, unknown> & { is: string };

/** Entries of claim c1, numbered from 10, as they stand in a record; `replaces` names the number. */
export function said(...notes: Said[]): ClaimEntry[] {
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

export const received = (date: string, change: Record<string, unknown> = {}): Said => ({
  is: 'received',
  claimant: { name: 'Mock Elms Produce', role: 'receiver' },
  ourNumber: '2026-014',
  received: on(date),
  ...change,
});

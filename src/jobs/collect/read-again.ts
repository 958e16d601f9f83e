import type { NewEntry } from '../../model/entry.js';
import type { EvidenceId } from '../../model/evidence.js';
import type { Holders } from './holders.js';

/** The evidence that a file now makes, and the earlier reading of it that no longer counts. */
interface Reading {
  evidence: EvidenceId;
  replaces: EvidenceId | undefined;
  by: string;
}

/**
 * Entries about a file that an earlier piece of evidence holds and that is read anew: the earlier one points to the
 * later, and what was withheld stays withheld.
 */
export function readAgain(
  holders: Holders,
  before: EvidenceId,
  { evidence, replaces, by }: Reading,
): NewEntry[] {
  const earlier = holders.item(before);
  const note =
    replaces === undefined
      ? `The same file is read as a unit log in ${evidence}.`
      : `The same file is read anew in ${evidence}; this reading no longer counts.`;
  const entries: NewEntry[] = [
    {
      type: 'evidence-described',
      by,
      body: {
        evidence: before,
        caption: [...(earlier?.caption === undefined ? [] : [earlier.caption]), note].join(' ').slice(-2000),
        why: replaces === undefined ? 'what it lacked was said' : 'another way of reading it was said',
      },
    },
  ];
  if (earlier?.withheld !== undefined)
    entries.push({ type: 'evidence-withheld', by, body: { evidence, why: earlier.withheld } });
  return entries;
}
